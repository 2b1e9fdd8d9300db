import { type Causes, cause, screens } from './cause';

/** Memory, ROMs, input/output chips, and everything that makes a picture in a computer, console or arcade board. */
export const memoryVideoCauses: Causes = {
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
  'video-generator-dead': cause(
    3.9,
    0.05,
    'video-generator-swapped=cured:.96 video-generator-temperature=hot:.45 video-generator-temperature=cold:.18 other-video-output=same-fault:.94 clock-at-video-generator=pulsing',
    [
      [
        4,
        'no-signal video-generator-output=flat:.93 sync-output=absent:.9 encoder-input=flat:.88 encoder-output=flat:.8 rgb-outputs=none:.8 video-at-connector=flat:.85 modulator-input=absent:.8 interrupt-line=quiet:.6',
      ],
      ...screens(
        { black: 2, grey: 1.6, solid: 1.2, white: 0.8 },
        'video-generator-output=partial:.7 video-generator-output=flat:.22 interrupt-line=quiet:.4 video-ram-data=none-active:.3',
      ),
      [
        1,
        'no-clock no-signal clock-at-processor=stuck:.9 video-generator-output=flat:.9 sync-output=absent:.9 clock-at-video-generator=pulsing:.95',
      ],
      [0.8, 'no-signal video-generator-temperature=hot:.9 @overheats:.3 video-generator-output=flat:.9 sync-output=absent:.85'],
    ],
  ),
  'video-generator-partial': cause(
    2.9,
    0.22,
    'video-generator-swapped=cured:.95 other-video-output=same-fault:.94 video-generator-temperature=hot:.2 video-generator-output=partial:.65',
    [
      [2, '@wrong-colours:.6 @missing-graphics:.3'],
      [2, '@sprites-missing:.5 @sprites-corrupt:.5'],
      [1.5, 'thermal @garbage-screen:.3 @picture-drops-out:.3'],
      [1.5, '@wrong-characters:.6 @vertical-stripes:.3'],
      [1.5, '@picture-rolls:.5 @picture-slants:.4 sync-output=off-frequency:.6'],
      [1, 'border'],
      [1, '@no-colour:.6 colour-burst=absent:.3 encoder-input=weak:.3'],
      [1, 'ras-line=stuck:.3 checker'],
    ],
  ),
  'sprite-generator-faulty': cause(
    3.4,
    0.14,
    'other-video-output=same-fault:.94 video-generator-output=partial:.3 cooling-spray=one-part-reacts:.6',
    [
      [3, '@sprites-missing:.85'],
      [3, '@sprites-corrupt:.88'],
      [1, 'thermal @sprites-corrupt:.5'],
      [0.7, '@vertical-stripes:.5 @missing-graphics:.4'],
    ],
  ),
  'palette-faulty': cause(2.1, 0.1, 'other-video-output=same-fault:.9 logic-piggyback=cured:.25', [
    [3, '@wrong-colours:.85 rgb-outputs=one-missing:.3'],
    [2, '@missing-primary:.85 rgb-outputs=one-missing:.9'],
    [1, '@dim-picture:.4 @wrong-colours:.5'],
    [0.6, 'solid rgb-outputs=none:.7'],
  ]),
  'sync-logic-faulty': cause(
    1.9,
    0.12,
    'logic-piggyback=cured:.4 other-video-output=same-fault:.9 video-generator-output=active',
    [
      [3, '@picture-rolls:.75 @picture-slants:.5 sync-output=absent:.8 sync-output=off-frequency:.12'],
      [2, '@no-picture:.6 @picture-rolls:.4 sync-output=absent:.93'],
      [1, '@picture-slants:.85 sync-output=off-frequency:.6'],
    ],
  ),
  'video-encoder-dead': cause(
    2.1,
    0.08,
    'encoder-input=active encoder-output=flat:.9 encoder-output=weak:.07 colour-burst=absent:.9 video-at-connector=flat:.8 modulator-input=absent:.75 other-video-output=same-fault:.75 rgb-outputs=all-three',
    [
      [4, 'no-signal other-video-output=same-fault:.75'],
      [1, '@dim-picture:.8 @no-colour:.3 encoder-output=weak:.85'],
      [0.7, 'thermal @no-picture:.4 @picture-drops-out:.5'],
    ],
  ),
  'video-encoder-no-colour': cause(
    1.7,
    0.12,
    'encoder-input=active colour-burst=absent:.6 colour-burst=weak:.32 colour-clock=in-tolerance @no-colour:.88 other-video-output=same-fault:.8',
    [
      [4, ''],
      [1, '@wrong-colours:.4'],
      [1, 'thermal'],
    ],
  ),
  'video-buffer-open': cause(
    2.1,
    0.12,
    'video-at-connector=flat:.75 video-at-connector=weak:.2 encoder-output=full-level other-video-output=good-there:.75',
    [
      [3, '@no-picture:.85'],
      [2, '@dim-picture:.8 video-at-connector=weak:.85'],
      [1.5, '@missing-primary:.8 rgb-outputs=all-three'],
      [0.7, '@black-screen:.5 @picture-rolls:.4'],
    ],
  ),
  'video-coupling-dried': cause(
    2.7,
    0.1,
    'video-at-connector=weak:.8 encoder-output=full-level capacitor-esr=high:.35 other-video-output=good-there:.6',
    [
      [3, '@dim-picture:.7 @smeared-picture:.5'],
      [2, '@smeared-picture:.8'],
      [1.5, '@picture-rolls:.5 @picture-slants:.3 @dim-picture:.3 sync-output=present'],
      [1, '@needs-warm-up:.5 @dim-picture:.5 warm-up-trend=better-warm:.7'],
      [0.7, '@no-picture:.6 video-at-connector=flat:.4'],
    ],
  ),
  'rf-modulator-dead': cause(
    2.5,
    0.1,
    'other-video-output=good-there:.85 other-video-output=no-other-output:.12 modulator-input=present modulator-supply=absent:.3 visual-inspection=leakage:.65 cable-swapped=no-change',
    [
      [4, '@no-picture:.7 @snowy-picture:.25'],
      [2, '@snowy-picture:.85'],
      [0.8, 'modulator-supply=absent:.6 @no-picture:.75'],
    ],
  ),
  'rf-modulator-drifted': cause(
    1.9,
    0.25,
    'other-video-output=good-there:.85 other-video-output=no-other-output:.12 modulator-input=present warm-up-trend=worse-warm:.5 visual-inspection=leakage:.35',
    [
      [3, '@snowy-picture:.7 @wavy-picture:.35'],
      [2, '@no-sound:.3 @hum-in-sound:.4 @no-colour:.3'],
      [1.5, '@needs-warm-up:.4 @fails-when-warm:.4 @snowy-picture:.5 warm-up-trend=worse-warm:.6'],
      [1, '@no-picture:.6'],
    ],
  ),
  'video-connector-cracked': cause(
    3.9,
    0.6,
    'cable-wiggled=picture-returns:.86 cable-swapped=no-change joints-inspected=cracked:.65 visual-inspection=cracked-joint:.4 video-at-connector=flat:.35 @loose-connector:.5',
    [
      [4, '@picture-drops-out:.85'],
      [2, '@no-picture:.75'],
      [1, '@missing-primary:.7'],
      [0.7, '@no-sound:.5 @crackling-sound:.3 @picture-drops-out:.3'],
    ],
  ),
};
