import { describe, expect, it } from 'vitest';
import { askedInForm, askedNow } from '../../../shared/domain/submission/asked-in-form';
import type { CaseStep } from '../../../shared/schemas/case';
import type { DraftStep } from '../../../shared/schemas/submission';

const reviewed: CaseStep[] = [
  { kind: 'check', check: 'clock-at-processor', outcome: 'absent', designator: null, value: null, unit: null },
  { kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: null }], result: 'cured' },
];
const check: DraftStep = { key: 'a', kind: 'check', check: 'clock-at-processor', outcome: 'absent', designator: '', reading: '' };
const fix: DraftStep = { key: 'b', kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: '' }], result: 'cured' };
const atFix = [{ field: 'steps.1', reason: 'Say which one.' }];

describe('changes that were asked for', () => {
  it('stay with their step while the form moves it', () => {
    const asked = askedInForm(atFix, reviewed, [check, fix]);
    expect(askedNow(asked, [check, fix])).toEqual(atFix);
    expect(askedNow(asked, [fix, check])).toEqual([{ field: 'steps.0', reason: 'Say which one.' }]);
  });

  it('find a step that had moved when the form was saved', () => {
    expect(askedInForm(atFix, reviewed, [fix, check])).toEqual([{ ...atFix[0], stepKey: 'b' }]);
  });

  it('stand at the list where their step is gone', () => {
    expect(askedInForm(atFix, reviewed, [check])).toEqual([{ field: 'steps', reason: 'Say which one.', stepKey: null }]);
    expect(askedNow(askedInForm(atFix, reviewed, [check, fix]), [check])).toEqual([{ field: 'steps', reason: 'Say which one.' }]);
  });

  it('of two alike are told apart by place', () => {
    const twice = { ...check, key: 'c' };
    const asked = askedInForm([{ field: 'steps.1', reason: 'Again?' }], [reviewed[0]!, reviewed[0]!], [check, twice]);
    expect(asked).toMatchObject([{ stepKey: 'c' }]);
  });

  it('at any other field are left as they are', () => {
    const asked = [{ field: 'narrative', reason: 'Say more.' }];
    expect(askedNow(askedInForm(asked, reviewed, [check]), [check])).toEqual(asked);
  });
});
