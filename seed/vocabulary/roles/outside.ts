import type { Role } from '../../../shared/schemas/vocabulary';

export const outsideRoles: Role[] = [
  {
    slug: 'external-supply',
    label: 'External supply',
    meaning: 'The supply that stands outside the unit.',
    synonyms: ['psu', 'power supply', 'external supply', 'power brick', 'adapter', 'wall adapter'],
    outside: true,
  },
  {
    slug: 'mains-lead',
    label: 'Mains lead',
    meaning: 'The lead between wall and unit or supply.',
    synonyms: ['mains lead', 'power cord', 'mains cable'],
    outside: true,
  },
  {
    slug: 'display',
    label: 'Display',
    meaning: "The television or monitor on which the unit's picture is shown.",
    synonyms: ['tv', 'display', 'television', 'screen'],
    outside: true,
  },
  {
    slug: 'av-cable',
    label: 'Video and sound cable',
    meaning: 'The cable that carries picture and sound to the display.',
    synonyms: ['av cable', 'video cable', 'av lead', 'rgb cable', 'cable'],
    outside: true,
  },
  {
    slug: 'input-selector',
    label: 'Input selector',
    meaning: 'The choice of input or channel on the display.',
    synonyms: ['input selector', 'tv input', 'channel', 'input'],
    outside: true,
  },
  {
    slug: 'media',
    label: 'Media',
    meaning: 'The cartridge, tape, disk or disc in use.',
    synonyms: ['media', 'cartridge', 'cart', 'tape', 'disk', 'disc', 'game'],
    outside: true,
  },
  {
    slug: 'controller',
    label: 'Controller',
    meaning: 'The joystick, pad, paddle, mouse or other controller.',
    synonyms: ['controller', 'joystick', 'pad', 'gamepad', 'paddle', 'mouse'],
    outside: true,
  },
  {
    slug: 'expansion-unit',
    label: 'Expansion unit',
    meaning: 'A memory, interface or other unit on the expansion port.',
    synonyms: ['expansion unit', 'expansion', 'ram expansion', 'add-on', 'peripheral'],
    outside: true,
  },
  {
    slug: 'harness',
    label: 'Cabinet harness',
    meaning: 'The wires between an arcade board and its cabinet.',
    synonyms: ['harness', 'wiring harness', 'loom', 'cabinet wiring'],
    outside: true,
  },
  {
    slug: 'no-part',
    label: 'No part',
    meaning: 'No single part: the unit as a whole, or nothing at all.',
    synonyms: ['no part', 'whole unit', 'nothing'],
    outside: true,
  },
];
