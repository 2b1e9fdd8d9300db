import type { Check } from '../../../shared/schemas/vocabulary';

export const railQualityChecks: Check[] = [
  {
    slug: 'rail-ripple',
    label: 'Ripple on the 5 V rail',
    meaning: 'The alternating part of the 5 V rail is measured on the running board.',
    synonyms: [
      'ripple',
      'rail ripple',
      '5v ripple',
      'noise on 5v',
      'ripple on the 5v rail',
      'ac on 5v',
      'supply ripple on the board',
      'ripple voltage',
    ],
    area: 'power',
    howTo:
      "With a scope on AC coupling, or a meter on millivolts AC through a capacitor, touch the 5 V rail at a logic chip with a short ground lead. Under 50 mV peak to peak is usual; a 100 or 120 Hz hump above 150 mV points at the filter capacitors or the regulator's input.",
    targetRole: 'filter-capacitor',
    instruments: ['multimeter'],
    needs: [],
    stage: 2,
    minutes: 8,
    cautions: [],
    outcomes: [
      {
        slug: 'low',
        label: 'Low',
        synonyms: ['low', 'clean', 'little', 'fine', 'ok', 'small', 'none'],
      },
      { slug: 'marginal', label: 'Marginal', synonyms: ['marginal', 'some', 'borderline'] },
      {
        slug: 'high',
        label: 'High',
        synonyms: ['high', 'bad', 'heavy', 'lots', 'too much', 'large'],
      },
    ],
    workingOutcome: 'low',
    rule: {
      unit: 'mV',
      bands: [
        { outcome: 'low', min: null, max: 50 },
        { outcome: 'marginal', min: 50, max: 150 },
        { outcome: 'high', min: 150, max: null },
      ],
      overload: null,
      source: 'Common practice, no source: peak to peak on a 5 V logic rail.',
    },
    prerequisites: ['rail-5v'],
    risk: 1,
    categories: ['home-computer', 'console', 'handheld', 'arcade-board', 'drive'],
  },
];
