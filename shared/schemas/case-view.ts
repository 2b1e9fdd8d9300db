import type { CaseOutcome, CaseStatus, FixResult, Proof, Reading } from './case';
import type { Stage, Unit } from './terms';

/** One published case in full, with the words to show it; steps in the order in which they happened. */
export type CaseView = {
  id: string;
  status: CaseStatus;
  device: { slug: string; label: string; level: 'board' | 'model' };
  month: string;
  symptoms: { id: string; label: string; present: boolean }[];
  symptomsComplete: boolean;
  steps: CaseStepView[];
  readings: Reading[];
  causes: { id: string; label: string; designators: string[] }[];
  proof: Proof | null;
  outcome: CaseOutcome;
  afterRepairChecks: { id: string; label: string }[];
  soakMinutes: number | null;
  narrative: string;
};

export type CaseStepView =
  | {
      kind: 'check';
      id: string;
      label: string;
      stage: Stage;
      outcome: string;
      outcomeLabel: string;
      /** The outcome that a working unit shows. */
      asWorking: boolean;
      designator: string | null;
      value: number | null;
      unit: Unit | null;
      /** Whether this is the check that proved the cause. */
      proved: boolean;
    }
  | {
      kind: 'fix';
      fixes: { id: string; label: string; designator: string | null }[];
      stage: Stage;
      result: FixResult;
    };

/** A device that can be chosen: a model, or one board revision of it. */
export type DeviceChoice = {
  slug: string;
  label: string;
  level: 'model' | 'board';
  model: string;
  maker: string;
  category: string;
  /** Accepted cases of it; of all its boards for a model. */
  cases: number;
};

/** A vocabulary entry as offered while typing. */
export type Suggestion = {
  kind: 'symptom' | 'check' | 'fix' | 'cause';
  id: string;
  label: string;
  meaning: string;
  values: { value: string; label: string }[];
};

/** One line of a list of cases; symptoms are the labels of those present. */
export type CaseListItem = {
  id: string;
  month: string;
  device: { slug: string; label: string };
  symptoms: string[];
  causes: { id: string; label: string; designators: string[] }[];
  outcome: CaseOutcome;
  excerpt: string;
};
