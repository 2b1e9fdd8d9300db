import type { Check } from '../../../shared/schemas/vocabulary';

export const monitorDeflectionChecks: Check[] = [
  {
    slug: 'vertical-supply',
    label: 'Vertical amplifier supply',
    meaning: 'The supply of the vertical amplifier is measured.',
    synonyms: [
      'vertical supply',
      'vertical amp supply',
      'vertical ic supply',
      'frame amp supply',
      'supply of the vertical amplifier',
      'vertical amplifier supply',
    ],
    area: 'monitor',
    howTo:
      "Live mains and high voltage near by: only for people qualified for it, through an isolating transformer. Set the meter to volts DC and touch the amplifier's supply pin; compare with its marked value. A missing one is often a small fusible resistor that opened for a reason.",
    targetRole: 'vertical-amplifier',
    instruments: ['multimeter'],
    needs: [],
    stage: 2,
    minutes: 8,
    cautions: ['mains', 'stored-charge', 'high-voltage'],
    outcomes: [
      { slug: 'present', label: 'Present', synonyms: ['present', 'ok', 'good', 'there', 'fine'] },
      { slug: 'low', label: 'Low', synonyms: ['low', 'too low', 'weak'] },
      { slug: 'absent', label: 'Absent', synonyms: ['absent', 'missing', 'none', 'dead', 'zero'] },
    ],
    workingOutcome: 'present',
    rule: null,
    prerequisites: [],
    risk: 1,
    categories: ['monitor'],
  },
  {
    slug: 'sync-separator-output',
    label: 'Sync separator output',
    meaning: 'The separated sync signal inside the monitor is looked at.',
    synonyms: ['sync separator', 'sync separator output', 'separated sync', 'sync sep', 'sync stripper', 'sync separator out'],
    area: 'monitor',
    howTo:
      "Live mains and high voltage near by: only for people qualified for it, through an isolating transformer. With a good source connected touch the separator's input, then its output: clean pulses with no picture left in them.",
    targetRole: 'sync-separator',
    instruments: ['oscilloscope'],
    needs: [],
    stage: 2,
    minutes: 12,
    cautions: ['mains', 'stored-charge', 'high-voltage'],
    outcomes: [
      {
        slug: 'pulsing',
        label: 'Pulsing',
        synonyms: ['pulsing', 'ok', 'good', 'present', 'clean', 'active'],
      },
      {
        slug: 'absent',
        label: 'Absent',
        synonyms: ['absent', 'missing', 'none', 'dead', 'flat', 'dirty'],
      },
    ],
    workingOutcome: 'pulsing',
    rule: null,
    prerequisites: [],
    risk: 1,
    categories: ['monitor'],
  },
];
