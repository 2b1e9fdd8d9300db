import { type Causes, cause } from './cause';

/** Disk, tape and disc mechanics, and the screen of a handheld. */
export const driveHandheldCauses: Causes = {
  'disk-controller-faulty': cause(
    2.5,
    0.08,
    'drive-swapped=no-change step-pulses=absent:.75 media-swapped=no-change head-signal=good drive-motor-voltage=present',
    [
      [4, '@drive-not-seen:.85'],
      [2, '@disk-read-errors:.8 @disk-write-fails:.5 step-pulses=present:.6 step-pulses=absent:.35'],
      [1, '@disk-not-spinning:.7 drive-motor-voltage=absent:.7'],
      [0.6, 'thermal @disk-read-errors:.6'],
    ],
  ),
  'drive-logic-faulty': cause(
    3.4,
    0.12,
    'drive-swapped=cured:.95 drive-motor-voltage=absent:.35 head-signal=absent:.35 visual-inspection=burnt-part:.2',
    [
      [3, '@drive-not-seen:.7 drive-motor-voltage=absent:.6 head-signal=absent:.6'],
      [2, '@disk-not-spinning:.85 drive-motor-voltage=absent:.9 drive-speed=not-turning:.9'],
      [2, '@disk-read-errors:.8 head-signal=weak:.5 head-signal=absent:.4 @tape-load-errors:.6'],
      [1, '@disc-not-read:.7 laser-focus-search=no-movement:.7 @tape-not-recording:.5'],
      [1, '@disk-write-fails:.8 @tape-not-recording:.6'],
    ],
  ),
  'drive-belt-slack': cause(6.7, 0.25, 'belt-inspected=slack:.82 belt-inspected=tight:.1 drive-speed=slow:.8 motor-turned=free', [
    [4, '@disk-read-errors:.55 @tape-speed-wrong:.75 @disc-not-read:.3'],
    [2, '@disk-not-spinning:.5 @tape-load-errors:.65 @needs-warm-up:.2'],
    [1, '@tape-chewed:.4 @tape-speed-wrong:.4 @starts-sometimes:.3 @disk-not-spinning:.3'],
  ]),
  'drive-belt-perished': cause(
    7.9,
    0.03,
    'belt-inspected=melted:.6 belt-inspected=broken:.35 drive-speed=not-turning:.85 drive-motor-voltage=present',
    [
      [4, '@disk-not-spinning:.9 @tape-load-errors:.5 @disc-not-read:.4'],
      [1, '@tape-chewed:.6 @tape-speed-wrong:.4 drive-speed=slow:.6 @disk-not-spinning:.4'],
    ],
  ),
  'drive-motor-worn': cause(
    2.1,
    0.25,
    'motor-turned=stiff:.6 motor-turned=seized:.2 drive-motor-voltage=present belt-inspected=tight',
    [
      [3, '@disk-not-spinning:.75 drive-speed=not-turning:.7 drive-speed=slow:.2'],
      [2, '@tape-speed-wrong:.7 @disk-read-errors:.55 drive-speed=slow:.65 drive-speed=fast:.1 @drive-grinds:.3'],
      [1, '@drive-grinds:.6 @rattles:.3 drive-speed=slow:.6 @disc-not-read:.4'],
    ],
  ),
  'drive-speed-misadjusted': cause(2.1, 0.05, 'drive-speed=slow:.5 drive-speed=fast:.44 belt-inspected=tight motor-turned=free', [
    [3, '@own-disks-only:.6 @disk-read-errors:.55 @tape-speed-wrong:.8'],
    [1, '@disk-write-fails:.4 @disk-read-errors:.4 @tape-load-errors:.6'],
  ]),
  'read-head-dirty': cause(11, 0.2, 'head-inspected=dirty:.87 head-signal=weak:.72 head-winding=normal azimuth-by-ear=dull:.45', [
    [4, '@disk-read-errors:.85 @tape-load-errors:.75'],
    [1, '@disk-write-fails:.5 @disk-read-errors:.5 @tape-not-recording:.4'],
    [1, '@quiet-sound:.1 @tape-load-errors:.7 @single-medium-fails:.4'],
  ]),
  'read-head-open': cause(0.85, 0.1, 'head-winding=open:.94 head-signal=absent:.92 head-inspected=clean', [
    [4, '@disk-read-errors:.9 @tape-load-errors:.85'],
    [1, '@disk-write-fails:.8 @tape-not-recording:.8'],
  ]),
  'read-head-worn': cause(1.2, 0.08, 'head-inspected=worn:.82 head-signal=weak:.75 azimuth-by-ear=dull:.5', [
    [3, '@disk-read-errors:.8 @tape-load-errors:.75'],
    [1, '@disk-write-fails:.5 @own-disks-only:.3 @tape-not-recording:.3'],
  ]),
  'tape-azimuth-off': cause(6.7, 0.08, 'azimuth-by-ear=dull:.9 head-inspected=clean head-signal=weak:.3', [
    [3, '@tape-load-errors:.8 @single-medium-fails:.4'],
    [1, '@tape-load-errors:.5 @single-medium-fails:.75'],
  ]),
  'drive-alignment-off': cause(3.4, 0.08, 'disk-alignment=off:.92 head-signal=weak:.3 step-pulses=present carriage-moved=free', [
    [4, '@own-disks-only:.75 @disk-read-errors:.5'],
    [2, '@disk-read-errors:.85'],
    [0.7, '@drive-grinds:.5 @disk-read-errors:.5'],
  ]),
  'head-carriage-stiff': cause(
    3.9,
    0.3,
    'carriage-moved=stiff:.75 carriage-moved=jammed:.2 step-pulses=present track-zero-signal=stuck:.15',
    [
      [4, '@disk-read-errors:.7 @drive-grinds:.5 @disc-not-read:.5'],
      [1, '@drive-grinds:.8'],
      [1, '@needs-warm-up:.5 @disk-read-errors:.5 warm-up-trend=better-warm:.7 @disc-not-read:.3'],
    ],
  ),
  'pinch-roller-hardened': cause(7.3, 0.15, 'pinch-roller-inspected=hard:.9', [
    [3, '@tape-chewed:.75'],
    [2, '@tape-speed-wrong:.65 @tape-load-errors:.5'],
  ]),
  'track-zero-sensor-faulty': cause(1.3, 0.15, 'track-zero-signal=stuck:.92 carriage-moved=free step-pulses=present', [
    [3, '@drive-grinds:.85 @disk-read-errors:.6'],
    [1, '@drive-not-seen:.6 @disk-read-errors:.4'],
  ]),
  'index-sensor-faulty': cause(1, 0.12, 'index-pulse=absent:.93 drive-speed=in-tolerance head-signal=good', [
    [3, '@disk-read-errors:.8 @disk-write-fails:.4'],
    [1, '@drive-not-seen:.7'],
  ]),
  'write-protect-sensor-stuck': cause(1.2, 0.2, 'write-protect-signal=stuck:.93', [[1, '@disk-write-fails:.92']]),
  'laser-lens-dirty': cause(8.6, 0.25, 'lens-inspected=dirty:.85 laser-focus-search=moves', [
    [4, '@disc-not-read:.75 @single-medium-fails:.3'],
    [1, '@single-medium-fails:.75 @crashes-in-use:.2'],
    [1, '@freezes:.3 @disc-not-read:.4'],
  ]),
  'laser-pickup-weak': cause(9.9, 0.15, 'laser-focus-search=no-movement:.55 warm-up-trend=better-warm:.3', [
    [4, '@disc-not-read:.88'],
    [2, '@disc-not-read:.5 @single-medium-fails:.5 @needs-warm-up:.3'],
    [1, '@disc-not-read:.85 laser-focus-search=no-movement:.8'],
  ]),
  'lcd-flex-bond-failed': cause(
    20,
    0.3,
    'lcd-flex-pressed=lines-return:.86 lcd-data-lines=all-active lcd-contrast-voltage=varies',
    [
      [5, '@missing-lcd-lines:.93'],
      [1, '@missing-lcd-lines:.6 @picture-drops-out:.1 @faint-lcd:.2'],
    ],
  ),
  'lcd-panel-broken': cause(
    3.4,
    0.02,
    'visual-inspection=leakage:.6 lcd-flex-pressed=no-change lcd-data-lines=all-active @dark-lcd-blotches:.5',
    [
      [3, '@dark-lcd-blotches:.88'],
      [1, '@missing-lcd-lines:.6 @dark-lcd-blotches:.4'],
      [1, '@blank-lcd:.75'],
    ],
  ),
  'lcd-polariser-degraded': cause(3.9, 0.01, 'visual-inspection=burnt-part:.5 lcd-flex-pressed=no-change', [
    [3, '@dark-lcd-blotches:.9'],
    [1, '@faint-lcd:.6 @dark-lcd-blotches:.5'],
  ]),
  'lcd-driver-faulty': cause(1.7, 0.1, 'lcd-data-lines=some-stuck:.75 lcd-flex-pressed=no-change lcd-contrast-voltage=varies', [
    [3, '@missing-lcd-lines:.75'],
    [2, '@blank-lcd:.8 lcd-data-lines=none:.5'],
    [1, '@vertical-stripes:.6'],
  ]),
  'contrast-control-worn': cause(4.4, 0.3, 'lcd-contrast-voltage=fixed:.85 lcd-data-lines=all-active', [
    [4, '@faint-lcd:.85'],
    [1, '@blank-lcd:.7'],
    [1, '@faint-lcd:.5 @flashing-screen:.3'],
  ]),
  'backlight-failed': cause(
    3.4,
    0.08,
    'backlight-supply=present visual-inspection=burnt-part:.4 current-drawn=none:.15 @backlight-dark:.93',
    [[1, '']],
  ),
  'backlight-inverter-dead': cause(2.9, 0.12, 'backlight-supply=absent:.93 @backlight-dark:.92', [
    [4, ''],
    [1, '@batteries-drain:.4 @monitor-whine:.2'],
  ]),
};
