/**
 * What a unit does as a whole while a fault picture holds; decides what powered checks meet.
 * `dead` no supply; `short` a rail pulled down; `low` too little; `high` too much; `ripple` unclean;
 * `no-clock` nothing is clocked; `halted` the processor does not run the program; `runs` it does.
 */
export type UnitState = 'dead' | 'short' | 'low' | 'high' | 'ripple' | 'no-clock' | 'halted' | 'runs';

/** A fault picture's kernel: chances of symptoms, the unit's state, and how plainly checks show the fault (1 always, 0 never). */
export type Syndrome = { state: UnitState; plain: number; symptoms: Record<string, number> };

const syn = (state: UnitState, plain: number, symptoms: Record<string, number>): Syndrome => ({ state, plain, symptoms });

const machine = {
  dead: syn('dead', 1, { 'no-power': 0.95, 'supply-ticks': 0.03, 'supply-hums': 0.05 }),
  ticking: syn('short', 0.95, { 'no-power': 0.78, 'supply-ticks': 0.74, 'power-light-dim': 0.2 }),
  fuse: syn('short', 0.95, { 'blows-fuse': 0.84, 'no-power': 0.8, 'burnt-smell': 0.28 }),
  hot: syn('short', 0.9, {
    'power-light-dim': 0.55,
    overheats: 0.62,
    'burnt-smell': 0.33,
    'no-picture': 0.5,
    'supply-hums': 0.25,
    'no-power': 0.2,
    'blank-lcd': 0.5,
    'batteries-drain': 0.5,
  }),
  inOut: syn('runs', 0.5, {
    'intermittent-power': 0.84,
    'starts-sometimes': 0.3,
    'changes-when-flexed': 0.35,
    'loose-connector': 0.3,
  }),
  warmCut: syn('low', 0.55, { 'cuts-out-when-warm': 0.7, 'fails-when-warm': 0.45, overheats: 0.4, 'random-resets': 0.2 }),
  lowRail: syn('low', 0.95, {
    'power-light-dim': 0.45,
    'starts-sometimes': 0.4,
    'random-resets': 0.3,
    'crashes-in-use': 0.3,
    'garbage-screen': 0.22,
    'dim-picture': 0.2,
    'black-screen': 0.15,
    'faint-lcd': 0.4,
  }),
  ripple: syn('ripple', 0.95, {
    'hum-bars': 0.7,
    'hum-in-sound': 0.6,
    'supply-hums': 0.3,
    'wavy-picture': 0.4,
    'crashes-in-use': 0.12,
    'faint-lcd': 0.2,
  }),
  slowStart: syn('low', 0.65, { 'needs-warm-up': 0.74, 'starts-sometimes': 0.58, 'wavy-picture': 0.22, 'random-resets': 0.12 }),
  tooMuch: syn('high', 0.95, {
    overheats: 0.6,
    'no-picture': 0.4,
    'black-screen': 0.35,
    'burnt-smell': 0.33,
    'garbage-screen': 0.22,
    'blank-lcd': 0.35,
  }),
  noClock: syn('no-clock', 1, {
    'power-light-only': 0.6,
    'no-picture': 0.62,
    'no-sound': 0.8,
    'black-screen': 0.5,
    'blank-lcd': 0.75,
  }),
  lightOnly: syn('halted', 0.9, {
    'power-light-only': 0.82,
    'no-picture': 0.5,
    'no-sound': 0.7,
    'black-screen': 0.5,
    'blank-lcd': 0.6,
  }),
  black: syn('halted', 0.95, {
    'black-screen': 0.76,
    'no-picture': 0.1,
    'no-sound': 0.66,
    'blank-lcd': 0.6,
    'hangs-at-start': 0.1,
  }),
  grey: syn('halted', 0.95, { 'grey-screen': 0.8, 'no-sound': 0.74, 'white-screen': 0.05, 'blank-lcd': 0.55 }),
  white: syn('halted', 0.95, { 'white-screen': 0.76, 'no-sound': 0.66, 'blank-lcd': 0.25, 'solid-colour-screen': 0.06 }),
  solid: syn('halted', 0.95, { 'solid-colour-screen': 0.74, 'no-sound': 0.55, 'blank-lcd': 0.3, 'border-only': 0.12 }),
  garbage: syn('halted', 0.9, {
    'garbage-screen': 0.8,
    'hangs-at-start': 0.35,
    'no-sound': 0.4,
    'stuck-tone': 0.2,
    'checker-pattern': 0.14,
  }),
  flashing: syn('halted', 0.85, { 'flashing-screen': 0.76, 'random-resets': 0.3, 'garbage-screen': 0.2, 'no-sound': 0.3 }),
  border: syn('halted', 0.9, { 'border-only': 0.76, 'hangs-at-start': 0.35, 'solid-colour-screen': 0.2, 'garbage-screen': 0.1 }),
  resets: syn('runs', 0.7, { 'random-resets': 0.8, 'starts-sometimes': 0.4, 'reset-button-dead': 0.2 }),
  bootStop: syn('halted', 0.8, {
    'hangs-at-start': 0.8,
    'memory-test-fails': 0.28,
    'garbage-screen': 0.08,
    'black-screen': 0.08,
  }),
  bits: syn('runs', 0.9, {
    'memory-test-fails': 0.62,
    'crashes-in-use': 0.42,
    'too-little-memory': 0.32,
    'wrong-characters': 0.3,
    'hangs-at-start': 0.25,
    'checker-pattern': 0.1,
  }),
  crashy: syn('runs', 0.55, { 'crashes-in-use': 0.7, freezes: 0.58, 'random-resets': 0.3, 'fails-when-warm': 0.25 }),
  warmFail: syn('runs', 0.5, { 'fails-when-warm': 0.76, freezes: 0.4, 'crashes-in-use': 0.4, 'garbage-screen': 0.12 }),
  badStart: syn('runs', 0.75, {
    'starts-sometimes': 0.76,
    'reset-button-dead': 0.35,
    'hangs-at-start': 0.3,
    'garbage-screen': 0.15,
  }),
  flexy: syn('runs', 0.5, {
    'changes-when-flexed': 0.74,
    'starts-sometimes': 0.4,
    freezes: 0.25,
    'picture-drops-out': 0.2,
    'cracked-board': 0.08,
  }),
  eaten: syn('halted', 0.85, {
    'leaked-battery': 0.5,
    'leaked-capacitors': 0.3,
    'liquid-damage': 0.3,
    'black-screen': 0.3,
    'some-keys-dead': 0.2,
    'hangs-at-start': 0.2,
  }),
  leaking: syn('low', 0.9, {
    'leaked-capacitors': 0.76,
    'quiet-sound': 0.42,
    'distorted-sound': 0.25,
    'faint-lcd': 0.25,
    'starts-sometimes': 0.2,
  }),
  nothing: syn('runs', 0.2, {}),
} satisfies Record<string, Syndrome>;

