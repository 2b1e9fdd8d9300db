import { type Causes, cause } from './cause';

/** Keys, pads, ports, connectors, the tape interface and batteries. */
export const inputCauses: Causes = {
  'keyboard-contacts-dirty': cause(10, 0.35, 'key-contact-resistance=high:.88 key-contact-resistance=open:.06', [
    [4, '@some-keys-dead:.85'],
    [2, '@key-repeats:.6 @buttons-need-force:.5'],
    [1, '@buttons-need-force:.8'],
  ]),
  'keyboard-membrane-cracked': cause(7.3, 0.15, 'matrix-continuity=line-open:.92 key-contact-resistance=open:.75', [
    [4, '@key-row-dead:.85 @some-keys-dead:.2'],
    [2, '@all-keys-dead:.8'],
    [1, '@some-keys-dead:.8'],
  ]),
  'key-switch-stuck': cause(1.9, 0.15, 'matrix-continuity=lines-joined:.8 key-contact-resistance=good', [
    [3, '@key-repeats:.85'],
    [1, '@all-keys-dead:.5 @key-repeats:.3'],
    [1, 'hang'],
  ]),
  'ribbon-cable-cracked': cause(1.9, 0.4, 'ribbon-inspected=cracked:.8 matrix-continuity=line-open:.5 board-flexed=changes:.25', [
    [3, '@key-row-dead:.6 @some-keys-dead:.4 @missing-lcd-lines:.5 @disk-read-errors:.5'],
    [1, '@all-keys-dead:.7 @blank-lcd:.5 @drive-not-seen:.6 @missing-primary:.4'],
    [1, '@picture-drops-out:.4 @missing-primary:.4 @missing-lcd-lines:.4 @disk-read-errors:.4 @key-row-dead:.3'],
  ]),
  'ribbon-cable-unseated': cause(2.1, 0.3, 'ribbon-inspected=unseated:.92', [
    [3, '@all-keys-dead:.75 @blank-lcd:.6 @drive-not-seen:.7 @no-picture:.3'],
    [1.5, '@key-row-dead:.6 @missing-lcd-lines:.6 @disk-read-errors:.4 @missing-primary:.4'],
    [0.7, '@disk-not-spinning:.5 @drive-grinds:.2 @some-keys-dead:.3'],
  ]),
  'controller-port-cracked': cause(
    3.6,
    0.5,
    'controller-swapped=no-change controller-other-port=good-there joints-inspected=cracked:.65 controller-port-lines=one-stuck:.5 controller-port-supply=absent:.2',
    [
      [3, '@direction-dead:.75 @loose-connector:.4'],
      [2, '@controller-not-read:.85 @loose-connector:.4 controller-port-lines=none:.5'],
      [1, '@wrong-input:.4 @direction-dead:.4'],
    ],
  ),
  'input-filter-open': cause(
    1.3,
    0.1,
    'controller-swapped=no-change controller-other-port=good-there controller-port-lines=one-stuck:.85 controller-port-supply=present',
    [
      [4, '@direction-dead:.88'],
      [1, '@controller-not-read:.7 controller-port-supply=absent:.5'],
      [1, '@coin-not-counted:.5 @direction-dead:.3'],
    ],
  ),
  'button-pads-dirty': cause(8.6, 0.3, 'button-pads-inspected=dirty:.9 controller-swapped=no-change', [
    [4, '@buttons-need-force:.85'],
    [2, '@direction-dead:.75'],
    [1, '@wrong-input:.4 @buttons-need-force:.4'],
  ]),
  'button-pads-worn': cause(2.9, 0.15, 'button-pads-inspected=worn:.88 button-pads-inspected=dirty:.06', [
    [4, '@buttons-need-force:.85'],
    [2, '@direction-dead:.8'],
  ]),
  'coin-switch-stuck': cause(5.5, 0.3, 'diagnostic-medium=io-error:.3', [
    [4, '@coin-not-counted:.9'],
    [1, '@wrong-input:.6'],
  ]),
  'dip-switches-misset': cause(5.5, 0.01, 'dip-switches-set=wrong:.95', [
    [2, '@wrong-input:.35 @no-sound:.4'],
    [2, 'hang'],
    [1.5, '@coin-not-counted:.6'],
    [1, '@wrong-speed:.3 @picture-slants:.1 @memory-test-fails:.2'],
    [1, '@solid-colour-screen:.3 @hangs-at-start:.4'],
  ]),
  'dip-switch-faulty': cause(1.7, 0.4, 'dip-switches-set=right visual-inspection=corrosion:.15', [
    [2, '@coin-not-counted:.5 @wrong-input:.3'],
    [2, '@hangs-at-start:.5 @random-resets:.3'],
    [1, '@no-sound:.5'],
  ]),
  'cartridge-connector-dirty': cause(
    16,
    0.45,
    'connector-pins=dirty:.84 cartridge-port-cleaned=cured:.82 cartridge-port-cleaned=better:.12 media-swapped=no-change media-contacts-cleaned=no-change:.85 media-contacts-cleaned=better:.14 start-without-media=starts:.9 cartridge-port-lines=some-dead:.5',
    [
      [4, '@cartridge-not-read:.7 @cartridge-fussy:.6'],
      [2, '@cartridge-fussy:.9'],
      [1, '@cartridge-not-read:.5 black start-without-media=starts'],
      [1, '@garbage-screen:.5 @cartridge-fussy:.5'],
      [1, 'flashing @cartridge-fussy:.4'],
      [0.8, '@crashes-in-use:.5 @cartridge-fussy:.4'],
      [0.8, 'grey start-without-media=starts @cartridge-not-read:.3'],
    ],
  ),
  'cartridge-connector-loose': cause(
    4.4,
    0.6,
    'connector-pins=loose:.75 connector-pins=bent:.18 cartridge-port-cleaned=better:.2 cartridge-port-cleaned=cured:.05 media-swapped=no-change board-flexed=changes:.25 start-without-media=starts:.9 cartridge-port-lines=some-dead:.55',
    [
      [3, '@cartridge-fussy:.88 @loose-connector:.5'],
      [2, '@cartridge-not-read:.75 @loose-connector:.4'],
      [1, '@crashes-in-use:.6 @cartridge-fussy:.4'],
      [1, 'flashing'],
    ],
  ),
  'expansion-connector-dirty': cause(1.2, 0.4, 'visual-inspection=corrosion:.65 board-flexed=changes:.4', [
    [4, '@expansion-not-seen:.88'],
    [1, '@crashes-in-use:.5 @expansion-not-seen:.4'],
  ]),
  'edge-connector-dirty': cause(12, 0.45, 'edge-connector-inspected=dirty:.86 rail-5v=low:.15', [
    [2, '@random-resets:.5 @crashes-in-use:.4'],
    [2, '@coin-not-counted:.4 @direction-dead:.5'],
    [1.5, '@missing-primary:.7'],
    [1, '@no-sound:.6 @crackling-sound:.3'],
    [1, 'low-5v hang'],
    [1, '@picture-rolls:.6'],
  ]),
  'edge-connector-burnt': cause(
    3.9,
    0.3,
    'edge-connector-inspected=burnt:.9 visual-inspection=burnt-part:.65 rail-at-chips=dropped:.5 @burnt-smell:.2',
    [
      [3, 'low-5v @random-resets:.4'],
      [2, 'no-5v'],
      [1, '@no-sound:.5 rail-12v=low:.5'],
    ],
  ),
  'tape-interface-faulty': cause(2.5, 0.1, 'tape-interface-output=flat:.88 tape-input-level=good:.9 media-swapped=no-change', [
    [4, '@tape-load-errors:.9'],
    [1, '@tape-not-recording:.85 tape-record-level=absent:.88 tape-interface-output=pulsing'],
    [1, '@tape-load-errors:.8 @tape-not-recording:.7 tape-record-level=absent:.8'],
  ]),
  'backup-battery-flat': cause(
    7.3,
    0.05,
    'backup-battery-voltage=flat:.75 backup-battery-voltage=weak:.2 battery-inspected=intact @saves-lost:.9',
    [
      [5, ''],
      [1, '@hangs-at-start:.5'],
    ],
  ),
  'backup-battery-leaked': cause(
    7.9,
    0.12,
    'battery-inspected=leaking:.95 visual-inspection=leakage:.6 visual-inspection=corrosion:.35 corroded-traces-inspected=eaten:.75 trace-continuity=open:.5 backup-battery-voltage=flat:.8 @leaked-battery:.7',
    [
      [3, '@saves-lost:.6 wild-program black'],
      [2, '@saves-lost:.6 @no-sound:.5'],
      [2, '@saves-lost:.6 @crashes-in-use:.5'],
      [1, 'hang @saves-lost:.5'],
      [1, 'grey wild-program'],
      [1, 'garbage wild-program'],
      [1, '@direction-dead:.5 @coin-not-counted:.4 @some-keys-dead:.4'],
    ],
  ),
  'battery-terminal-corroded': cause(
    16,
    0.35,
    'battery-terminals-inspected=corroded:.9 fresh-batteries=no-change:.85 visual-inspection=corrosion:.6 @leaked-battery:.4',
    [
      [4, '@dead-on-batteries:.88'],
      [2, '@intermittent-power:.7 @dead-on-batteries:.4'],
      [1, '@power-light-dim:.6 @batteries-drain:.5 rail-5v=low:.5'],
      [1, '@no-power:.7 power-light=dark:.8'],
    ],
  ),
};
