import { CASE_OUTCOMES, CASE_STATUSES, FIX_RESULTS, PROOFS } from '../../schemas/case';
import { AREAS, DEVICE_CATEGORIES, LOGIC_STATES, UNITS } from '../../schemas/terms';

/** One column, as Table Schema describes it. */
export type TableField = {
  name: string;
  type: 'string' | 'integer' | 'number' | 'boolean' | 'yearmonth';
  description: string;
  constraints?: { required?: boolean; unique?: boolean; enum?: readonly string[]; minimum?: number; maximum?: number };
  trueValues?: readonly string[];
  falseValues?: readonly string[];
};

type ForeignKey = { fields: string[]; reference: { resource: string; fields: string[] } };

/** One CSV file of the data package: its columns are the data dictionary. */
export type PackageTable = {
  name: string;
  title: string;
  description: string;
  fields: readonly TableField[];
  primaryKey?: string[];
  foreignKeys?: ForeignKey[];
};

const REQUIRED = { required: true } as const;
const text = (name: string, description: string, constraints?: TableField['constraints']): TableField => ({
  name,
  type: 'string',
  description,
  ...(constraints ? { constraints } : {}),
});
const slug = (description: string) => text('slug', description, { required: true, unique: true });
const oneOf = (name: string, description: string, values: readonly string[], required = false) =>
  text(name, description, { ...(required ? REQUIRED : {}), enum: values });
const whole = (name: string, description: string, required = false): TableField => ({
  name,
  type: 'integer',
  description,
  constraints: { ...(required ? REQUIRED : {}), minimum: 0 },
});
const real = (name: string, description: string): TableField => ({ name, type: 'number', description });
const month: TableField = { name: 'month', type: 'yearmonth', description: 'Month of the repair or reading; finer dates are not kept.', constraints: REQUIRED };
const to = (field: string, resource: string, key = 'slug'): ForeignKey => ({ fields: [field], reference: { resource, fields: [key] } });
const caseId = text('caseId', 'The case, as in cases.', REQUIRED);
const label = text('label', 'The word as shown.', REQUIRED);
const meaning = text('meaning', 'What is meant by it, in a sentence.', REQUIRED);
const synonyms = text('synonyms', 'Other ways to say it, separated by "; ".');
const categories = text('categories', 'Categories of devices it applies to, separated by "; ".', REQUIRED);
const stage: TableField = {
  name: 'stage',
  type: 'integer',
  description: 'Access stage: 0 outside the case, 1 case open and unpowered, 2 powered and probing, 3 solder reversible, 4 solder hard to undo.',
  constraints: { required: true, minimum: 0, maximum: 4 },
};
const minutes: TableField = { name: 'minutes', type: 'number', description: 'Usual time that it takes, in minutes.', constraints: REQUIRED };
const reading = [
  text('designator', 'The part on the board, such as U14.', REQUIRED),
  text('pin', 'Its pin.', REQUIRED),
  oneOf('state', 'Logic state; empty where a number was read.', LOGIC_STATES),
  real('value', 'Number read; empty where a state was.'),
  oneOf('unit', 'UCUM unit of the number.', UNITS),
];

/** The case in one row, with lists inside its cells: the form that `import` reads. */
const cases: PackageTable = {
  name: 'cases',
  title: 'Cases, one a row',
  description: 'Accepted cases. Lists stand inside cells as "import --help" explains; a cell that a spreadsheet would take for a formula begins with an apostrophe.',
  primaryKey: ['id'],
  foreignKeys: [to('device', 'devices')],
  fields: [
    text('id', 'Random, never in order of time.', { required: true, unique: true }),
    oneOf('status', 'Always accepted here.', CASE_STATUSES, true),
    text('device', 'Board revision, or model where the revision is not known.', REQUIRED),
    month,
    text('symptoms', 'Symptoms recorded as present or absent.'),
    { name: 'symptomsComplete', type: 'boolean', description: 'Whether an unlisted symptom is absent.', trueValues: ['yes'], falseValues: ['no'], constraints: REQUIRED },
    text('steps', 'Checks and fixes in the order in which they happened.'),
    text('readings', 'Readings pin by pin.'),
    text('causes', 'Causes found, with designators; empty where none was.'),
    oneOf('proof', 'How the cause was proved.', PROOFS),
    whole('provedByStep', 'Position, from 0, of the check that proved the cause.'),
    oneOf('outcome', 'How the repair ended.', CASE_OUTCOMES, true),
    text('afterRepairChecks', 'Checks that passed after the repair.'),
    whole('soakMinutes', 'Minutes it was left running after the repair.'),
    text('narrative', "The contributor's own words, without personal details."),
  ],
};

