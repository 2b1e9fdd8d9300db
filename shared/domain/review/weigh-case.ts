import type { CaseContent } from '../../schemas/case';
import { cutRecord } from '../../stats/cut-record';
import { influence, surprise } from '../../stats/influence';
import type { CodedFinding } from '../../stats/layout';
import type { CasebookModel } from '../casebook/casebook-model';
import { findingLabel, findingValueLabel } from '../casebook/vocabulary-words';
import { decodeFinding } from '../coding/coding';
import { encodeCase } from '../coding/encode-case';

/** A probability that this case would move, in one question; 0 to 1. `cause` null: a cause that is not listed. */
export type MovedCause = { cause: string | null; label: string; before: number; after: number };
/** A question that somebody could ask, and what moves in its answer, largest first. */
export type MovedQuestion = { kind: 'all-symptoms' | 'one-symptom' | 'before-proof'; symptom: string | null; device: string | null; moved: MovedCause[] };

/** A finding with how unlikely it is, in bits: under the case's own cause, and in all cases. */
export type OddFinding = { label: string; value: string; bits: number; usualBits: number };

/** What a case would do to the figures, and how far it is from what they expect; the settings stay as they are. */
export type Weighed = {
  questions: MovedQuestion[];
  /** Null where it names no cause. `bits` above 0 speak against its cause; `probability` is what it would have been given. */
  surprise: { bits: number; probability: number; findings: OddFinding[] } | null;
};

/** The least change that is told: a tenth of a percentage point. */
const LEAST_SHIFT = 0.001;
const MOST_MOVED = 4;
const MOST_SYMPTOMS = 3;
const MOST_ODD = 3;
/** A finding is odd that is at least twice as unlikely under the stated cause as it is in all cases. */
const ODD_BITS = 1;

type Question = Omit<MovedQuestion, 'moved'> & { node: number; findings: CodedFinding[] };

/**
 * Influence and surprise of a case that is not counted yet (or, for a published one, of counting it once more). Throws
 * CodingError where it names what the coding does not know.
 */
export function weighCase(model: CasebookModel, content: CaseContent): Weighed {
  const { coding, counts, estimator } = model;
  const record = encodeCase(coding, content);
  const questions = questionsOf(model, content, record);
  const queries = questions.map(({ node, findings }) => ({ device: node, findings }));
  const shifts = influence(counts, estimator, { record, queries, leastShift: LEAST_SHIFT });
  const odd = surprise(estimator, record);
  return {
    questions: questions.flatMap(({ node: _, findings: __, ...question }, i) => {
      const moved = (shifts[i] ?? []).slice(0, MOST_MOVED).map(({ cause, before, after }) => ({ ...namedCause(model, cause), before, after }));
      return moved.length === 0 ? [] : [{ ...question, moved }];
    }),
    surprise: odd && {
      bits: odd.bits,
      probability: odd.causeProbability,
      findings: odd.findings.filter((f) => f.bits - f.usualBits >= ODD_BITS).slice(0, MOST_ODD).map((f) => oddFinding(model, f)),
    },
  };
}

/** Its symptoms on its own device and on any, each of the first few alone, and all that was known before the proof. */
function questionsOf(model: CasebookModel, content: CaseContent, record: ReturnType<typeof encodeCase>): Question[] {
  const { coding, words } = model;
  const device = words.devices.get(content.device)?.label ?? content.device;
  const seen = record.findings.filter((f) => f.step === 0);
  const present = seen.filter((f) => !f.implied && f.value === 1);
  const known = cutRecord(coding.layout, record).findings;
  const here = { device, node: record.device };
  return [
    { kind: 'all-symptoms', symptom: null, ...here, findings: seen },
    { kind: 'all-symptoms', symptom: null, device: null, node: 0, findings: seen },
    ...present.slice(0, MOST_SYMPTOMS).map((finding): Question => {
      const symptom = findingLabel(words, decodeFinding(coding, finding));
      return { kind: 'one-symptom', symptom, ...here, findings: [finding] };
    }),
    ...(known.length > seen.length ? [{ kind: 'before-proof' as const, symptom: null, ...here, findings: known }] : []),
  ];
}

function namedCause({ coding, words }: CasebookModel, cause: number): { cause: string | null; label: string } {
  const slug = coding.causes[cause] ?? null;
  return { cause: slug, label: slug === null ? 'a cause that is not listed' : (words.causes.get(slug)?.label ?? slug) };
}

function oddFinding(model: CasebookModel, odd: CodedFinding & { bits: number; usualBits: number }): OddFinding {
  const finding = decodeFinding(model.coding, odd);
  return {
    label: findingLabel(model.words, finding),
    value: findingValueLabel(model.words, finding),
    bits: odd.bits,
    usualBits: odd.usualBits,
  };
}
