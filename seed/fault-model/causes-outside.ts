import { type Causes, cause } from './cause';

const SUPPLY = 'supply-swapped=cured:.96 working-unit-same-chain=fails-too:.96 accessories-removed=no-change';
const CHAIN = 'working-unit-same-chain=fails-too:.97 other-video-output=good-there';

/** Faults outside the unit, and no fault at all. */
export const outsideCauses: Causes = {
  'external-supply-dead': cause(11, 0.08, SUPPLY, [
    [8, 'no-input supply-apart=absent:.96 supply-under-load=absent:.95 supply-ripple-apart=low'],
    [1, 'no-input supply-apart=in-tolerance:.9 supply-under-load=absent:.7 supply-under-load=sags:.28'],
  ]),
  'external-supply-low': cause(8.6, 0.12, `${SUPPLY} low-5v regulator-input=low:.85 supply-under-load=sags:.9`, [
    [5, 'supply-apart=low:.8 @power-light-dim:.4'],
    [3, 'supply-apart=in-tolerance:.85 @hangs-at-start:.4 @crashes-in-use:.4 @cuts-out-when-warm:.15'],
    [2, 'supply-apart=low:.7 @no-picture:.5 rail-5v=low:.92 @wavy-picture:.2 ripple-5v'],
    [1, 'supply-apart=low:.7 @quiet-sound:.3 @tape-speed-wrong:.4 @disk-read-errors:.4'],
  ]),
  'external-supply-over-voltage': cause(0.6, 0.05, `${SUPPLY} supply-apart=high:.95 supply-under-load=holds`, [
    [3, 'high-5v regulator-temperature=hot:.8 @overheats:.5'],
    [1, 'no-5v protection-diode-test=shorted:.5 @burnt-smell:.3 rail-5v=absent:.8'],
  ]),
  'external-supply-ripple': cause(3.6, 0.05, `${SUPPLY} supply-ripple-apart=high:.93 ripple-5v supply-apart=in-tolerance:.85`, [
    [4, '@hum-bars:.7 @hum-in-sound:.5'],
    [2, '@crashes-in-use:.5 @random-resets:.4'],
    [1, '@wavy-picture:.6 @supply-hums:.4'],
  ]),
  'external-supply-wrong': cause(2, 0.02, `${SUPPLY} `, [
    [4, 'no-input supply-apart=in-tolerance:.3 supply-apart=low:.35 supply-apart=high:.3'],
    [3, 'low-5v supply-apart=low:.75 @supply-hums:.3'],
    [2, 'ripple-5v supply-ripple-apart=high:.7 supply-apart=high:.4 @hum-bars:.4'],
  ]),
  'external-supply-cord-broken': cause(
    5.9,
    0.75,
    `${SUPPLY} plug-wiggled=cuts-in-and-out:.85 visual-inspection=broken-wire:.12`,
    [
      [3, 'no-input supply-apart=absent:.5 @intermittent-power:.75'],
      [2, 'power-light=flickering:.5 @intermittent-power:.9 @random-resets:.55'],
    ],
  ),
  'mains-lead-open': cause(
    1.2,
    0.3,
    'no-input mains-lead-swapped=cured:.97 plug-wiggled=cuts-in-and-out:.3 supply-apart=absent:.9 working-unit-same-chain=fails-too:.9 @intermittent-power:.2',
  ),
  'display-faulty': cause(5.1, 0.12, `${CHAIN} display-swapped=cured:.97 other-video-output=same-fault:.6`, [
    [4, '@no-picture:.85'],
    [2, '@picture-rolls:.75 @picture-slants:.3'],
    [1, '@dim-picture:.7'],
    [1, '@wrong-colours:.5 @missing-primary:.4'],
    [1, '@wavy-picture:.5 @picture-drops-out:.3'],
    [1, '@no-colour:.8'],
  ]),
  'display-standard-mismatch': cause(2.9, 0.01, `${CHAIN} display-swapped=cured:.9 other-video-output=same-fault:.5`, [
    [3, '@no-colour:.85'],
    [3, '@picture-rolls:.85'],
    [1, '@no-picture:.7 @picture-slants:.3'],
    [1, '@wrong-speed:.5 @picture-rolls:.5'],
  ]),
  'wrong-input-selected': cause(4.4, 0.01, `${CHAIN} input-selected=wrong:.96 display-swapped=cured:.3`, [
    [5, '@no-picture:.9'],
    [2, '@snowy-picture:.85'],
    [1, '@no-picture:.5 @no-sound:.7'],
  ]),
  'av-cable-open': cause(5.9, 0.25, `${CHAIN} cable-swapped=cured:.96 cable-wiggled=picture-returns:.45`, [
    [4, '@no-picture:.9 @no-sound:.3'],
    [2, '@no-sound:.85 sound-other-output=good-there'],
    [1, '@sound-one-side:.85'],
    [2, '@missing-primary:.6 @wrong-colours:.4'],
    [1, '@picture-drops-out:.85 @crackling-sound:.3'],
  ]),
  'av-cable-poor-ground': cause(2.3, 0.35, `${CHAIN} cable-swapped=cured:.93 cable-wiggled=picture-returns:.4`, [
    [3, '@hum-bars:.6 @hum-in-sound:.65'],
    [2, '@wavy-picture:.7 @snowy-picture:.25'],
    [1, '@picture-rolls:.5 @dim-picture:.4'],
  ]),
  'media-dirty': cause(
    7.7,
    0.35,
    'media-swapped=cured:.93 media-contacts-cleaned=cured:.85 media-contacts-cleaned=better:.1 start-without-media=starts @single-medium-fails:.6',
    [
      [4, '@cartridge-not-read:.6 @cartridge-fussy:.55'],
      [1, '@garbage-screen:.5 @cartridge-fussy:.5'],
      [1.2, '@tape-load-errors:.75 @disk-read-errors:.75 @disc-not-read:.6'],
    ],
  ),
  'media-faulty': cause(
    3.6,
    0.05,
    'media-swapped=cured:.96 start-without-media=starts media-contacts-cleaned=no-change @single-medium-fails:.88',
    [
      [3, '@cartridge-not-read:.6'],
      [2, '@tape-load-errors:.6 @disk-read-errors:.65 @disc-not-read:.4'],
      [1, '@wrong-characters:.15 @missing-graphics:.2 @crashes-in-use:.35'],
    ],
  ),
  'controller-cord-broken': cause(
    3.3,
    0.4,
    'controller-swapped=cured:.97 controller-other-port=same-fault:.95 controller-cord-continuity=open:.92',
    [
      [3, '@direction-dead:.85'],
      [2, '@controller-not-read:.9'],
      [1, '@wrong-input:.5 @direction-dead:.3'],
    ],
  ),
  'controller-contacts-worn': cause(4, 0.15, 'controller-swapped=cured:.95 controller-other-port=same-fault:.95', [
    [4, '@buttons-need-force:.85'],
    [2, '@direction-dead:.7 @buttons-need-force:.3'],
    [1, '@pointer-drifts:.7'],
    [1, '@wrong-input:.5'],
  ]),
  'expansion-unit-faulty': cause(1.8, 0.15, 'accessories-removed=cured:.96', [
    [3, '@expansion-not-seen:.85 accessories-removed=no-change:.6'],
    [2, '@hangs-at-start:.5 @crashes-in-use:.4'],
    [1, 'no-run black'],
    [1, 'low-5v'],
  ]),
  'harness-wire-open': cause(18, 0.35, 'harness-continuity=open:.92 visual-inspection=broken-wire:.25', [
    [3, '@coin-not-counted:.4 @direction-dead:.65'],
    [2, '@no-sound:.85'],
    [2, '@missing-primary:.8'],
    [2, 'no-5v rail-5v=absent:.85'],
    [1, '@picture-rolls:.8'],
    [1, '@controller-not-read:.8'],
  ]),
  'no-fault-found': cause(6.3, 0.3, 'works-now', [
    [4, '@no-picture:.8 @starts-sometimes:.4 @blank-lcd:.5'],
    [2, '@crashes-in-use:.8 @freezes:.4 @picture-drops-out:.5'],
    [2, '@cartridge-not-read:.7 @single-medium-fails:.4 @disk-read-errors:.6 @tape-load-errors:.6'],
    [1, '@wrong-colours:.5 @no-colour:.5 @wavy-picture:.4 @cartridge-fussy:.3'],
    [1, '@no-sound:.6 @buttons-need-force:.4 @some-keys-dead:.3'],
    [2, '@no-power:.7 @intermittent-power:.7'],
  ]),
};
