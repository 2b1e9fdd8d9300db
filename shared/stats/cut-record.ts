import { type CodedRecord, FIX, type Layout, type RecordedFinding } from './layout';

/** The moments of a repair at which a look-up could have been made. */
export const CUTS = ['symptoms only', 'plus stage-0 checks', 'before the first fix', 'before the proof'] as const;

/**
 * What was known of a record at each of the moments in `CUTS`: never the check that proved its cause nor the fix that
 * cured it, nor anything that came after. The findings are put in such an order that each cut is a prefix.
 * @returns the findings of the last cut, and for each cut how many of them were known
 */
export function cutRecord(layout: Layout, record: CodedRecord): { findings: RecordedFinding[]; lengths: number[] } {
  const proof = firstStep(record.findings.filter((f) => f.proves));
  const open = record.findings.filter((f) => !f.proves && f.step < proof);
  const firstFix = firstStep(open.filter((f) => layout.kinds[f.observable] === FIX));
  const cutOf = (f: RecordedFinding) => {
    if (f.step === 0) return 0;
    if (f.step >= firstFix) return 3;
    return f.stage === 0 ? 1 : 2;
  };
  const findings = CUTS.flatMap((_, cut) => open.filter((f) => cutOf(f) === cut));
  const lengths = CUTS.map((_, cut) => open.filter((f) => cutOf(f) <= cut).length);
  return { findings, lengths };
}

function firstStep(findings: readonly RecordedFinding[]): number {
  return findings.reduce((first, f) => Math.min(first, f.step), Number.POSITIVE_INFINITY);
}
