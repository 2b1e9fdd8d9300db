import type { Check } from '../../../shared/schemas/vocabulary';

export const continuityChecks: Check[] = [
  {
    slug: 'trace-continuity',
    label: 'Trace continuity',
    meaning: 'A suspected trace is measured from pin to pin.',
    synonyms: [
      'trace continuity',
      'continuity',
      'trace',
      'track continuity',
      'traces buzzed out',
      'trace measured',
      'beeped out',
      'via continuity',
    ],
    area: 'mechanical-battery',
    howTo:
      'Unplug and let capacitors discharge. Set the meter to ohms or continuity, touch the two pins that the trace joins, on the part legs and not on the pads. A sound trace reads under an ohm. Flex the board a little while measuring.',
    targetRole: 'trace',
    instruments: ['multimeter'],
    needs: [],
    stage: 1,
    minutes: 15,
    cautions: ['stored-charge'],
    outcomes: [
      {
        slug: 'continuous',
        label: 'Continuous',
        synonyms: ['continuous', 'good', 'ok', 'beeps', 'closed', 'intact'],
      },
      {
        slug: 'open',
        label: 'Open',
        synonyms: ['open', 'broken', 'no continuity', 'interrupted', 'cut'],
      },
    ],
    workingOutcome: 'continuous',
    rule: {
      unit: 'Ohm',
      bands: [
        { outcome: 'continuous', min: null, max: 2 },
        { outcome: 'open', min: 2, max: null },
      ],
      overload: 'open',
      source: 'Common practice, no source: a sound trace reads under 1 Ohm, meter leads included under 2 Ohm.',
    },
    prerequisites: [],
    risk: 0,
    categories: ['home-computer', 'console', 'handheld', 'arcade-board', 'monitor', 'drive'],
  },
  {
    slug: 'shield-clearance',
    label: 'Clearance under the shield',
    meaning: 'The metal shield and screws are checked for contact with the board.',
    synonyms: ['shield', 'rf shield', 'shielding', 'shield short', 'shield clearance', 'metal shield', 'shield touching'],
    area: 'mechanical-battery',
    howTo:
      'Edges are sharp. Look for shiny spots where the shield or a wrong screw touches solder points, and measure from the shield to the supply rail. Refit with the insulating sheet in place.',
    targetRole: 'solder-joint',
    instruments: ['multimeter'],
    needs: [],
    stage: 1,
    minutes: 8,
    cautions: ['sharp-heavy'],
    outcomes: [
      {
        slug: 'clear',
        label: 'Clear',
        synonyms: ['clear', 'ok', 'fine', 'not touching', 'clearance good'],
      },
      {
        slug: 'touching',
        label: 'Touching',
        synonyms: ['touching', 'shorted', 'shorts', 'contact'],
      },
    ],
    workingOutcome: 'clear',
    rule: null,
    prerequisites: [],
    risk: 0,
    categories: ['home-computer', 'console', 'handheld', 'arcade-board'],
  },
];
