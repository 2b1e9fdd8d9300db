import { type Causes, cause } from './cause';

/** Tube monitors: supply, deflection, high voltage, video stages and tube. */
export const monitorCauses: Causes = {
  'flyback-shorted': cause(
    5.5,
    0.08,
    'flyback-ring-test=damped:.93 horizontal-output-test=shorted:.35 anode-voltage=absent:.7 anode-voltage=low:.25 high-voltage-signs=absent:.85 focus-turned=no-effect:.5',
    [
      [4, '@no-raster:.8 @monitor-whine:.35 b-plus-voltage=low:.5 heater-glow=dark:.4'],
      [2, '@arcing:.7 @burnt-smell:.5 @no-raster:.5'],
      [1.5, '@supply-ticks:.75 @no-power:.4 b-plus-voltage=absent:.5'],
      [1, '@blows-fuse:.5 dead-set fuse-continuity=open:.6 @no-power:.6'],
    ],
  ),
  'flyback-focus-failed': cause(2.5, 0.25, 'focus-turned=no-effect:.75 anode-voltage=normal high-voltage-signs=present', [
    [4, '@blurred-picture:.92'],
    [1, '@blurred-picture:.6 @arcing:.5'],
    [1, '@blurred-picture:.8 @fails-when-warm:.4 warm-up-trend=worse-warm:.75'],
  ]),
  'deflection-yoke-open': cause(1, 0.15, 'yoke-resistance=open:.94', [
    [2, '@vertical-line:.9 anode-voltage=normal'],
    [2, '@horizontal-line:.9 vertical-drive=present:.8'],
  ]),
  'deflection-yoke-shorted': cause(0.85, 0.1, 'yoke-resistance=low:.85 flyback-ring-test=rings:.7', [
    [3, '@picture-bowed:.75 @picture-shrunk:.5'],
    [1, '@no-raster:.6 anode-voltage=low:.6 horizontal-output-test=shorted:.4 @burnt-smell:.3'],
  ]),
  'horizontal-output-shorted': cause(8.6, 0.02, 'horizontal-output-test=shorted:.95 flyback-ring-test=rings', [
    [4, 'dead-set fuse-continuity=open:.6 @no-power:.5 @blows-fuse:.45 b-plus-voltage=absent:.7 b-plus-voltage=low:.2'],
    [2, 'dead-set @supply-ticks:.8 power-light=flickering:.4 b-plus-voltage=low:.75'],
    [2, '@no-raster:.85 anode-voltage=absent:.93 high-voltage-signs=absent b-plus-voltage=low:.5 heater-glow=dark:.7'],
  ]),
  'horizontal-drive-lost': cause(
    2.9,
    0.2,
    'horizontal-drive=absent:.93 horizontal-output-test=good flyback-ring-test=rings b-plus-voltage=in-tolerance',
    [
      [5, '@no-raster:.93 anode-voltage=absent:.94 high-voltage-signs=absent:.94 heater-glow=dark:.6'],
      [1, '@no-raster:.8 @needs-warm-up:.5 warm-up-trend=better-warm:.7 anode-voltage=absent:.8'],
    ],
  ),
  'horizontal-hold-drifted': cause(
    4.4,
    0.2,
    'horizontal-drive=off-frequency:.8 monitor-controls-turned=at-end-stop:.5 sync-separator-output=pulsing',
    [
      [4, '@picture-slants:.92'],
      [1, '@picture-slants:.7 @monitor-whine:.5'],
      [1, '@picture-slants:.7 @fails-when-warm:.5 warm-up-trend=worse-warm:.75'],
    ],
  ),
  'vertical-amplifier-dead': cause(
    7.3,
    0.12,
    '@horizontal-line:.93 vertical-drive=present:.75 monitor-controls-turned=no-response:.85',
    [
      [4, 'vertical-supply=present'],
      [1.5, 'vertical-supply=absent:.85'],
      [1, 'thermal'],
    ],
  ),
  'vertical-amplifier-nonlinear': cause(5.5, 0.12, 'vertical-supply=low:.4 capacitor-esr=high:.5 capacitor-value=low:.45', [
    [3, '@picture-folded:.88'],
    [3, '@picture-shrunk:.85 monitor-controls-turned=at-end-stop:.5'],
    [1, '@picture-folded:.5 @needs-warm-up:.5 warm-up-trend=better-warm:.7'],
    [1, '@picture-rolls:.5 @retrace-lines:.4'],
  ]),
  'sync-separator-faulty': cause(
    1.9,
    0.15,
    'sync-separator-output=absent:.9 monitor-test-signal=same-fault:.95 horizontal-drive=off-frequency:.2',
    [
      [4, '@picture-rolls:.85 @picture-slants:.75'],
      [1, '@picture-rolls:.85'],
    ],
  ),
  'video-output-stage-dead': cause(3.9, 0.15, 'cathode-voltages=one-high:.88', [
    [4, '@missing-primary:.9'],
    [2, '@wrong-colours:.7 @dim-picture:.2'],
    [1, '@missing-primary:.6 board-flexed=changes:.4'],
  ]),
  'video-output-stage-shorted': cause(2.3, 0.08, 'cathode-voltages=one-low:.9', [
    [4, '@one-colour-raster:.85 @retrace-lines:.5'],
    [1, '@one-colour-raster:.6 @blooming:.3 @wrong-colours:.4'],
  ]),
  'main-supply-low': cause(3.4, 0.12, 'b-plus-voltage=low:.9 screen-voltage=low:.3 anode-voltage=low:.6', [
    [4, '@picture-shrunk:.85 @hum-bars:.2'],
    [2, '@dim-picture:.6 @blooming:.35 @picture-shrunk:.4'],
    [1, '@supply-ticks:.6 @no-power:.4'],
    [1, '@hum-bars:.5 @picture-bowed:.5 capacitor-esr=high:.3'],
  ]),
  'main-supply-high': cause(1, 0.05, 'b-plus-voltage=high:.92 anode-voltage=high:.6', [
    [2, '@arcing:.3 @monitor-whine:.3 @overheats:.3'],
    [2, 'dead-set @no-raster:.5 b-plus-voltage=high:.5 @cuts-out-when-warm:.3'],
    [1, '@blows-fuse:.4 horizontal-output-test=shorted:.6 dead-set fuse-continuity=open:.4'],
  ]),
  'retrace-capacitor-open': cause(1.2, 0.05, 'anode-voltage=high:.75 capacitor-value=low:.3', [
    [2, '@picture-shrunk:.5 @arcing:.4 @blooming:.1'],
    [2, '@no-raster:.6 horizontal-output-test=shorted:.7 anode-voltage=absent:.5'],
  ]),
  'screen-control-misadjusted': cause(3.4, 0.1, '', [
    [3, '@retrace-lines:.85 screen-voltage=high:.85 @blooming:.2'],
    [3, '@dim-picture:.85 screen-voltage=low:.85'],
    [1, '@no-raster:.6 screen-voltage=low:.9 high-voltage-signs=present heater-glow=glowing'],
  ]),
  'convergence-off': cause(2.1, 0.02, '@colour-fringes:.93 convergence-pattern=off:.93'),
  'crt-weak-emission': cause(3.9, 0.05, 'gun-test=weak:.9 heater-glow=glowing', [
    [4, '@dim-picture:.88 @needs-warm-up:.4 warm-up-trend=better-warm:.7'],
    [2, '@missing-primary:.5 @wrong-colours:.6 cathode-voltages=even'],
    [1, '@blurred-picture:.4 @smeared-picture:.4 @dim-picture:.5'],
    [1, '@blooming:.6 @dim-picture:.4'],
  ]),
  'crt-heater-open': cause(
    0.71,
    0.1,
    'heater-glow=dark:.96 anode-voltage=normal high-voltage-signs=present @no-raster:.95 b-plus-voltage=in-tolerance',
  ),
  'crt-gun-shorted': cause(0.85, 0.3, 'gun-test=shorted:.9 cathode-voltages=one-low:.5', [
    [3, '@one-colour-raster:.85 @retrace-lines:.5'],
    [1, '@blooming:.3 @picture-drops-out:.3 @wrong-colours:.5'],
  ]),
  'crt-magnetised': cause(2.5, 0.01, 'degauss-run=cleared:.85 degauss-run=partly:.12 @colour-blotches:.93'),
  'degauss-failed': cause(
    1.7,
    0.08,
    'posistor-resistance=open:.6 posistor-resistance=low:.32 degauss-run=cleared:.75 degauss-run=partly:.15',
    [
      [4, '@colour-blotches:.88'],
      [1, '@supply-hums:.5 @blows-fuse:.4 fuse-continuity=open:.3'],
    ],
  ),
};
