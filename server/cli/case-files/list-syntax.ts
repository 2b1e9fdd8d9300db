import type { CaseContent, CaseStep } from '../../../shared/schemas/case';

/** How lists are written in one cell of a CSV file; shown by `import --help`. */
export const LIST_SYNTAX_HELP = `Lists stand in one cell, their entries parted by "; ":
  symptoms           grey-screen; no-sound=absent
  steps              check clock-at-processor=pulsing @U5 3.58 MHz; fix replace-crystal@Y1 + clean-contacts=no-change
  readings           U1.OUT=5.02 V; U5.3=pulsing
  causes             video-ram-stuck-bit@U12,U13
  afterRepairChecks  supply-apart; clock-at-processor
In a pin's name, blanks and the signs ; = % are written %20, %3B, %3D, %25. An empty cell is "not recorded".
A cell that begins with = + - @ or ' gets a ' before it, so that no spreadsheet takes it for a formula.`;

const joined = (entries: readonly string[]) => entries.join('; ');
const at = (designator: string | null) => (designator === null ? '' : `@${designator}`);

export function writeSymptoms(symptoms: CaseContent['symptoms']): string {
  return joined(symptoms.map((s) => (s.present ? s.symptom : `${s.symptom}=absent`)));
}

export function writeSteps(steps: CaseContent['steps']): string {
  return joined(
    steps.map((step) => {
      if (step.kind === 'fix') return `fix ${step.fixes.map((f) => `${f.fix}${at(f.designator)}`).join(' + ')}=${step.result}`;
      const where = step.designator === null ? '' : ` @${step.designator}`;
      const measured = step.value === null ? '' : ` ${step.value}${step.unit === null ? '' : ` ${step.unit}`}`;
      return `check ${step.check}=${step.outcome}${where}${measured}`;
    }),
  );
}

export function writeReadings(readings: CaseContent['readings']): string {
  return joined(readings.map((r) => `${r.designator}.${writePin(r.pin)}=${r.state ?? `${r.value} ${r.unit}`}`));
}

export function writeCauses(causes: CaseContent['causes']): string {
  return joined(causes.map((c) => (c.designators.length === 0 ? c.cause : `${c.cause}@${c.designators.join(',')}`)));
}

const writePin = (pin: string) => pin.replace(/[%;=\s]/gu, (sign) => encodeURIComponent(sign));

/** The entries of a cell; blank ones are left out. */
export function entriesOf(cell: string): string[] {
  return cell
    .split(';')
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
}

/** The readers below return null for an entry that is not written as it should be. */
export function readSymptom(entry: string): CaseContent['symptoms'][number] | null {
  const [symptom = '', value = 'present', ...rest] = entry.split('=').map((part) => part.trim());
  if (rest.length > 0 || (value !== 'present' && value !== 'absent')) return null;
  return { symptom, present: value === 'present' };
}

export function readStep(entry: string): CaseStep | null {
  const [, kind, rest = ''] = /^(check|fix)\s+(.+)$/u.exec(entry) ?? [];
  if (kind === 'fix') return readFixStep(rest);
  return kind === 'check' ? readCheckStep(rest) : null;
}

function readFixStep(text: string): CaseStep | null {
  const [, list = '', result = ''] = /^(.+?)\s*=\s*([a-z-]+)$/u.exec(text) ?? [];
  if (list === '') return null;
  const fixes = list.split('+').map((part) => {
    const [fix = '', designator = null] = part.trim().split('@');
    return { fix, designator };
  });
  return { kind: 'fix', fixes, result: result as Extract<CaseStep, { kind: 'fix' }>['result'] };
}

const CHECK_STEP = /^([^\s=]+)\s*=\s*(\S+)(?:\s+@(\S+))?(?:\s+(\S+)(?:\s+(\S+))?)?$/u;

function readCheckStep(text: string): CaseStep | null {
  const match = CHECK_STEP.exec(text);
  if (!match) return null;
  const [, check = '', outcome = '', designator = null, number, unit = null] = match;
  const value = number === undefined ? null : Number(number);
  if (Number.isNaN(value)) return null;
  return { kind: 'check', check, outcome, designator, value, unit: unit as Extract<CaseStep, { kind: 'check' }>['unit'] };
}

export function readReading(entry: string): CaseContent['readings'][number] | null {
  const match = /^([^.\s]+)\.([^=\s]+)\s*=\s*(\S+)(?:\s+(\S+))?$/u.exec(entry);
  if (!match) return null;
  const [, designator = '', pin = '', shown = '', unit = null] = match;
  const value = unit === null ? null : Number(shown);
  const name = readPin(pin);
  if (Number.isNaN(value) || name === null) return null;
  return { designator, pin: name, state: unit === null ? shown : null, value, unit } as CaseContent['readings'][number];
}

function readPin(pin: string): string | null {
  try {
    return pin.replace(/(?:%[0-9A-F]{2})+/giu, decodeURIComponent);
  } catch {
    return null;
  }
}

export function readCause(entry: string): CaseContent['causes'][number] | null {
  const [cause = '', designators, ...rest] = entry.split('@');
  if (rest.length > 0) return null;
  return { cause, designators: designators === undefined ? [] : designators.split(',').map((d) => d.trim()) };
}
