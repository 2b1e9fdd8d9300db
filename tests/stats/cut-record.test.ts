import { describe, expect, it } from 'vitest';
import { cutRecord } from '../../shared/stats/cut-record';
import { recorded, recordOf, smallLayout } from './small-world';

describe('cutRecord', () => {
  const layout = smallLayout();
  const record = recordOf(4, [0], [
    recorded(0, 1),
    recorded(3, 1, { step: 1, stage: 2 }),
    recorded(4, 0, { step: 2, stage: 0 }),
    recorded(5, 0, { step: 3, stage: 3 }),
    recorded(4, 1, { step: 4, stage: 0 }),
    recorded(3, 2, { step: 5, stage: 2, proves: true }),
    recorded(5, 3, { step: 6, stage: 3, proves: true }),
  ]);

  it('knows at each moment what a look-up knew, never the proof, the cure or what came after', () => {
    const { findings, lengths } = cutRecord(layout, record);
    const at = (cut: number) => findings.slice(0, lengths[cut]).map((f) => `${f.observable}=${f.value}`);
    expect(at(0)).toEqual(['0=1']);
    expect(at(1)).toEqual(['0=1', '4=0']);
    expect(at(2)).toEqual(['0=1', '4=0', '3=1']);
    expect(at(3)).toEqual(['0=1', '4=0', '3=1', '5=0', '4=1']);
  });

  it('leaves out what was checked between the proof and the cure', () => {
    const late = recordOf(4, [0], [recorded(0, 1), recorded(3, 2, { step: 1, proves: true }), recorded(4, 0, { step: 2 })]);
    expect(cutRecord(layout, late).findings).toHaveLength(1);
  });
});
