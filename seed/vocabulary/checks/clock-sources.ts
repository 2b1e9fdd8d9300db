import type { Check } from '../../../shared/schemas/vocabulary';

export const clockSourcesChecks: Check[] = [
  {
    slug: 'clock-generator-output',
    label: 'Clock generator output',
    meaning: 'The output of the clock generator or divider is looked at.',
    synonyms: [
      'clock generator',
      'clock generator output',
      'clock chip',
      'divider output',
      'clock driver',
      'clock divider',
      'clock buffer',
      'clock generator outputs',
    ],
    area: 'clock-reset',
    howTo:
      "Power up and touch the generator's output pins one by one with a probe or scope. All phases must pulse with full logic levels. If the input runs and an output does not, lift or unload that output before blaming the generator.",
    targetRole: 'clock-generator',
    clears: ['clock-crystal', 'clock-generator'],
    instruments: ['logic-probe'],
    needs: [],
    stage: 2,
    minutes: 6,
    cautions: [],
    outcomes: [
      {
        slug: 'pulsing',
        label: 'Pulsing',
        synonyms: ['pulsing', 'toggling', 'running', 'present', 'ok', 'good', 'active', 'fine'],
      },
      {
        slug: 'stuck',
        label: 'Stuck',
        synonyms: ['stuck', 'dead', 'missing', 'flat', 'none', 'no output', 'absent'],
      },
      { slug: 'weak', label: 'Weak', synonyms: ['weak', 'low level', 'faint', 'low amplitude'] },
    ],
    workingOutcome: 'pulsing',
    rule: {
      unit: 'MHz',
      bands: [
        { outcome: 'stuck', min: null, max: 0.01 },
        { outcome: 'pulsing', min: 0.01, max: null },
      ],
      overload: null,
      source:
        "Common practice, no source: any steady output above 10 kHz counts as pulsing; compare with the board's own figure.",
    },
    prerequisites: ['rail-5v'],
    risk: 1,
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
  {
    slug: 'colour-clock',
    label: 'Colour clock frequency',
    meaning: 'The frequency of the colour clock is counted.',
    synonyms: [
      'colour clock',
      'color clock',
      'subcarrier',
      'colour subcarrier',
      'color subcarrier',
      'colour frequency',
      'chroma clock',
      'chroma frequency',
    ],
    area: 'clock-reset',
    howTo:
      'Let the unit warm up for ten minutes. Count the frequency at the colour clock or at a buffered output of it. 525-line colour wants 3.579545 MHz, 625-line colour 4.433619 MHz; a trimmer sets it. Move it only with a plastic tool.',
    targetRole: 'colour-trimmer',
    instruments: ['frequency-counter'],
    needs: [],
    stage: 2,
    minutes: 10,
    cautions: [],
    outcomes: [
      {
        slug: 'in-tolerance',
        label: 'In tolerance',
        synonyms: ['in tolerance', 'ok', 'good', 'right', 'on frequency', 'present'],
      },
      {
        slug: 'off',
        label: 'Off',
        synonyms: ['off', 'off frequency', 'wrong', 'drifted', 'too high', 'too low'],
      },
      {
        slug: 'absent',
        label: 'Absent',
        synonyms: ['absent', 'missing', 'none', 'dead', 'no signal'],
      },
    ],
    workingOutcome: 'in-tolerance',
    rule: {
      unit: 'MHz',
      bands: [
        { outcome: 'absent', min: null, max: 0.1 },
        { outcome: 'off', min: 0.1, max: 3.57918 },
        { outcome: 'in-tolerance', min: 3.57918, max: 3.57991 },
        { outcome: 'off', min: 3.57991, max: 4.43317 },
        { outcome: 'in-tolerance', min: 4.43317, max: 4.43406 },
        { outcome: 'off', min: 4.43406, max: null },
      ],
      overload: null,
      source:
        'Subcarriers 315/88 MHz (SMPTE 170M) and 4.43361875 MHz (ITU-R BT.470); +-100 ppm as the pull-in of a display: common practice, no source.',
    },
    prerequisites: ['rail-5v'],
    risk: 1,
    categories: ['home-computer', 'console'],
  },
];