const picture = {
  chars: syn('runs', 0.9, { 'wrong-characters': 0.8, 'missing-graphics': 0.35, 'vertical-stripes': 0.22 }),
  stripes: syn('runs', 0.9, { 'vertical-stripes': 0.77, 'wrong-characters': 0.28, 'faint-vertical-bars': 0.12 }),
  sprites: syn('runs', 0.9, { 'sprites-corrupt': 0.7, 'sprites-missing': 0.46, 'missing-graphics': 0.3 }),
  graphics: syn('runs', 0.9, { 'missing-graphics': 0.76, 'sprites-corrupt': 0.3, 'wrong-characters': 0.3 }),
  noPicture: syn('runs', 0.95, { 'no-picture': 0.86, 'blank-lcd': 0.5 }),
  dark: syn('runs', 0.85, { 'dim-picture': 0.68, 'smeared-picture': 0.32, 'picture-drops-out': 0.12 }),
  noColour: syn('runs', 0.9, { 'no-colour': 0.86, 'wrong-colours': 0.16 }),
  wrongColour: syn('runs', 0.9, { 'wrong-colours': 0.8, 'missing-primary': 0.32 }),
  primary: syn('runs', 0.9, { 'missing-primary': 0.8, 'wrong-colours': 0.36 }),
  rolling: syn('runs', 0.9, { 'picture-rolls': 0.76, 'picture-slants': 0.42, 'wavy-picture': 0.12 }),
  snow: syn('runs', 0.85, { 'snowy-picture': 0.8, 'wavy-picture': 0.22, 'dim-picture': 0.12 }),
  dropsOut: syn('runs', 0.55, {
    'picture-drops-out': 0.76,
    'changes-when-flexed': 0.28,
    'loose-connector': 0.3,
    'missing-primary': 0.14,
  }),
  wavy: syn('runs', 0.75, { 'wavy-picture': 0.76, 'hum-bars': 0.3, 'hum-in-sound': 0.3 }),
} satisfies Record<string, Syndrome>;

const soundAndInput = {
  silent: syn('runs', 0.95, { 'no-sound': 0.9 }),
  distorted: syn('runs', 0.85, { 'distorted-sound': 0.77, 'quiet-sound': 0.3, 'crackling-sound': 0.16 }),
  quiet: syn('runs', 0.85, { 'quiet-sound': 0.78, 'distorted-sound': 0.2, 'hum-in-sound': 0.1 }),
  crackle: syn('runs', 0.85, { 'crackling-sound': 0.82, 'sound-one-side': 0.22, 'quiet-sound': 0.15 }),
  voice: syn('runs', 0.9, { 'missing-voice': 0.8, 'distorted-sound': 0.14, 'stuck-tone': 0.14 }),
  phonesOnly: syn('runs', 0.9, { 'headphones-only': 0.88, 'no-sound': 0.06 }),
  someKeys: syn('runs', 0.85, { 'some-keys-dead': 0.82, 'key-repeats': 0.14 }),
  keyRow: syn('runs', 0.9, { 'key-row-dead': 0.82, 'some-keys-dead': 0.22 }),
  allKeys: syn('runs', 0.9, { 'all-keys-dead': 0.84, 'controller-not-read': 0.12 }),
  keyRepeats: syn('runs', 0.85, { 'key-repeats': 0.82, 'wrong-input': 0.12 }),
  padDead: syn('runs', 0.9, { 'controller-not-read': 0.82 }),
  directionDead: syn('runs', 0.85, { 'direction-dead': 0.82, 'wrong-input': 0.15 }),
  wrongInput: syn('runs', 0.8, { 'wrong-input': 0.66, 'pointer-drifts': 0.35 }),
  force: syn('runs', 0.85, { 'buttons-need-force': 0.82, 'direction-dead': 0.26 }),
} satisfies Record<string, Syndrome>;

