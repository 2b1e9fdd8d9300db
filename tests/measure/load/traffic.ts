import { DEMO_ACCOUNTS } from '../../../server/accounts/demo-accounts';
import { emptyDraft } from '../../../shared/schemas/submission';
import type { Random } from '../../../shared/stats/random';

/** One request of the mix. */
export type Ask = { name: string; path: string; init?: RequestInit };

const WORDS = [
  'grey screen, clock present',
  'no picture no sound',
  'garbled screen',
  'no sound, picture fine',
  'resets when warm',
  'dead',
  'cartridge not starting',
  'horizontal line',
  'keyboard dead keys',
  'colours wrong',
];
const DEVICES = ['', 'quellbrook-8-rev-b', 'quellbrook-8-rev-a', 'ormadic-duo-rev-2', 'tessaly-pocket', 'quellbrook-cm14-rev-1'];

/** How often each kind of request comes, of a hundred. */
const MIX: [number, string][] = [
  [30, 'look-up page'],
  [20, 'look-up JSON'],
  [10, 'plan page'],
  [12, 'search page'],
  [8, 'suggestions'],
  [6, 'case list'],
  [10, 'device page'],
  [4, 'words page'],
];

const KINDS = MIX.flatMap(([weight, name]) => Array.from({ length: weight }, () => name));

const json = (value: unknown) => encodeURIComponent(JSON.stringify(value));

/** Draws the next reading request. */
export function nextAsk(random: Random): Ask {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const name = pick(KINDS);
  const q = encodeURIComponent(pick(WORDS));
  const device = pick(DEVICES);
  const on = device === '' ? '' : `&device=${device}`;
  switch (name) {
    case 'look-up JSON':
      return {
        name,
        path: `/api/trpc/lookup.ask?input=${json({ text: pick(WORDS), device: device || null, complete: false, set: [] })}`,
      };
    case 'plan page':
      return { name, path: `/plan?q=${q}${on}` };
    case 'search page':
      return { name, path: `/search?q=${q}` };
    case 'suggestions':
      return { name, path: `/api/trpc/search.suggest?input=${json({ text: pick(WORDS).slice(0, 4) })}` };
    case 'case list':
      return { name, path: '/cases' };
    case 'device page':
      return { name, path: `/devices/${pick(DEVICES.slice(1))}` };
    case 'words page':
      return { name, path: '/words' };
    default:
      return { name, path: `/?q=${q}${on}` };
  }
}

/** Signs a demo account in and returns the cookie to send from then on. */
export async function signIn(url: string, role: 'contributor' | 'moderator'): Promise<string> {
  const account = DEMO_ACCOUNTS.find((entry) => entry.role === role);
  if (account === undefined) throw new Error(`The demo has no ${role}.`);
  const response = await mutate(url, 'account.signIn', { name: account.name, password: account.password }, '');
  if (!response.ok) throw new Error(`Signing in failed with ${response.status}: ${await response.text()}`);
  return response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ');
}

export function mutate(url: string, procedure: string, input: unknown, cookie: string): Promise<Response> {
  const body = JSON.stringify(input);
  const headers = { 'content-type': 'application/json', origin: url, cookie };
  return fetch(`${url}/api/trpc/${procedure}`, { method: 'POST', headers, body });
}

/** A form that can be submitted as it is, another each time. */
export function formOf(number: number) {
  return {
    ...emptyDraft('2026-05'),
    device: 'quellbrook-8-rev-b',
    symptoms: [{ symptom: 'grey-screen', present: true }],
    steps: [{ key: 'a', kind: 'fix' as const, fixes: [{ fix: 'replace-video-ram', designator: '' }], result: 'cured' as const }],
    causes: [{ cause: 'video-ram-stuck-bit', designators: '' }],
    proof: 'substitution' as const,
    outcome: 'resolved' as const,
    narrative: `Grey from cold. A new chip cured it; it was the ${number}th one tried.`,
  };
}

/** A change of the vocabulary, another each time: the casebook is loaded and the full text made anew for it. */
export function newSynonym(number: number) {
  return { act: 'synonyms', kind: 'symptom', slug: 'grey-screen', add: [`slate coloured screen ${number}`] };
}
