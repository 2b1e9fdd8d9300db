import { type Causes, cause, screens } from './cause';

/** Memory, ROMs and what serves them, and the input/output chip. */
export const memoryCauses: Causes = {
  'program-rom-bit-rot': cause(
    2.1,
    0.12,
    'rom-compared=differs:.92 rom-swapped=cured:.95 diagnostic-medium=rom-error:.6 diagnostic-medium=does-not-start:.25',
    [
      ...screens({ hang: 3, garbage: 1.5, grey: 1.5, black: 1 }),
      [2, '@crashes-in-use:.75 @freezes:.4'],
      [0.6, 'thermal @crashes-in-use:.5'],
    ],
  ),
  'program-rom-dead': cause(
    1.5,
    0.05,
    'rom-compared=unreadable:.75 rom-compared=differs:.2 rom-swapped=cured:.96 wild-program diagnostic-medium=does-not-start:.6 diagnostic-medium=rom-error:.2',
    [...screens({ grey: 3, black: 3, garbage: 2, solid: 1.5, checker: 1, flashing: 1 }, 'data-lines=some-stuck:.3')],
  ),
  'work-ram-stuck-bit': cause(
    7.9,
    0.08,
    'ram-piggyback=cured:.4 ram-piggyback=changed:.25 ram-temperature=one-hot:.25 diagnostic-medium=memory-error:.7 diagnostic-medium=does-not-start:.2',
    [
      ...screens({ hang: 3, garbage: 2, black: 2, grey: 1.6, flashing: 1 }, 'ram-data-outputs=one-stuck:.85 wild-program'),
      [2, '@memory-test-fails:.85 ram-data-outputs=one-stuck:.8'],
      [1.5, '@too-little-memory:.85 ram-data-outputs=one-stuck:.6 diagnostic-medium=memory-error:.85'],
      [1, '@crashes-in-use:.7 ram-data-outputs=one-stuck:.7'],
      [0.8, '@wrong-characters:.5 ram-data-outputs=one-stuck:.7'],
    ],
  ),
  'work-ram-shorted': cause(
    2.1,
    0.05,
    'ram-temperature=one-hot:.86 ram-piggyback=changed:.2 wild-program current-drawn=high:.3',
    [
      ...screens({ black: 3, grey: 2, hang: 1.5, garbage: 1.5 }, 'ram-data-outputs=one-stuck:.75 data-lines=some-stuck:.5'),
      [1.5, 'low-5v rails-short-test=low:.6 black ram-data-outputs=none-active:.5'],
      [1, '@too-little-memory:.6 @memory-test-fails:.6 ram-data-outputs=one-stuck:.8'],
    ],
  ),
  'work-ram-intermittent': cause(
    2.5,
    0.7,
    'diagnostic-medium=memory-error:.6 ram-piggyback=cured:.4 ram-piggyback=changed:.2 ram-data-outputs=one-stuck:.3',
    [
      [3, '@crashes-in-use:.85 @freezes:.4'],
      [2, 'thermal @crashes-in-use:.6 @memory-test-fails:.3'],
      [1, 'hang @starts-sometimes:.5'],
      [1, '@memory-test-fails:.6 @random-resets:.3'],
    ],
  ),
  'video-ram-stuck-bit': cause(
    5.5,
    0.08,
    'video-ram-data=one-stuck:.86 video-ram-piggyback=cured:.4 video-ram-piggyback=changed:.28 video-ram-temperature=one-hot:.25 diagnostic-medium=memory-error:.25 other-video-output=same-fault:.94',
    [
      [3, '@wrong-characters:.8 @vertical-stripes:.2'],
      [2.5, '@vertical-stripes:.8 @checker-pattern:.15'],
      [2, '@wrong-colours:.5 @missing-graphics:.3 @sprites-corrupt:.3'],
      [2, 'garbage'],
      [2.6, 'grey'],
      [1, '@sprites-corrupt:.7 @missing-graphics:.3'],
      [0.8, '@missing-lcd-lines:.1 @checker-pattern:.6'],
    ],
  ),
  'video-ram-shorted': cause(
    1.5,
    0.04,
    'video-ram-temperature=one-hot:.87 video-ram-data=one-stuck:.6 video-ram-data=none-active:.2 video-ram-piggyback=changed:.2 current-drawn=high:.3 other-video-output=same-fault:.94',
    [
      ...screens({ garbage: 2.5, grey: 3.2, solid: 1.5, checker: 1.2, black: 1, white: 0.8 }),
      [1, 'low-5v rails-short-test=low:.55 black'],
    ],
  ),
  'colour-ram-faulty': cause(
    1.3,
    0.1,
    'other-video-output=same-fault:.94 diagnostic-medium=memory-error:.35 logic-piggyback=cured:.2',
    [
      [4, '@wrong-colours:.85'],
      [1, '@wrong-colours:.4 @flashing-screen:.3'],
      [1, '@no-colour:.3 @missing-graphics:.2 @wrong-colours:.4'],
    ],
  ),
  'character-rom-faulty': cause(
    1.2,
    0.08,
    'other-video-output=same-fault:.94 diagnostic-medium=rom-error:.25 rom-compared=matches',
    [
      [3, '@wrong-characters:.88'],
      [1.5, '@wrong-characters:.5 @vertical-stripes:.4'],
      [1, '@missing-graphics:.6 garbage'],
      [0.7, 'solid @wrong-characters:.3'],
    ],
  ),
  'graphics-rom-faulty': cause(
    4.4,
    0.12,
    'diagnostic-medium=rom-error:.45 other-video-output=same-fault:.94 rom-compared=differs:.3 sockets-reseated=no-change',
    [
      [3, '@missing-graphics:.8 @sprites-corrupt:.3'],
      [2, '@sprites-corrupt:.8'],
      [1.5, '@wrong-characters:.5 @missing-graphics:.5'],
      [0.8, '@sprites-missing:.7'],
    ],
  ),
  'address-multiplexer-faulty': cause(2.1, 0.1, 'multiplexer-outputs=one-stuck:.9 logic-piggyback=cured:.35', [
    ...screens({ checker: 2, garbage: 2, hang: 1.5, black: 1, grey: 1 }, 'wild-program ram-data-outputs=one-stuck:.2'),
    [2, '@memory-test-fails:.75 @too-little-memory:.35 diagnostic-medium=memory-error:.7'],
    [1, '@wrong-characters:.7 @vertical-stripes:.4'],
    [0.7, 'multiplexer-outputs=none-active:.9 checker'],
  ]),
  'memory-timing-faulty': cause(1.7, 0.12, 'logic-piggyback=cured:.3 wild-program', [
    ...screens(
      { checker: 2.4, garbage: 1.5, black: 1 },
      'ras-line=stuck:.92 ram-data-outputs=none-active:.8 video-ram-data=none-active:.4',
    ),
    ...screens({ checker: 1.6, grey: 1.2, garbage: 1 }, 'cas-line=stuck:.92 ram-data-outputs=none-active:.75'),
    ...screens({ hang: 1.4, garbage: 1, grey: 0.8 }, 'write-enable=stuck:.93'),
    [0.7, 'thermal @crashes-in-use:.7 ras-line=stuck:.2'],
  ]),
  'io-port-dead': cause(
    2.3,
    0.06,
    'io-port-swapped=cured:.95 io-port-activity=stuck:.9 diagnostic-medium=io-error:.75 controller-other-port=same-fault:.85',
    [
      [3, '@all-keys-dead:.88 keyboard-scan-lines=none:.9 @controller-not-read:.6'],
      [3, '@controller-not-read:.88 controller-port-lines=none:.6 controller-swapped=no-change'],
      [1.5, '@tape-load-errors:.5 @tape-not-recording:.5 @some-keys-dead:.3'],
      [1.5, 'hang interrupt-line=stuck:.6 @all-keys-dead:.3'],
      [1, 'black interrupt-line=stuck:.7 wild-program'],
    ],
  ),
  'io-port-line-damaged': cause(
    2.7,
    0.08,
    'io-port-swapped=cured:.94 diagnostic-medium=io-error:.55 controller-other-port=good-there:.5 controller-other-port=same-fault:.48 controller-swapped=no-change',
    [
      [3, '@direction-dead:.85 controller-port-lines=one-stuck:.88'],
      [2, '@key-row-dead:.85 keyboard-scan-lines=one-stuck:.85'],
      [1.5, '@wrong-input:.75 controller-port-lines=one-stuck:.7'],
      [1, '@coin-not-counted:.7 controller-port-lines=one-stuck:.75'],
    ],
  ),
};
