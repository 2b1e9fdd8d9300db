import { type Causes, cause, screens } from './cause';

/** What makes the picture in a computer, console or arcade board. */
export const videoCauses: Causes = {
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
