import type { Role } from '../../../shared/schemas/vocabulary';

export const outsideRoles: Role[] = [
  {
    slug: 'external-supply',
    label: 'External supply',
    meaning: 'External supply: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'mains-lead',
    label: 'Mains lead',
    meaning: 'Mains lead: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'display',
    label: 'Display',
    meaning: 'Display: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'av-cable',
    label: 'Video and sound cable',
    meaning: 'Video and sound cable: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'input-selector',
    label: 'Input selector',
    meaning: 'Input selector: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'media',
    label: 'Media',
    meaning: 'Media: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'controller',
    label: 'Controller',
    meaning: 'Controller: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'expansion-unit',
    label: 'Expansion unit',
    meaning: 'Expansion unit: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'harness',
    label: 'Cabinet harness',
    meaning: 'Cabinet harness: to be described.',
    synonyms: [],
    outside: true,
  },
  {
    slug: 'no-part',
    label: 'No part',
    meaning: 'No part: to be described.',
    synonyms: [],
    outside: true,
  },
];
