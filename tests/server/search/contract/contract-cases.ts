import { catalogue } from '../../../../seed/catalogue';
import { vocabulary } from '../../../../seed/vocabulary';
import { vocabularyWords } from '../../../../shared/domain/casebook/vocabulary-words';
import { type SearchDocument, searchDocument } from '../../../../shared/domain/search/search-document';
import type { CaseContent } from '../../../../shared/schemas/case';

/** Invented cases of the demo world's machines, one letter each; what the contract expects is reasoned from these. */
type Told = {
  device: string;
  month: string;
  symptoms: string[];
  cause: [string, ...string[]] | null;
  proof?: CaseContent['proof'];
  outcome?: CaseContent['outcome'];
  fix?: [string, string];
  photos?: boolean;
  narrative: string;
};

const TOLD: Record<string, Told> = {
  a: {
    device: 'quellbrook-8-rev-a',
    month: '2024-03',
    symptoms: ['grey-screen'],
    cause: ['video-ram-stuck-bit', 'U12'],
    proof: 'substitution',
    fix: ['replace-video-ram', 'U12'],
    photos: true,
    narrative: 'Plain grey screen from the moment it was switched on. One data output sat high. A known-good chip cured it.',
  },
  b: {
    device: 'quellbrook-8-rev-b',
    month: '2024-05',
    symptoms: ['black-screen', 'no-sound'],
    cause: ['crystal-dead', 'X1'],
    proof: 'measurement',
    fix: ['replace-crystal', 'X1'],
    narrative: 'Nothing on the display and nothing to hear. The oscillator never started; a fresh crystal and it ran.',
  },
  c: {
    device: 'ormadic-duo-rev-1',
    month: '2023-11',
    symptoms: ['random-resets'],
    cause: ['reset-held', 'U11'],
    proof: 'repair-held',
    fix: ['replace-reset-chip', 'U11'],
    narrative: 'The pulsing reset drove me mad: it restarted every few seconds, and the reset line was pulsing all the while.',
  },
  d: {
    device: 'ormadic-duo-rev-2',
    month: '2025-01',
    symptoms: ['garbage-screen'],
    cause: ['cartridge-connector-dirty', 'J3'],
    proof: 'repair-held',
    fix: ['clean-cartridge-connector', 'J3'],
    narrative: 'Garbage until the game was wiggled. Cleaned the slot with alcohol, seated it twenty times, and the garbage was gone.',
  },
  e: {
    device: 'tessaly-pocket-rev-1',
    month: '2025-02',
    symptoms: ['missing-lcd-lines'],
    cause: ['lcd-flex-bond-failed'],
    proof: 'repair-held',
    fix: ['rebond-lcd-flex', ''],
    photos: true,
    narrative: 'Three columns of the panel were missing. Pressing the flat cable brought the columns back; ironed it on again.',
  },
  f: {
    device: 'ormadic-three-rev-1',
    month: '2022-07',
    symptoms: ['sprites-corrupt'],
    cause: ['graphics-rom-faulty', 'U31'],
    proof: 'substitution',
    fix: ['replace-graphics-rom', 'U31'],
    narrative: 'Objects broken into stripes while the background stayed whole. Reading the ROM gave another sum each time.',
  },
  g: {
    device: 'quellbrook-cm14-rev-1',
    month: '2022-09',
    symptoms: ['horizontal-line'],
    cause: ['vertical-amplifier-dead', 'U2'],
    proof: 'measurement',
    fix: ['replace-vertical-amplifier', 'U2'],
    narrative: 'A single bright line across the tube. The vertical amplifier had no output and was cold.',
  },
  h: {
    device: 'quellbrook-tr2-rev-1',
    month: '2023-02',
    symptoms: ['tape-load-errors'],
    cause: ['tape-azimuth-off'],
    proof: 'repair-held',
    fix: ['adjust-azimuth', ''],
    narrative: 'Loading failed at the second block every time. The azimuth was off; set it by ear for the brightest tone.',
  },
  i: {
    device: 'quellbrook-du5-rev-1',
    month: '2023-06',
    symptoms: ['disk-not-spinning'],
    cause: ['drive-belt-perished'],
    proof: 'repair-held',
    fix: ['replace-drive-belt', ''],
    narrative: 'The belt had turned to tar. Scraped it off the pulleys, fitted a new one, speed set with the strobe.',
  },
  j: {
    device: 'bramfield-halo-rev-1',
    month: '2025-06',
    symptoms: ['disc-not-read'],
    cause: ['laser-lens-dirty'],
    proof: 'repair-held',
    fix: ['clean-laser-lens', ''],
    narrative: 'Discs spun up and stopped. A film of smoke on the lens; one swab with alcohol and every disc is read.',
  },
  k: {
    device: 'tessaly-fen-16-rev-1',
    month: '2025-08',
    symptoms: ['no-sound'],
    cause: ['amplifier-dead', 'U20'],
    proof: 'suspected',
    outcome: 'partly-resolved',
    fix: ['replace-amplifier', 'U20'],
    narrative: 'Silent from the speaker, though the headphones had music. New amplifier, sound is back but faint.',
  },
  l: {
    device: 'quellbrook-8',
    month: '2024-12',
    symptoms: ['no-power'],
    cause: null,
    outcome: 'unresolved',
    narrative: 'Dead as a brick. Supply apart was fine at 9.1 V, the fuse whole. Gave up after two evenings.',
  },
  m: {
    device: 'ormadic-duo',
    month: '2024-08',
    symptoms: ['leaked-capacitors', 'distorted-sound'],
    cause: ['filter-capacitor-leaked', 'C9'],
    proof: 'measurement',
    fix: ['recap-board', ''],
    photos: true,
    narrative: 'Brown goo under three electrolytics. Recapped the lot; the colour "naïve café yellow" of the pads washed off.',
  },
  n: {
    device: 'quellbrook-8-rev-a',
    month: '2024-03',
    symptoms: ['some-keys-dead'],
    cause: ['keyboard-membrane-cracked'],
    proof: 'substitution',
    fix: ['replace-keyboard-membrane', ''],
    narrative: 'The keys of one column did nothing. The membrane was cracked at the tail. <b>Not</b> the chip & not the plug.',
  },
  o: {
    device: 'ormadic-duo-rev-1',
    month: '2021-04',
    symptoms: ['no-colour'],
    cause: ['colour-trimmer-drifted'],
    proof: 'repair-held',
    outcome: 'resolved',
    fix: ['adjust-colour-trimmer', ''],
    narrative: 'Monochrome on every telly. Turned the trimmer a hair and the colours came up; left it under the lamp for an hour.',
  },
  p: {
    device: 'quellbrook-8-rev-b',
    month: '2025-03',
    symptoms: ['hangs-at-start', 'memory-test-fails'],
    cause: ['work-ram-shorted', 'U14'],
    proof: 'substitution',
    outcome: 'not-economical',
    fix: ['replace-work-ram', 'U14'],
    narrative: 'Stops during start-up. One memory chip ran hot enough to hurt; three more had died with it, so it became a donor.',
  },
};

