import type { Check } from '../../../shared/schemas/vocabulary';

export const outsidePowerChecks: Check[] = [
  {
    slug: 'plug-wiggled',
    label: 'Plug and cord moved',
    meaning: 'The power plug and cord are moved gently while the unit is on.',
    synonyms: [
      'power plug wiggled',
      'wiggled the power plug',
      'moved the power lead',
      'cord flexed',
      'wiggled the cord',
      'power lead moved',
    ],
    area: 'power',
    howTo:
      'With the unit on, hold the plug by its body and move it a little each way; then flex the cord near both ends. Watch the power light and picture. Stop at once if there is a spark, a smell or warmth, and do not do this with a damaged mains lead.',
    targetRole: 'external-supply',
    instruments: [],
    needs: [],
    stage: 0,
    minutes: 3,
    cautions: ['mains'],
    outcomes: [
      {
        slug: 'no-change',
        label: 'No change',
        synonyms: ['no change', 'steady', 'solid', 'no effect', 'no difference'],
      },
      {
        slug: 'cuts-in-and-out',
        label: 'Cuts in and out',
        synonyms: ['cuts in and out', 'flickers', 'intermittent', 'comes and goes', 'crackles'],
      },
    ],
    workingOutcome: 'no-change',
    rule: null,
    prerequisites: [],
    risk: 0,
    categories: ['home-computer', 'console', 'handheld', 'monitor', 'drive'],
  },
  {
    slug: 'power-light',
    label: 'Power light',
    meaning: 'The power light or another sure sign of power is looked at.',
    synonyms: ['power light', 'power led', 'led', 'pilot light', 'power indicator', 'power lamp', 'on light'],
    area: 'power',
    howTo:
      "Switch on and look at the power light; shade it with a hand. If there is none, listen for a relay, fan or the display's reaction. Note whether it is as bright as usual and steady.",
    targetRole: 'power-switch',
    instruments: [],
    needs: [],
    stage: 0,
    minutes: 1,
    cautions: [],
    outcomes: [
      {
        slug: 'lit',
        label: 'Lit',
        synonyms: ['lit', 'on', 'lights', 'comes on', 'bright', 'glowing'],
      },
      {
        slug: 'dark',
        label: 'Dark',
        synonyms: ['dark', 'off', 'not lit', 'no light', 'dead', 'out'],
      },
      { slug: 'dim', label: 'Dim', synonyms: ['dim', 'weak', 'faint'] },
      {
        slug: 'flickering',
        label: 'Flickering',
        synonyms: ['flickering', 'flickers', 'blinking', 'pulsing', 'flashing'],
      },
    ],
    workingOutcome: 'lit',
    rule: null,
    prerequisites: [],
    risk: 0,
    categories: ['home-computer', 'console', 'handheld', 'arcade-board', 'monitor', 'drive'],
  },
];
