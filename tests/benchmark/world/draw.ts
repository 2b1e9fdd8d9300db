import type { CaseContent, CaseRecord } from '../../../shared/schemas/case';
import { caseIdFrom } from '../../../server/ids';
import { boardSlug, BOARDS, CAUSES, CHECKS, FIXES, ROLES, SYMPTOMS } from './words';

export type Random = () => number;

/** Uniform numbers from a seed: 32 bits, the generator of T. Ettinger ("mulberry32"). */
export function randomOf(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const whole = (random: Random, below: number) => Math.floor(random() * below);
const number = (i: number) => String(i).padStart(3, '0');
const OUTCOMES = ['pulsing', 'stuck', 'floating'] as const;
const PROOFS = ['substitution', 'measurement', 'repair-held', 'suspected'] as const;

/** What a fault shows: the same for every unit with it, so that there is something to learn. */
function shows(cause: number, n: number, of: number): number {
  return (cause * 31 + n * 47 + ((cause * n) % 13)) % of;
}

/** Common faults and rare ones: the square of a uniform number leans to the low ones, which differ from board to board. */
function drawCause(random: Random, board: number): number {
  const rank = Math.floor(random() ** 2 * CAUSES);
  return (rank * 7 + board * 11) % CAUSES;
}

/** One repair: two to five symptoms, three to six checks, one or two attempts. */
export function drawContent(random: Random): CaseContent {
  const board = whole(random, BOARDS);
  const cause = drawCause(random, board);
  const symptoms = new Map<number, boolean>();
  for (let i = 0; i < 4; i += 1) if (random() < 0.7) symptoms.set(shows(cause, i, SYMPTOMS), true);
  while (symptoms.size < 2 || random() < 0.25) symptoms.set(whole(random, SYMPTOMS), random() < 0.85);
  const steps: CaseContent['steps'] = [];
  const checked = new Set<number>();
  for (let i = 0, n = 3 + whole(random, 4); i < n; i += 1) {
    const own = random() < 0.6;
    const check = own ? shows(cause, 10 + i, CHECKS) : whole(random, CHECKS);
    if (checked.has(check)) continue;
    checked.add(check);
    const odd = own ? random() < 0.8 : random() < 0.15;
    const outcome = OUTCOMES[odd ? 1 + ((cause + check) % 2) : 0] as string;
    steps.push({ kind: 'check', check: `check-${number(check)}`, outcome, designator: null, value: null, unit: null });
  }
  const found = random() < 0.93;
  if (random() < 0.3) steps.push(fixStep(whole(random, FIXES), 'no-change'));
  const mending = (cause % ROLES) + ROLES * whole(random, Math.floor(FIXES / ROLES));
  steps.push(fixStep(mending, found ? 'cured' : 'no-change'));
  return {
    device: boardSlug(board),
    month: `${2006 + whole(random, 20)}-${String(1 + whole(random, 12)).padStart(2, '0')}`,
    symptoms: [...symptoms].map(([symptom, present]) => ({ symptom: `symptom-${number(symptom)}`, present })),
    symptomsComplete: random() < 0.3,
    steps,
    readings: [],
    causes: found ? [{ cause: `cause-${number(cause)}`, designators: [`U${(cause % ROLES) + 1}`] }] : [],
    proof: found ? (PROOFS[whole(random, 4)] as CaseContent['proof']) : null,
    provedByStep: null,
    outcome: found ? 'resolved' : 'unresolved',
    afterRepairChecks: [],
    soakMinutes: null,
    narrative: '',
  };
}

function fixStep(fix: number, result: 'cured' | 'no-change'): CaseContent['steps'][number] {
  return { kind: 'fix', fixes: [{ fix: `fix-${number(fix)}`, designator: null }], result };
}

/** So many cases one after another; none is kept here. */
export function* drawCases(seed: number, count: number): Generator<CaseRecord> {
  const random = randomOf(seed);
  for (let i = 0; i < count; i += 1) {
    const id = caseIdFrom(Uint8Array.from({ length: 10 }, () => whole(random, 256)));
    yield { id, status: 'accepted', content: drawContent(random) };
  }
}

const SYLLABLES = ['ba', 'con', 'del', 'fer', 'gol', 'har', 'jin', 'kem', 'lor', 'mas', 'nep', 'pra', 'qui', 'ros', 'sel', 'tam', 'vod', 'wex', 'yar', 'zul'];

/** The nth word of an invented language of 8,000 words; low numbers are short. */
export function inventedWord(n: number): string {
  let word = '';
  for (let rest = n, i = 0; i < 3; rest = Math.floor(rest / 20), i += 1) word += SYLLABLES[rest % 20];
  return word;
}

/** A text of so many words, common ones often: word r is drawn about as often as 1/r (G. K. Zipf). */
export function drawNarrative(random: Random, words: number): string {
  return Array.from({ length: words }, () => inventedWord(Math.floor(8_000 ** random()) - 1)).join(' ');
}
