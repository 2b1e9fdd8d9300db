import type { AmbiguousSpan, Finding, ReadFinding } from './finding';
import type { Hazard, Stage } from './terms';

/**
 * What a look-up answers: the page, the procedure and the command line all draw on this one shape.
 * Probabilities are 0 to 1, unrounded.
 */
export type LookUpResult = {
  read: {
    findings: ReadFinding[];
    unread: { text: string; start: number; end: number }[];
    ambiguous: AmbiguousSpan[];
    /** Symptoms stated that another stated one hides: they say nothing more, so they count as not mentioned. */
    hidden: { id: string; label: string; by: { id: string; label: string } }[];
    /** Device used: chosen in the form, else mentioned in the words. */
    device: { slug: string; label: string; level: 'board' | 'model'; from: 'form' | 'words' } | null;
    complete: boolean;
  };
  /** Whole accepted records of the chosen device's board or model, and over all devices. */
  cases: { total: number; matching: number; compatible: number; onDevice: number; matchingOnDevice: number; causeNotFound: number };
  causes: LookUpCause[];
  unlisted: { probability: number; low: number; high: number };
  similar: SimilarCase[];
  nextChecks: NextCheck[];
  /** Why it stops suggesting checks, or what to mind; one sentence, null where there is nothing to say. */
  nextChecksNote: string | null;
  fixes: FixSuggestion[];
  warnings: LookUpWarning[];
};

/** The answer of the model alone, without what stands only in the database. */
export type LookUpFigures = Omit<LookUpResult, 'similar'> & { similar: SimilarFigures[] };

export type LookUpWarning = 'few-cases' | 'device-without-cases' | 'no-findings' | 'nothing-read' | 'no-match' | 'fits-nothing-known';

export type LookUpCause = {
  id: string;
  label: string;
  role: string;
  mode: string;
  probability: number;
  low: number;
  high: number;
  /** Whole records with this cause among those that carry all findings, and among those that contradict none. */
  matching: number;
  compatible: number;
  matchingByProof: { substitution: number; measurement: number; repairHeld: number; suspected: number };
  /** Counted share of matching records, with its Dirichlet-marginal interval; null where none match. */
  share: { low: number; high: number } | null;
  usualProof: string;
  /** The role's share on this board, by designator; empty where the board is not known. */
  designators: { designator: string; probability: number; cases: number }[];
  /** Evidence in decibans against the strongest rival; sums to `total` without remainder. Null for minor causes. */
  against: Explanation | null;
  /** Evidence in decibans against all others together. Null for minor causes. */
  againstAll: ExplanationAll | null;
};

export type Explanation = {
  rival: { id: string; label: string };
  prior: number;
  items: { finding: Finding; label: string; value: string; weight: number; implied: boolean }[];
  total: number;
};

export type ExplanationAll = {
  prior: number;
  items: { finding: Finding; label: string; value: string; weight: number; implied: boolean }[];
  interaction: number;
  mixing: number;
  total: number;
};

export type SimilarCase = {
  id: string;
  /** In nats of agreement; comparable within one answer only. */
  score: number;
  /** How near its device is to the one asked about. */
  nearness: 'same-board' | 'same-model' | 'same-category' | 'other';
  /** The part that was at fault there sits on the board asked about too. */
  sharesPart: boolean;
  device: { slug: string; label: string };
  month: string;
  excerpt: string;
  shared: { finding: Finding; label: string; value: string }[];
  contradicting: { finding: Finding; label: string; value: string; there: string }[];
  cause: { id: string; label: string; designators: string[] }[];
  proof: string | null;
  outcome: string;
};

/** A similar case as the model knows it: its text is read where it is shown. */
export type SimilarFigures = Omit<SimilarCase, 'excerpt'>;

export type NextCheck = {
  id: string;
  label: string;
  howTo: string;
  stage: Stage;
  minutes: number;
  bits: number;
  bitsPerMinute: number;
  cautions: Hazard[];
  instruments: string[];
  risk: 0 | 1 | 2;
  outcomes: {
    value: string;
    label: string;
    probability: number;
    /** The leading causes now and after this outcome. */
    effect: { id: string; label: string; before: number; after: number }[];
  }[];
};

export type FixSuggestion = {
  id: string;
  label: string;
  tried: number;
  resolved: number;
  partly: number;
  noChange: number;
  madeWorse: number;
  /** Cures after which the fault came back, by a later report. */
  cameBack: number;
  /** 90 % interval of the share cured, pooled along the device path; lists are ranked by `low`. */
  low: number;
  high: number;
  /** Share cured, pooled along the device path. */
  estimate: number;
};