const caseTables: PackageTable[] = [
  {
    name: 'case-findings',
    title: 'Findings of cases, one a row',
    description: 'Every symptom, check and fix of every accepted case. Fixes tried together share a step.',
    foreignKeys: [to('caseId', 'cases', 'id')],
    fields: [
      caseId,
      whole('step', '0 for what was seen at the start, then 1 and up in the order in which it happened.', true),
      oneOf('kind', 'What it is.', ['symptom', 'check', 'fix'], true),
      text('id', 'The symptom, check or fix, as in the table of that name.', REQUIRED),
      text('value', `present or absent; the outcome of a check; the result of a fix (${FIX_RESULTS.join(', ')}).`, REQUIRED),
      text('designator', 'The part that was checked or worked on.'),
      real('number', 'Number that was measured.'),
      oneOf('unit', 'UCUM unit of the number.', UNITS),
    ],
  },
  {
    name: 'case-causes',
    title: 'Causes of cases, one a row',
    description: 'A case whose cause was not found has no row.',
    foreignKeys: [to('caseId', 'cases', 'id'), to('cause', 'causes')],
    fields: [caseId, text('cause', 'The cause, as in causes.', REQUIRED), text('designators', 'Parts at fault, separated by blanks.')],
  },
  {
    name: 'case-readings',
    title: 'Readings of cases, one a row',
    description: 'Readings at pins of faulty units.',
    foreignKeys: [to('caseId', 'cases', 'id')],
    fields: [caseId, ...reading],
  },
  {
    name: 'working-readings',
    title: 'Readings of working units, one a row',
    description: 'What units that work show, pin by pin.',
    foreignKeys: [to('device', 'devices')],
    fields: [text('unitId', 'The working unit; random.', REQUIRED), text('device', 'Board revision or model.', REQUIRED), month, ...reading],
  },
];

const vocabularyTables: PackageTable[] = [
  {
    name: 'devices',
    title: 'Devices',
    description: 'Models, and their board revisions.',
    primaryKey: ['slug'],
    fields: [
      slug('Model or board revision.'),
      text('model', 'The model that it is of.', REQUIRED),
      text('name', 'Name of the model.', REQUIRED),
      text('maker', 'Who made it.', REQUIRED),
      oneOf('category', 'Kind of device.', DEVICE_CATEGORIES, true),
      text('revision', 'Board revision; empty for the model itself.'),
      text('summary', 'A sentence about it.', REQUIRED),
    ],
  },
  {
    name: 'board-parts',
    title: 'Parts on boards',
    description: 'Part lists of the board revisions.',
    primaryKey: ['board', 'designator'],
    foreignKeys: [to('board', 'devices'), to('role', 'roles')],
    fields: [
      text('board', 'Board revision.', REQUIRED),
      text('designator', 'Such as U14.', REQUIRED),
      text('role', 'What it does on the board.', REQUIRED),
      text('partNumber', 'Generic standard number, where there is one.'),
      text('package', 'Case form of the part.', REQUIRED),
      whole('pins', 'Number of pins.', true),
    ],
  },
  {
    name: 'roles',
    title: 'Roles of parts',
    description: 'What parts do on a board, and what stands outside the unit.',
    primaryKey: ['slug'],
    fields: [slug('The role.'), label, meaning, { name: 'outside', type: 'boolean', description: 'Whether it is outside the unit.', constraints: REQUIRED }, synonyms],
  },
  {
    name: 'symptoms',
    title: 'Symptoms',
    description: 'What units do when they fail.',
    primaryKey: ['slug'],
    fields: [
      slug('The symptom.'),
      label,
      meaning,
      oneOf('area', 'Area of the unit.', AREAS, true),
      categories,
      text('hiddenBy', 'Symptoms that make it impossible to see, separated by "; ".'),
      synonyms,
    ],
  },
  {
    name: 'checks',
    title: 'Checks',
    description: 'What can be looked at or measured.',
    primaryKey: ['slug'],
    foreignKeys: [to('targetRole', 'roles')],
    fields: [
      slug('The check.'),
      label,
      meaning,
      oneOf('area', 'Area of the unit.', AREAS, true),
      text('targetRole', 'Role of the part that is looked at.', REQUIRED),
      stage,
      minutes,
      text('instruments', 'Instruments, separated by "; ".'),
      text('cautions', 'Hazards, separated by "; ".'),
      text('workingOutcome', 'The outcome that a working unit shows.', REQUIRED),
      text('outcomes', 'Every outcome, separated by "; ".', REQUIRED),
      text('howTo', 'How it is done.', REQUIRED),
      categories,
      synonyms,
    ],
  },
  {
    name: 'causes',
    title: 'Causes',
    description: "A part's role and its failure mode.",
    primaryKey: ['slug'],
    foreignKeys: [to('role', 'roles')],
    fields: [
      slug('The cause.'),
      label,
      meaning,
      text('role', 'Role of the part at fault.', REQUIRED),
      text('mode', 'How it fails.', REQUIRED),
      text('usualProof', 'How it is usually proved.', REQUIRED),
      categories,
      synonyms,
    ],
  },
  {
    name: 'fixes',
    title: 'Fixes',
    description: 'What can be done about causes.',
    primaryKey: ['slug'],
    foreignKeys: [to('role', 'roles')],
    fields: [
      slug('The fix.'),
      label,
      meaning,
      text('role', 'Role of the part that is worked on.', REQUIRED),
      text('addresses', 'Causes that it is for, separated by "; ".', REQUIRED),
      stage,
      minutes,
      whole('partCostLowCents', 'Least that parts cost, in hundredths of a unit of money.', true),
      whole('partCostHighCents', 'Most that parts cost.', true),
      text('cautions', 'Hazards, separated by "; ".'),
      text('first', 'What to do first.', REQUIRED),
      text('howTo', 'How it is done.', REQUIRED),
      categories,
      synonyms,
    ],
  },
];

/** Every CSV file of the data package, in the order in which it lists them. */
export const PACKAGE_TABLES: readonly PackageTable[] = [cases, ...caseTables, ...vocabularyTables];
