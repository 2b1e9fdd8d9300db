import type { CaseOutcome, FixResult, Proof } from '../../shared/schemas/case';
import type { Area, Hazard, Instrument, Need } from '../../shared/schemas/terms';

/** How the closed terms of the schemas are said on the page. */
export const FIX_RESULT_WORDS: Record<FixResult, string> = {
  'no-change': 'no change',
  'symptom-changed': 'symptom changed',
  partly: 'partly cured',
  cured: 'cured',
  'made-worse': 'made worse',
};

export const PROOF_WORDS: Record<Proof, string> = {
  substitution: 'by substitution',
  measurement: 'by direct measurement',
  'repair-held': 'by the repair holding',
  suspected: 'only suspected',
};

export const CASE_OUTCOME_WORDS: Record<CaseOutcome, string> = {
  resolved: 'resolved',
  'partly-resolved': 'partly resolved',
  unresolved: 'unresolved',
  'not-economical': 'not economical',
};

export const AREA_WORDS: Record<Area, string> = {
  power: 'Power',
  'clock-reset': 'Clock and reset',
  buses: 'Buses',
  memory: 'Memory',
  video: 'Video',
  sound: 'Sound',
  input: 'Input',
  'media-connectors': 'Media and connectors',
  'mechanical-battery': 'Mechanical and battery',
  monitor: 'Monitor',
};

export const INSTRUMENT_WORDS: Record<Instrument, string> = {
  none: 'nothing',
  multimeter: 'multimeter',
  'logic-probe': 'logic probe',
  oscilloscope: 'oscilloscope',
  'frequency-counter': 'frequency counter',
  'high-voltage-probe': 'high-voltage probe',
  'capacitor-tester': 'capacitor tester',
  magnifier: 'magnifier',
  thermometer: 'thermometer',
  'soldering-iron': 'soldering iron',
  'bench-supply': 'bench supply',
  'test-media': 'test media',
};

export const NEED_WORDS: Record<Need, string> = {
  'working-unit': 'working unit to compare with',
  donor: 'donor board',
  'new-part': 'new parts',
};

/** Name of a hazard and what to do about it, before the step that it concerns. Common practice, no source. */
export const HAZARD_WORDS: Record<Hazard, { name: string; advice: string }> = {
  mains: {
    name: 'mains',
    advice: 'Unplug before you open it. Mains-side work is for qualified people, under your local codes.',
  },
  'stored-charge': {
    name: 'stored charge',
    advice: 'Capacitors keep a charge after switch-off. Measure before you touch, and discharge through a resistor.',
  },
  'high-voltage': {
    name: 'high voltage, picture tube',
    advice: 'The tube can hold a dangerous charge long after unplugging. Leave this work to qualified people.',
  },
  'hot-tools': {
    name: 'hot tools',
    advice: 'Iron and hot air burn skin and lift pads. Use the stand, keep the heat short, let the joint cool.',
  },
  fumes: { name: 'fumes', advice: 'Work with extraction or an open window, and keep your face out of the smoke.' },
  'flammable-solvent': {
    name: 'flammable solvent',
    advice: 'Unit off and iron cold. Ventilate, and let everything dry before you power it.',
  },
  battery: {
    name: 'battery',
    advice: 'Leaked cells burn skin and eyes; a shorted cell can catch fire. Wear gloves and eye protection.',
  },
  static: {
    name: 'static discharge',
    advice:
      'With the unit off and unplugged, ground yourself and the board before you touch a chip. No wrist strap on live equipment.',
  },
  'sharp-heavy': { name: 'sharp or heavy', advice: 'Mind cut edges and glass. Lift a monitor with two people.' },
};

/** A word with its first letter raised, for the start of a line. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * A label as it stands inside a sentence: its first letter lowered, unless it opens with an abbreviation
 * (`RF modulator dead`) or a letter that stands alone (`A record`).
 */
export function inSentence(label: string): string {
  return /^\p{Lu}\p{Ll}/u.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}

/** `one`, `one and two`, `one, two and three`. */
export function joinWords(words: string[], last = 'and'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}