const words = vocabularyWords(vocabulary, catalogue);

/** The id of the case with this letter. */
export const idOf = (letter: string): string => letter.repeat(16);

function contentOf(told: Told): CaseContent {
  const { device, month, symptoms, cause, proof = null, outcome = 'resolved', fix, narrative } = told;
  const designator = fix?.[1] === '' || fix === undefined ? null : fix[1];
  return {
    device,
    month,
    symptoms: symptoms.map((symptom) => ({ symptom, present: true })),
    symptomsComplete: false,
    steps: fix === undefined ? [] : [{ kind: 'fix', fixes: [{ fix: fix[0], designator }], result: outcome === 'resolved' ? 'cured' : 'partly' }],
    readings: [],
    causes: cause === null ? [] : [{ cause: cause[0], designators: cause.slice(1) }],
    proof,
    provedByStep: null,
    outcome,
    afterRepairChecks: [],
    soakMinutes: null,
    narrative,
  };
}

/** The document of the case with this letter; `override` changes what is told. */
export function contractDocument(letter: string, override: Partial<Told> = {}): SearchDocument {
  const told = { ...(TOLD[letter] as Told), ...override };
  return searchDocument(words, { id: idOf(letter), status: 'accepted', content: contentOf(told) }, told.photos ?? false);
}

/** All documents, in order of their letters. */
export const contractDocuments: SearchDocument[] = Object.keys(TOLD).map((letter) => contractDocument(letter));