const mediaAndDrives = {
  noCartridge: syn('halted', 0.8, {
    'cartridge-not-read': 0.82,
    'grey-screen': 0.14,
    'black-screen': 0.12,
    'garbage-screen': 0.08,
  }),
  fussy: syn('runs', 0.7, {
    'cartridge-fussy': 0.84,
    'garbage-screen': 0.2,
    'starts-sometimes': 0.2,
    'changes-when-flexed': 0.18,
  }),
  oneMedium: syn('runs', 0.9, { 'single-medium-fails': 0.86 }),
  tapeErrors: syn('runs', 0.85, { 'tape-load-errors': 0.86, 'tape-not-recording': 0.15 }),
  tapeSpeed: syn('runs', 0.9, { 'tape-speed-wrong': 0.8, 'tape-load-errors': 0.6 }),
  tapeChewed: syn('runs', 0.9, { 'tape-chewed': 0.8, 'tape-load-errors': 0.4 }),
  diskErrors: syn('runs', 0.85, { 'disk-read-errors': 0.84, 'disk-write-fails': 0.35 }),
  diskStill: syn('runs', 0.95, { 'disk-not-spinning': 0.84, 'tape-load-errors': 0.3, 'disc-not-read': 0.6 }),
  driveGone: syn('runs', 0.9, { 'drive-not-seen': 0.82, 'disc-not-read': 0.4 }),
  noDisc: syn('runs', 0.9, { 'disc-not-read': 0.86 }),
  discSkips: syn('runs', 0.7, { freezes: 0.45, 'single-medium-fails': 0.5, 'disc-not-read': 0.3 }),
  noExpansion: syn('runs', 0.85, { 'expansion-not-seen': 0.84, 'crashes-in-use': 0.15 }),
  savesLost: syn('runs', 0.95, { 'saves-lost': 0.88 }),
  leakedCell: syn('runs', 0.95, { 'leaked-battery': 0.86, 'saves-lost': 0.45 }),
} satisfies Record<string, Syndrome>;

const screens = {
  onBatteries: syn('runs', 0.8, { 'dead-on-batteries': 0.8, 'intermittent-power': 0.4, 'loose-connector': 0.12 }),
  onAdapter: syn('runs', 0.9, { 'dead-on-adapter': 0.84 }),
  blankLcd: syn('runs', 0.9, { 'blank-lcd': 0.84 }),
  faintLcd: syn('runs', 0.85, { 'faint-lcd': 0.84 }),
  lcdLines: syn('runs', 0.9, { 'missing-lcd-lines': 0.88, 'changes-when-flexed': 0.3 }),
  lcdDark: syn('runs', 0.8, { 'dark-lcd-blotches': 0.84, 'faint-lcd': 0.3 }),
  noRaster: syn('runs', 0.95, { 'no-raster': 0.88, 'monitor-whine': 0.1 }),
  whine: syn('runs', 0.85, { 'monitor-whine': 0.7, 'no-raster': 0.45, 'picture-shrunk': 0.3 }),
  arcs: syn('runs', 0.8, { arcing: 0.72, 'burnt-smell': 0.3, 'no-raster': 0.3 }),
  hLine: syn('runs', 0.95, { 'horizontal-line': 0.9 }),
  shrunk: syn('runs', 0.85, { 'picture-shrunk': 0.76, 'picture-folded': 0.3, 'picture-bowed': 0.2 }),
  folded: syn('runs', 0.85, { 'picture-folded': 0.78, 'picture-shrunk': 0.3 }),
  blurred: syn('runs', 0.85, { 'blurred-picture': 0.82, blooming: 0.2 }),
  retrace: syn('runs', 0.85, { 'retrace-lines': 0.84, blooming: 0.1 }),
  blotches: syn('runs', 0.9, { 'colour-blotches': 0.9 }),
} satisfies Record<string, Syndrome>;

/** Every fault picture's kernel by name; a cause mixes one to three of them. */
export const syndromes = { ...machine, ...picture, ...soundAndInput, ...mediaAndDrives, ...screens };
export type SyndromeName = keyof typeof syndromes;
