import type { DeviceCategory } from '../../../shared/schemas/terms';
import { cadet, lantern, minnow, tumble } from './fitted-parts';
import type { PartKindName } from './part-kinds';

/** What is fitted to a board: kinds of part and how many of each. */
export type BoardPlan = { slug: string; revision: string; summary: string; fitted: Partial<Record<PartKindName, number>> };
export type ModelPlan = {
  slug: string;
  name: string;
  maker: string;
  category: DeviceCategory;
  summary: string;
  synonyms: string[];
  boards: BoardPlan[];
};

/** The seven models of this world. Revisions differ in a few parts, as revisions do. */
export const modelPlans: readonly ModelPlan[] = [
  {
    slug: 'pellworth-lantern',
    name: 'Pellworth Lantern',
    maker: 'Pellworth',
    category: 'home-computer',
    summary: 'Eight-bit home computer with an outside supply, tape load and a modulator.',
    synonyms: ['lantern'],
    boards: [
      { slug: 'pellworth-lantern-issue-a', revision: 'Issue A', summary: 'First board, most chips in sockets.', fitted: lantern },
      {
        slug: 'pellworth-lantern-issue-c',
        revision: 'Issue C',
        summary: 'Cost-reduced board, few sockets.',
        fitted: { ...lantern, socket: 1, decoder: 1, palette: 1 },
      },
    ],
  },
  {
    slug: 'pellworth-lantern-deck',
    name: 'Pellworth Lantern Deck',
    maker: 'Pellworth',
    category: 'home-computer',
    summary: 'The Lantern in one case with a tape deck and a loudspeaker.',
    synonyms: ['lantern deck', 'deck'],
    boards: [
      {
        slug: 'pellworth-lantern-deck-issue-b',
        revision: 'Issue B',
        summary: 'Adds the deck, its motor and an amplifier.',
        fitted: { ...lantern, belt: 1, motor: 1, head: 1, ampSmall: 1, speaker: 1, decoupler: 5 },
      },
    ],
  },
  {
    slug: 'vessimer-cadet',
    name: 'Vessimer Cadet',
    maker: 'Vessimer',
    category: 'home-computer',
    summary: 'Home computer with a built-in mains supply and one disk drive.',
    synonyms: ['cadet'],
    boards: [
      { slug: 'vessimer-cadet-m1', revision: 'M1', summary: 'Linear supply, soldered memory.', fitted: cadet },
      {
        slug: 'vessimer-cadet-m2',
        revision: 'M2',
        summary: 'Switched supply instead of the linear one.',
        fitted: { ...cadet, transformer: 0, reg5: 0, chopper: 1, startCap: 1, mainsCap: 1, clockGen: 1 },
      },
    ],
  },
  {
    slug: 'odrani-tumble',
    name: 'Odrani Tumble',
    maker: 'Odrani',
    category: 'console',
    summary: 'Cartridge console with two controller ports.',
    synonyms: ['tumble'],
    boards: [
      { slug: 'odrani-tumble-t1', revision: 'T1', summary: 'Early board with two sockets.', fitted: tumble },
      {
        slug: 'odrani-tumble-t4',
        revision: 'T4',
        summary: 'Late board without a modulator.',
        fitted: { ...tumble, modulator: 0, encoder: 0, encoderLate: 1, trimmer: 1, socket: 0, smdCap: 4 },
      },
    ],
  },
  {
    slug: 'vessimer-halyard',
    name: 'Vessimer Halyard',
    maker: 'Vessimer',
    category: 'console',
    summary: 'Disc console with memory for saved games.',
    synonyms: ['halyard'],
    boards: [
      {
        slug: 'vessimer-halyard-h2',
        revision: 'H2',
        summary: 'Main board with the disc mechanism on a flat cable.',
        fitted: {
          cpuFast: 1,
          dram256: 8,
          vramDram: 4,
          romSmall: 1,
          vdpTwin: 1,
          encoderLate: 1,
          avSocket: 1,
          crystal: 2,
          resetTimer: 1,
          decoder: 1,
          buffer: 1,
          ioPort: 1,
          soundWave: 1,
          coupling: 4,
          chopper: 1,
          startCap: 1,
          rectifier: 1,
          filterCap: 3,
          smdCap: 5,
          decoupler: 6,
          powerSwitch: 1,
          fuse: 1,
          padSocket: 2,
          padFilter: 4,
          cell: 1,
          laser: 1,
          driveBoard: 1,
          motor: 1,
        },
      },
    ],
  },
  {
    slug: 'odrani-minnow',
    name: 'Odrani Minnow',
    maker: 'Odrani',
    category: 'handheld',
    summary: 'Pocket console with a reflective screen, four cells or an adapter.',
    synonyms: ['minnow'],
    boards: [
      { slug: 'odrani-minnow-a', revision: 'A', summary: 'First board, screen on a bonded flat cable.', fitted: minnow },
      {
        slug: 'odrani-minnow-b',
        revision: 'B',
        summary: 'Second board with save memory and its cell.',
        fitted: { ...minnow, cell: 1, lcdDriver: 1, fuse: 0, guardDiode: 1 },
      },
    ],
  },
  {
    slug: 'kestring-km-14',
    name: 'Kestring KM-14',
    maker: 'Kestring',
    category: 'monitor',
    summary: 'Colour monitor with analogue inputs and a loudspeaker.',
    synonyms: ['km14', 'km-14'],
    boards: [
      {
        slug: 'kestring-km-14-main',
        revision: 'main',
        summary: 'One main board and a board on the tube neck.',
        fitted: {
          rectifier: 1,
          chopper: 1,
          startCap: 1,
          mainsCap: 1,
          filterCap: 8,
          powerSwitch: 1,
          fuse: 2,
          avSocket: 1,
          ampSmall: 1,
          speaker: 1,
          volume: 1,
          coupling: 1,
          flyback: 1,
          yoke: 1,
          hOscillator: 1,
          hOutput: 1,
          vAmplifier: 1,
          syncSeparator: 1,
          gunDriver: 3,
          mainRegulator: 1,
          retraceCap: 1,
          screenPot: 1,
          rings: 1,
          tube: 1,
          degaussCoil: 1,
        },
      },
    ],
  },
];
