import type { Check } from '../../../shared/schemas/vocabulary';

export const driveRollersLensChecks: Check[] = [
  {
    slug: 'pinch-roller-inspected',
    label: 'Pinch roller inspected',
    meaning: "The tape drive's rubber roller is looked at and felt.",
    synonyms: ['pinch roller', 'rubber roller', 'roller', 'tape roller', 'pinch wheel', 'capstan roller'],
    area: 'media-connectors',
    howTo:
      'Unplug. Press the roller with a fingertip: good rubber is dull and gives; old rubber is shiny, hard or sticky. Turn it and look for flat spots and oxide.',
    targetRole: 'pinch-roller',
    instruments: [],
    needs: [],
    stage: 1,
    minutes: 4,
    cautions: [],
    outcomes: [
      { slug: 'clean', label: 'Good', synonyms: ['good', 'clean', 'ok', 'soft', 'fine'] },
      {
        slug: 'hard',
        label: 'Hard or sticky',
        synonyms: ['hard', 'shiny', 'sticky', 'flat spot', 'dirty', 'cracked'],
      },
    ],
    workingOutcome: 'clean',
    rule: null,
    prerequisites: [],
    risk: 0,
    categories: ['home-computer', 'drive'],
  },
  {
    slug: 'lens-inspected',
    label: 'Laser lens inspected',
    meaning: 'The laser lens is looked at for dust and film.',
    synonyms: ['lens', 'laser lens', 'lens inspected', 'pickup lens', 'laser eye', 'lens condition'],
    area: 'media-connectors',
    howTo:
      'Switch off and unplug: never look into a lit laser. With the lid open look at the small lens under a lamp; it should be clear and bluish and float on its springs when touched very lightly with a swab.',
    targetRole: 'laser-pickup',
    instruments: ['magnifier'],
    needs: [],
    stage: 1,
    minutes: 5,
    cautions: [],
    outcomes: [
      { slug: 'clean', label: 'Clean', synonyms: ['clean', 'clear', 'ok', 'good', 'fine'] },
      { slug: 'dirty', label: 'Dirty', synonyms: ['dirty', 'dusty', 'cloudy', 'film', 'smoky'] },
    ],
    workingOutcome: 'clean',
    rule: null,
    prerequisites: [],
    risk: 0,
    categories: ['console', 'drive'],
  },
];
