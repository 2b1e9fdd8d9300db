import { type Causes, cause, screens } from './cause';

/** Clock, reset, processor, buses, sockets, joints and traces. */
export const logicCauses: Causes = {
  'crystal-dead': cause(
    4.4,
    0.12,
    'no-clock no-video-clock crystal-oscillation=dead:.95 clock-generator-output=stuck:.9 crystal-substituted=cured:.95 step-pulses=absent:.6',
    [
      ...screens({ black: 4, 'no-signal': 5, solid: 1, grey: 0.4 }),
      [0.8, 'no-signal thermal'],
      [1, '@drive-not-seen:.9 @blank-lcd:.9'],
    ],
  ),
  'crystal-off-frequency': cause(
    0.85,
    0.05,
    'crystal-oscillation=off-frequency:.85 clock-at-processor=off-frequency:.8 clock-at-video-generator=off-frequency:.8 crystal-substituted=cured:.93 colour-clock=off:.85 @wrong-speed:.25',
    [
      [4, '@no-colour:.85 colour-burst=present'],
      [1, '@wrong-speed:.7 sync-output=off-frequency:.5'],
      [1, '@picture-rolls:.5 @picture-slants:.4 sync-output=off-frequency:.8'],
      [0.7, '@disk-read-errors:.8 @own-disks-only:.4'],
    ],
  ),
  'clock-generator-dead': cause(
    2.9,
    0.08,
    'crystal-oscillation=running clock-generator-output=stuck:.93 logic-piggyback=cured:.3 crystal-substituted=no-change',
    [
      [3, 'no-clock no-video-clock no-signal'],
      [3, 'no-clock grey clock-at-video-generator=pulsing:.95'],
      [2, 'no-clock black clock-at-video-generator=pulsing:.9'],
      [1, 'no-clock garbage clock-at-video-generator=pulsing:.95'],
    ],
  ),
  'clock-generator-weak': cause(
    1,
    0.35,
    'clock-generator-output=weak:.85 clock-at-processor=weak:.75 clock-at-video-generator=weak:.5 crystal-oscillation=weak:.3 wild-program',
    [
      [2, '@crashes-in-use:.6 @random-resets:.3'],
      [2, '@starts-sometimes:.7 grey'],
      [1, 'thermal garbage'],
    ],
  ),
  'colour-trimmer-drifted': cause(
    3.4,
    0.15,
    'colour-clock=off:.9 colour-burst=present:.8 @no-colour:.8 @wrong-colours:.2 other-video-output=same-fault',
    [
      [3, ''],
      [1, '@fails-when-warm:.5 warm-up-trend=worse-warm:.7'],
      [1, '@needs-warm-up:.4 warm-up-trend=better-warm:.6'],
    ],
  ),
  'reset-held': cause(2.9, 0.12, 'reset-active clock-at-processor=pulsing', [
    ...screens({ black: 3, grey: 3, solid: 2, garbage: 1.5, checker: 1 }),
    [1, 'reset-line=cycling:.85 flashing address-lines=some-stuck:.3 @random-resets:.5'],
  ]),
  'reset-missing': cause(2.5, 0.3, 'reset-line=no-pulse:.9 wild-program @starts-sometimes:.65', [
    ...screens({ garbage: 3, black: 2, grey: 2, hang: 2 }),
    [1, '@reset-button-dead:.7 reset-button-test=no-response:.9'],
  ]),
  'processor-dead': cause(4.4, 0.05, 'no-run processor-swapped=cured:.95 rom-swapped=no-change', [
    ...screens(
      { black: 3, grey: 3, garbage: 1.5, solid: 1.5, checker: 0.7, white: 0.6 },
      'lines-dead processor-temperature=hot:.45 processor-temperature=cold:.2',
    ),
    ...screens(
      { grey: 1.2, black: 1.2, garbage: 1.2 },
      'address-lines=some-stuck:.6 data-lines=some-stuck:.4 processor-temperature=hot:.4',
    ),
    [0.6, 'lines-dead black processor-temperature=hot:.85 current-drawn=high:.5 @overheats:.3'],
  ]),
  'processor-partial': cause(
    1.7,
    0.25,
    'wild-program processor-swapped=cured:.94 processor-temperature=hot:.15 address-lines=some-stuck:.25',
    [
      [2, '@crashes-in-use:.8 @freezes:.4'],
      [2, 'hang'],
      [1, 'thermal @crashes-in-use:.6'],
      [1, 'garbage'],
      [0.7, 'interrupt-line=stuck:.5 @all-keys-dead:.5'],
    ],
  ),
  'address-decoder-stuck': cause(3.2, 0.1, 'decoder-outputs=one-stuck:.9 logic-piggyback=cured:.25', [
    ...screens({ grey: 2, black: 2, garbage: 1.5, hang: 1.5 }, 'rom-select=stuck:.9 wild-program'),
    ...screens({ checker: 1.5, garbage: 1.5, hang: 1, grey: 1 }, 'ram-select=stuck:.9 wild-program @memory-test-fails:.3'),
    ...screens({ garbage: 1.5, border: 1, solid: 1 }, 'video-select=stuck:.9'),
    [1.5, '@no-sound:.5 @all-keys-dead:.4 @controller-not-read:.4 @cartridge-not-read:.25 io-port-activity=stuck:.6'],
  ]),
  'address-decoder-dead': cause(
    1.3,
    0.06,
    'decoder-outputs=none-active:.92 rom-select=stuck:.93 ram-select=stuck:.93 video-select=stuck:.92 no-run logic-piggyback=cured:.3',
    [...screens({ black: 3, grey: 3, garbage: 2, solid: 1, checker: 1 })],
  ),
  'bus-buffer-stuck': cause(
    2.9,
    0.1,
    'buffered-lines=one-stuck:.9 leg-lifted=line-freed:.85 logic-piggyback=cured:.2 wild-program',
    [
      ...screens({ garbage: 2.5, black: 2, grey: 2, hang: 1.5, checker: 1 }, 'data-lines=some-stuck:.8'),
      ...screens({ garbage: 1, grey: 1, hang: 1 }, 'address-lines=some-stuck:.7'),
      [1.2, '@cartridge-not-read:.7 @expansion-not-seen:.5 cartridge-port-lines=some-dead:.85'],
    ],
  ),
  'bus-buffer-open': cause(1.7, 0.15, 'logic-piggyback=cured:.88 wild-program', [
    ...screens({ garbage: 2, grey: 2, black: 1.5, hang: 1.5 }, 'buffered-lines=dead:.5 buffered-lines=one-stuck:.4'),
    [1.5, 'buffered-lines=one-stuck:.8 @wrong-characters:.6 @wrong-colours:.3 @memory-test-fails:.3'],
    [1.2, '@cartridge-not-read:.75 cartridge-port-lines=some-dead:.88 buffered-lines=one-stuck:.6'],
  ]),
  'ic-socket-oxidised': cause(
    9.2,
    0.55,
    'sockets-reseated=cured:.78 sockets-reseated=changed:.14 socket-continuity=open:.75 processor-swapped=cured:.12 video-generator-swapped=cured:.12 rom-swapped=cured:.15 board-flexed=changes:.35 visual-inspection=corrosion:.15',
    [
      ...screens({ black: 2, grey: 2, garbage: 1.5, hang: 1.5, solid: 0.6 }, 'wild-program'),
      [2, '@crashes-in-use:.75 @freezes:.3'],
      [1, '@no-sound:.6 @missing-voice:.3 sound-generator-swapped=cured:.5'],
      [1, '@wrong-colours:.4 @wrong-characters:.4 @garbage-screen:.3'],
      [0.7, '@all-keys-dead:.5 @some-keys-dead:.3 io-port-swapped=cured:.5'],
    ],
  ),
  'solder-joint-cracked': cause(12, 0.6, 'mechanical joints-inspected=cracked:.78 visual-inspection=cracked-joint:.4', [
    [2, '@intermittent-power:.7 @random-resets:.3'],
    [2, '@crashes-in-use:.6 wild-program'],
    [1.5, '@picture-drops-out:.8 cable-wiggled=picture-returns:.2'],
    [1.5, '@no-sound:.5 @crackling-sound:.5'],
    [1.5, 'horizontal-line-way'],
    [1, 'black wild-program'],
    [1, '@missing-lcd-lines:.3 @direction-dead:.5 @disk-read-errors:.5'],
    [1, 'no-input @intermittent-power:.5'],
    [1, '@drive-not-seen:.6'],
  ]),
  'trace-open': cause(
    2.3,
    0.2,
    'trace-continuity=open:.86 @cracked-board:.25 board-flexed=changes:.3 visual-inspection=cracked-joint:.1',
    [
      ...screens({ black: 1, grey: 1, garbage: 1 }, 'wild-program address-lines=some-stuck:.3'),
      [1.5, '@direction-dead:.4 @some-keys-dead:.4 @key-row-dead:.3 controller-port-lines=one-stuck:.4'],
      [1, '@no-sound:.7'],
      [1, 'no-5v rail-5v=in-tolerance:.6 rail-5v=absent:.35 rail-at-chips=absent:.8 rail-at-chips=dropped:.15'],
      [1, '@missing-primary:.5 @no-colour:.3'],
      [1, '@drive-not-seen:.5 @disk-read-errors:.4 @tape-load-errors:.3'],
    ],
  ),
  'trace-corroded': cause(
    2.9,
    0.15,
    'corroded-traces-inspected=eaten:.9 trace-continuity=open:.75 visual-inspection=corrosion:.85 @liquid-damage:.4',
    [
      ...screens({ black: 1.5, grey: 1, garbage: 1.5, hang: 1 }, 'wild-program'),
      [1.5, '@some-keys-dead:.3 @direction-dead:.5 @no-sound:.25'],
      [1, '@intermittent-power:.4 rail-at-chips=dropped:.6'],
      [1, '@cartridge-not-read:.4 @crashes-in-use:.4 @disk-read-errors:.4'],
      [0.7, '@no-power:.6 rail-at-chips=absent:.6'],
    ],
  ),
  'solder-bridge': cause(
    0.58,
    0.08,
    'visual-inspection=cracked-joint:.4 shield-clearance=touching:.6 joints-inspected=cracked:.35',
    [
      [1, 'short-5v decoupler-lifted=no-change'],
      ...screens({ black: 1, garbage: 1, grey: 1 }, 'wild-program data-lines=some-stuck:.6'),
      [1, '@wrong-input:.5 @stuck-tone:.2 @missing-primary:.3'],
    ],
  ),
};
