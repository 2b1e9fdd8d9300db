import { type Causes, cause } from './cause';

/** Faults of the supply side inside the unit. */
export const powerCauses: Causes = {
  'fuse-open': cause(3.9, 0.02, 'no-input fuse-continuity=open:.97 regulator-input=absent:.95', [
    [5, '@no-power:.9'],
    [1, 'rails-short-test=low:.3 @blows-fuse:.35'],
  ]),
  'power-switch-open': cause(1.9, 0.25, 'no-input switch-continuity=open:.93 @sticky-switch:.3'),
  'power-switch-resistive': cause(3.4, 0.35, 'switch-continuity=resistive:.88 @sticky-switch:.45 plug-wiggled=no-change', [
    [3, 'low-5v regulator-input=low:.6 @intermittent-power:.5'],
    [2, '@intermittent-power:.85 power-light=flickering:.55 @starts-sometimes:.5'],
  ]),
  'power-jack-cracked': cause(
    4.9,
    0.65,
    'jack-continuity=intermittent:.72 jack-continuity=open:.2 plug-wiggled=cuts-in-and-out:.88 joints-inspected=cracked:.6 visual-inspection=cracked-joint:.45',
    [
      [3, '@intermittent-power:.85 @loose-connector:.55 @random-resets:.3'],
      [2, 'no-input @intermittent-power:.5 @loose-connector:.5'],
      [1, '@dead-on-adapter:.9 @intermittent-power:.4'],
    ],
  ),
  'regulator-dead': cause(
    5.5,
    0.06,
    'no-5v no-12v rail-12v=in-tolerance:.6 regulator-input=present regulator-temperature=cold:.7 regulator-temperature=hot:.15 current-drawn=none:.6 power-light=dark:.75',
    [
      [4, ''],
      [1, '@burnt-smell:.2 visual-inspection=burnt-part:.4'],
    ],
  ),
  'regulator-low': cause(3.4, 0.15, 'low-5v regulator-input=present regulator-temperature=hot:.6', [
    [3, '@cuts-out-when-warm:.5 @fails-when-warm:.5 warm-up-trend=worse-warm:.75'],
    [2, '@crashes-in-use:.5'],
    [2, '@hangs-at-start:.4 @no-picture:.2'],
  ]),
  'regulator-over-voltage': cause(0.58, 0.03, 'high-5v regulator-input=present', [
    [2, '@overheats:.5'],
    [1, 'wild-program garbage ram-temperature=one-hot:.4 @burnt-smell:.2'],
    [1, 'no-run black processor-temperature=hot:.7'],
  ]),
  'rectifier-shorted': cause(
    0.85,
    0.02,
    'no-input fuse-continuity=open:.75 rectifier-diode-test=shorted:.94 @blows-fuse:.7 visual-inspection=burnt-part:.3 @burnt-smell:.25',
  ),
  'rectifier-open': cause(0.58, 0.1, 'rectifier-diode-test=open:.92', [
    [2, 'no-input'],
    [3, 'low-5v ripple-5v regulator-input=low:.8 b-plus-voltage=low:.7 @hum-bars:.4 @picture-shrunk:.4'],
  ]),
  'mains-transformer-open': cause(0.58, 0.05, 'no-input transformer-resistance=open:.95 @burnt-smell:.15'),
  'switching-transistor-shorted': cause(
    1.7,
    0.02,
    'no-input switching-transistor-test=shorted:.94 switching-transistor-test=open:.03',
    [
      [4, 'fuse-continuity=open:.85 @blows-fuse:.65'],
      [1, '@supply-ticks:.8 power-light=flickering:.3'],
    ],
  ),
  'start-capacitor-dried': cause(4.4, 0.2, 'start-capacitor-esr=high:.9 capacitor-esr=high:.15', [
    [4, 'no-input @starts-sometimes:.4 @needs-warm-up:.35'],
    [2, 'no-input @supply-ticks:.85'],
    [1, '@needs-warm-up:.75 @starts-sometimes:.6 warm-up-trend=better-warm:.8'],
  ]),
  'mains-filter-capacitor-failed': cause(1.2, 0.05, 'visual-inspection=burnt-part:.7 @burnt-smell:.75', [
    [2, 'no-input fuse-continuity=open:.6 @blows-fuse:.5'],
    [3, '@overheats:.1'],
  ]),
  'filter-capacitor-dried': cause(
    18,
    0.12,
    'capacitor-esr=high:.85 capacitor-esr=open:.06 capacitor-value=low:.78 visual-inspection=leakage:.1',
    [
      [4, 'ripple-5v'],
      [3, 'ripple-5v @needs-warm-up:.5 @starts-sometimes:.4 warm-up-trend=better-warm:.65'],
      [3, 'ripple-5v low-5v @hangs-at-start:.3'],
      [2, '@hum-in-sound:.75 rail-ripple=high:.7 @distorted-sound:.25'],
      [
        2,
        '@picture-shrunk:.55 @wavy-picture:.5 @picture-bowed:.4 b-plus-voltage=low:.35 vertical-supply=low:.4 rail-ripple=marginal:.6',
      ],
      [1, 'no-input @supply-ticks:.5 capacitor-esr=open:.3 capacitor-esr=high:.65'],
    ],
  ),
  'filter-capacitor-leaked': cause(
    7.3,
    0.08,
    'visual-inspection=leakage:.88 @leaked-capacitors:.5 capacitor-esr=high:.6 capacitor-value=low:.6 capacitor-value=leaky:.2',
    [
      [3, 'ripple-5v'],
      [2, '@no-sound:.5 @quiet-sound:.45 @crackling-sound:.2 corroded-traces-inspected=eaten:.35 amplifier-supply=low:.3'],
      [2, 'low-5v corroded-traces-inspected=eaten:.3'],
      [1, '@wavy-picture:.5 @dim-picture:.3 @faint-lcd:.4'],
      [1, 'no-5v corroded-traces-inspected=eaten:.4'],
    ],
  ),
  'filter-capacitor-shorted': cause(
    0.71,
    0.03,
    'short-5v capacitor-value=leaky:.75 capacitor-esr=good:.5 decoupler-lifted=no-change visual-inspection=burnt-part:.25 fuse-continuity=open:.4',
    [
      [3, ''],
      [2, 'no-input b-plus-voltage=absent:.9'],
    ],
  ),
  'decoupling-capacitor-shorted': cause(2.3, 0.04, 'short-5v decoupler-lifted=short-gone:.88 visual-inspection=burnt-part:.3'),
  'protection-diode-shorted': cause(
    1.5,
    0.02,
    'no-input protection-diode-test=shorted:.95 fuse-continuity=open:.55 @blows-fuse:.35 supply-under-load=sags:.5 current-drawn=high:.6',
  ),
  'protection-diode-open': cause(0.45, 0.06, 'no-input protection-diode-test=open:.93 @dead-on-adapter:.5'),
  'dc-converter-dead': cause(3.9, 0.06, 'converter-output=absent:.94 rail-12v=absent:.85 rail-minus-5v=absent:.85', [
    [3, 'black video-ram-data=none-active:.7'],
    [3, 'checker video-ram-data=none-active:.5'],
    [2, 'garbage ram-data-outputs=none-active:.5'],
    [2, '@no-power:.6 @blank-lcd:.7 lcd-contrast-voltage=absent:.85 rail-5v=absent:.4 power-light=dark:.4'],
    [1, '@blank-lcd:.85 lcd-contrast-voltage=absent:.93'],
  ]),
  'dc-converter-low': cause(2.5, 0.18, 'converter-output=low:.9 rail-12v=low:.75 rail-minus-5v=low:.65', [
    [3, '@garbage-screen:.3 @wrong-characters:.4 @memory-test-fails:.4 @crashes-in-use:.3'],
    [2, '@faint-lcd:.8 lcd-contrast-voltage=fixed:.3 @batteries-drain:.35'],
    [2, '@needs-warm-up:.5 @starts-sometimes:.5 warm-up-trend=better-warm:.6 checker'],
    [1, '@power-light-dim:.4 @dead-on-batteries:.5 low-5v'],
  ]),
};
