import type { CodedFinding, Layout } from './layout';

/** Flat index of a finding's value, 0 to the layout's total number of values; throws where it is out of range. */
export function flatValue(layout: Layout, finding: CodedFinding): number {
  const { observable, value } = finding;
  const count = layout.valueCounts[observable];
  if (count === undefined || !Number.isInteger(value) || value < 0 || value >= count) {
    throw new RangeError(`No value ${value} of observable ${observable} in this layout.`);
  }
  return (layout.valueStarts[observable] as number) + value;
}

/** The findings in their order, the same finding twice kept once. */
export function distinctFindings<F extends CodedFinding>(layout: Layout, findings: readonly F[]): F[] {
  const seen = new Set<number>();
  return findings.filter((finding) => {
    const flat = flatValue(layout, finding);
    if (seen.has(flat)) return false;
    seen.add(flat);
    return true;
  });
}

/** The device's path from the root to the node itself. */
export function devicePath(layout: Layout, device: number): number[] {
  if (device < 0 || device >= layout.deviceParents.length) throw new RangeError(`No device ${device} in this layout.`);
  const path: number[] = [];
  for (let node = device; node !== -1; node = layout.deviceParents[node] as number) path.push(node);
  return path.reverse();
}
