import type { BoardDescription } from '../engine/fault-model';

const DISK = ['disk-read-errors', 'disk-write-fails', 'disk-not-spinning', 'own-disks-only', 'drive-grinds', 'drive-not-seen'];
const TAPE = ['tape-load-errors', 'tape-not-recording', 'tape-speed-wrong', 'tape-chewed'];
const DISC = ['disc-not-read', 'disk-not-spinning', 'drive-grinds', 'drive-not-seen'];
const CARTRIDGE = ['cartridge-not-read', 'cartridge-fussy'];
const COMPUTER_8 = [...DISK, 'tape-speed-wrong', 'tape-chewed', 'saves-lost', 'leaked-battery', 'sound-one-side'];

/** Boards fed from the mains themselves have no outside supply. */
const NO_OUTSIDE_SUPPLY = {
  'external-supply-dead': 0,
  'external-supply-low': 0,
  'external-supply-over-voltage': 0,
  'external-supply-ripple': 0,
  'external-supply-wrong': 0,
  'external-supply-cord-broken': 0,
};

const SHARED_DUO = {
  'mains-lead-open': 0.16,
  'cartridge-connector-dirty': 1.5,
  'sprite-generator-faulty': 1.5,
  'button-pads-dirty': 0.46,
  'ribbon-cable-cracked': 0,
};

/** Weak spots of each board, and what a revision put right: factors on the causes' rates. */
export const boards: Readonly<Record<string, BoardDescription>> = {
  'quellbrook-8-rev-a': {
    popularity: 20,
    without: COMPUTER_8,
    factors: {
      'mains-lead-open': 0.16,
      'dc-converter-dead': 3.3,
      'dc-converter-low': 2,
      'video-ram-stuck-bit': 2.8,
      'video-ram-shorted': 2.8,
      'video-generator-dead': 2.2,
      'regulator-dead': 0.85,
      'regulator-low': 2.2,
      'ic-socket-oxidised': 1.7,
      'cartridge-connector-dirty': 0.21,
      'cartridge-connector-loose': 0.16,
      'media-dirty': 0.35,
      'ribbon-cable-cracked': 0.72,
      'keyboard-membrane-cracked': 2.4,
      'rf-modulator-drifted': 1.7,
    },
  },
  'quellbrook-8-rev-b': {
    popularity: 16,
    without: COMPUTER_8,
    factors: {
      'mains-lead-open': 0.16,
      'video-ram-stuck-bit': 0.59,
      'video-ram-shorted': 0.35,
      'video-generator-dead': 0.46,
      'video-generator-partial': 0.72,
      'regulator-dead': 1.5,
      'filter-capacitor-dried': 1.7,
      'ic-socket-oxidised': 0.72,
      'cartridge-connector-dirty': 0.21,
      'cartridge-connector-loose': 0.16,
      'media-dirty': 0.35,
      'keyboard-membrane-cracked': 3.7,
      'power-jack-cracked': 2.8,
      'trace-open': 1.7,
    },
  },
  'ormadic-duo-rev-1': {
    popularity: 17,
    without: [...DISC, 'saves-lost', 'leaked-battery'],
    factors: {
      ...SHARED_DUO,
      'video-encoder-dead': 2.4,
      'rf-modulator-dead': 2.4,
      'headphone-jack-stuck': 0,
      'controller-port-cracked': 2.4,
      'ic-socket-oxidised': 1.3,
      'clock-generator-dead': 2,
    },
  },
  'ormadic-duo-rev-2': {
    popularity: 12,
    without: [...DISC, 'saves-lost', 'leaked-battery'],
    factors: {
      ...SHARED_DUO,
      'filter-capacitor-leaked': 4.2,
      'filter-capacitor-dried': 1.5,
      'solder-joint-cracked': 2,
      'video-buffer-open': 3.3,
      'power-jack-cracked': 2.4,
      'headphone-jack-stuck': 0.46,
    },
  },
  'tessaly-pocket-rev-1': {
    popularity: 11,
    without: ['saves-lost'],
    factors: {
      'mains-lead-open': 0.089,
      'external-supply-dead': 0.46,
      'external-supply-low': 0.46,
      'filter-capacitor-leaked': 3.3,
      'external-supply-wrong': 1.3,
      'ribbon-cable-cracked': 1.3,
      'cartridge-connector-dirty': 0.72,
      'keyboard-contacts-dirty': 0,
    },
  },
  'ormadic-three-rev-1': {
    popularity: 8,
    without: ['pointer-drifts'],
    factors: {
      'backup-battery-leaked': 3.3,
      'graphics-rom-faulty': 2,
      'ic-socket-oxidised': 1.7,
      'address-multiplexer-faulty': 1.8,
      'display-standard-mismatch': 0.25,
      'wrong-input-selected': 0.032,
      'av-cable-poor-ground': 0.16,
      'av-cable-open': 0.16,
      'controller-cord-broken': 0.16,
      'controller-contacts-worn': 1.3,
      'expansion-unit-faulty': 0.032,
    },
  },
  'quellbrook-cm14-rev-1': {
    popularity: 7,
    without: [],
    factors: {
      'solder-joint-cracked': 2.2,
      'filter-capacitor-dried': 1.5,
      'mains-lead-open': 1.3,
      'ribbon-cable-unseated': 0.35,
      'no-fault-found': 0.85,
    },
  },
  'tessaly-fen-16-rev-1': {
    popularity: 5,
    without: ['tape-speed-wrong', 'tape-chewed', ...CARTRIDGE, 'border-only'],
    factors: {
      ...NO_OUTSIDE_SUPPLY,
      'mains-lead-open': 1.8,
      'backup-battery-leaked': 3.3,
      'drive-belt-slack': 0.72,
      'drive-belt-perished': 0.72,
      'tape-azimuth-off': 0,
      'tape-interface-faulty': 0.16,
      'read-head-dirty': 0.59,
      'filter-capacitor-leaked': 1.7,
      'start-capacitor-dried': 1.5,
      'ic-socket-oxidised': 1.8,
      'keyboard-membrane-cracked': 0.35,
      'button-pads-dirty': 0,
    },
  },
  'quellbrook-du5-rev-1': {
    popularity: 3.5,
    without: [...TAPE, 'disc-not-read', 'rattles'],
    factors: {
      ...NO_OUTSIDE_SUPPLY,
      'tape-azimuth-off': 0,
      'mains-lead-open': 1.3,
      'protection-diode-shorted': 0.25,
      'drive-alignment-off': 2,
      'drive-belt-perished': 0.59,
    },
  },
  'quellbrook-tr2-rev-1': {
    popularity: 1.5,
    without: [...DISK, 'disc-not-read'],
    factors: {
      'drive-alignment-off': 0,
      'index-sensor-faulty': 0,
      'track-zero-sensor-faulty': 0,
      'write-protect-sensor-stuck': 0,
      'drive-belt-perished': 1.8,
      'mains-lead-open': 0,
    },
  },
  'bramfield-halo-rev-1': {
    popularity: 3,
    without: CARTRIDGE,
    factors: {
      ...NO_OUTSIDE_SUPPLY,
      'media-faulty': 2,
      'drive-belt-slack': 0.25,
      'drive-belt-perished': 0.16,
      'start-capacitor-dried': 1.7,
      'filter-capacitor-leaked': 2.8,
      'sprite-generator-faulty': 0.35,
      'button-pads-dirty': 0.35,
      'backup-battery-leaked': 0.25,
    },
  },
};
