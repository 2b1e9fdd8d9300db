/** States of a unit and what they show; the notation is told beside `FaultModel`. */
export const states: Readonly<Record<string, string>> = {
  // Power.
  'no-input':
    'no-5v no-12v dead-set regulator-input=absent:.95 regulator-temperature=cold current-drawn=none power-light=dark:.95 fresh-batteries=no-change @no-power:.97',
  'no-5v': `no-clock no-video-clock rail-5v=absent:.94 rail-5v=low:.04 rail-at-chips=absent:.94 power-light=dark:.8
    processor-temperature=cold:.85 video-generator-temperature=cold:.85 crystal-oscillation=dead clock-generator-output=stuck
    controller-port-supply=absent modulator-supply=absent:.75 lcd-contrast-voltage=absent:.9 backlight-supply=absent:.8
    drive-motor-voltage=absent:.75 index-pulse=absent:.9 track-zero-signal=stuck:.8 write-protect-signal=stuck:.75
    step-pulses=absent:.9 head-signal=absent:.9 drive-speed=not-turning:.8 laser-focus-search=no-movement amplifier-supply=absent:.6
    reset-line=held:.6 converter-output=absent:.7 sound-generator-output=flat:.95
    @no-power:.78 @no-sound:.85 @drive-not-seen:.85 @blank-lcd:.9 @backlight-dark:.75 @disk-not-spinning:.7 @power-light-only:.15`,
  'no-12v': 'rail-12v=absent:.94 modulator-supply=absent:.6 drive-motor-voltage=absent:.8 @disk-not-spinning:.7',
  'low-5v': `rail-5v=low:.92 rail-5v=absent:.02 rail-at-chips=same-as-rail power-light=dim:.45 supply-under-load=sags:.1
    @power-light-dim:.42 @crashes-in-use:.42 @starts-sometimes:.3 @random-resets:.28 @disk-read-errors:.3 @faint-lcd:.3`,
  'high-5v':
    'rail-5v=high:.93 processor-temperature=hot:.5 video-generator-temperature=hot:.5 current-drawn=high:.5 @overheats:.45 @burnt-smell:.15',
  'ripple-5v': `rail-ripple=high:.84 rail-ripple=marginal:.12 @hum-bars:.45 @hum-in-sound:.35 @wavy-picture:.22 @crashes-in-use:.32 @random-resets:.25
    @supply-hums:.08 @disk-read-errors:.3`,
  'short-5v': `rails-short-test=shorted:.88 rails-short-test=low:.08 rail-sectioned=section-found:.88 current-drawn=high:.75
    rail-5v=low:.5 rail-5v=absent:.46 regulator-temperature=hot:.75 power-light=dark:.6 power-light=dim:.3 no-5v @burnt-smell:.15 @overheats:.15 @blows-fuse:.3`,
  'dead-set': `b-plus-voltage=absent:.95 anode-voltage=absent:.95 high-voltage-signs=absent:.95 heater-glow=dark horizontal-drive=absent:.9
    vertical-supply=absent vertical-drive=absent:.9 sync-separator-output=absent:.6 screen-voltage=low:.85 amplifier-supply=absent:.9
    amplifier-output=flat:.9 monitor-test-signal=same-fault:.97 monitor-controls-turned=no-response:.95 focus-turned=no-effect:.9 @no-raster:.8`,

  // The program does not run, or dies.
  'no-run': `rom-select=stuck:.72 ram-select=stuck:.75 video-select=stuck:.8 read-write-line=stuck:.75 write-enable=stuck:.6
    interrupt-line=quiet:.4 diagnostic-medium=does-not-start:.94 keyboard-scan-lines=none:.82 io-port-activity=stuck:.85
    controller-port-lines=none:.35 reset-button-test=no-response:.75 start-without-media=same-fault:.93 sound-generator-output=flat:.75
    cartridge-port-lines=some-dead:.3 cartridge-port-lines=none:.4 lcd-data-lines=none:.6 amplifier-input=flat:.7 @no-sound:.6`,
  'lines-dead': `address-lines=none-active:.9 address-lines=some-stuck:.06 data-lines=none-active:.75 data-lines=some-stuck:.15
    buffered-lines=dead:.82 decoder-outputs=none-active:.82 ram-data-outputs=none-active:.7 rom-select=stuck:.9 ram-select=stuck:.9
    video-select=stuck:.9 read-write-line=stuck:.9 cartridge-port-lines=none:.8`,
  'no-clock': 'no-run lines-dead clock-at-processor=stuck:.96 interrupt-line=quiet:.5',
  'no-video-clock': `clock-at-video-generator=stuck:.95 video-generator-output=flat:.92 sync-output=absent:.9 ras-line=stuck:.8 cas-line=stuck:.8
    multiplexer-outputs=none-active:.8 video-ram-data=none-active:.85 encoder-input=flat:.9 encoder-output=flat:.85 colour-burst=absent:.85
    rgb-outputs=none:.8 video-at-connector=flat:.85 modulator-input=absent:.85 colour-clock=absent:.8 interrupt-line=quiet:.6`,
  'reset-active': 'no-run lines-dead reset-line=held:.95',
  'wild-program':
    'diagnostic-medium=does-not-start:.7 start-without-media=same-fault:.85 keyboard-scan-lines=none:.4 interrupt-line=quiet:.2 @stuck-tone:.1 @no-sound:.25',

  // Screens of a unit whose program does not run.
  black: 'other-video-output=same-fault:.94 @black-screen:.9 @no-picture:.06 @blank-lcd:.8',
  grey: 'other-video-output=same-fault:.94 @grey-screen:.92 @white-screen:.03 @solid-colour-screen:.02 @black-screen:.02 @blank-lcd:.75',
  white: 'other-video-output=same-fault:.94 @white-screen:.9 @grey-screen:.05 @blank-lcd:.3',
  solid: 'other-video-output=same-fault:.94 @solid-colour-screen:.9 @black-screen:.03 @blank-lcd:.5',
  flashing: 'other-video-output=same-fault:.94 @flashing-screen:.88 @random-resets:.1',
  garbage: 'other-video-output=same-fault:.94 @garbage-screen:.9 @checker-pattern:.08 @vertical-stripes:.06',
  checker: 'other-video-output=same-fault:.94 @checker-pattern:.85 @garbage-screen:.2 @vertical-stripes:.08',
  stripes: 'other-video-output=same-fault:.94 @vertical-stripes:.88 @garbage-screen:.12',
  border: 'other-video-output=same-fault:.94 @border-only:.9 @solid-colour-screen:.05 @blank-lcd:.5',
  hang: 'other-video-output=same-fault:.94 @hangs-at-start:.88 @freezes:.1',
  'no-signal': `other-video-output=same-fault:.94 @no-picture:.92 @black-screen:.05 @blank-lcd:.8`,

  // Ways in which a fault comes and goes.
  'comes-and-goes':
    '@starts-sometimes:.3 @fails-when-warm:.25 @needs-warm-up:.07 @picture-drops-out:.05 warm-up-trend=worse-warm:.4',
  thermal: '@fails-when-warm:.85 warm-up-trend=worse-warm:.88 cooling-spray=one-part-reacts:.75',
  mechanical: 'board-flexed=changes:.72 @changes-when-flexed:.5 joints-inspected=cracked:.1',

  // What shows on devices of one category only: drives.
  'crystal-dead in drive': '@drive-not-seen:.9',
  'clock-generator-dead in drive': '@drive-not-seen:.9',
  'filter-capacitor-dried in drive': '@disk-read-errors:.45 @tape-load-errors:.45 @disk-not-spinning:.12',
  'filter-capacitor-leaked in drive': '@disk-read-errors:.35 @tape-load-errors:.35 @tape-speed-wrong:.2',
  'solder-bridge in drive': '@disk-read-errors:.5 @drive-not-seen:.3 @tape-load-errors:.5',
  'power-switch-resistive in drive': '@disk-read-errors:.3',
  'crystal-off-frequency in drive': '@disk-read-errors:.8 @own-disks-only:.4',
  'crystal-off-frequency in handheld': '@wrong-speed:.75',
  'crystal-off-frequency in arcade-board': '@wrong-speed:.7',
  'no-fault-found in drive': '@disk-read-errors:.55 @tape-load-errors:.7',
  'drive-belt-slack in drive': '@disk-read-errors:.3 @tape-speed-wrong:.3',
  'drive-belt-slack in console': '@disc-not-read:.5',
  'drive-motor-worn in drive': '@disk-read-errors:.4 @tape-speed-wrong:.7',
  'drive-logic-faulty in drive': '@tape-load-errors:.55 @tape-not-recording:.3',
  'drive-logic-faulty in console': '@disc-not-read:.75',
  'trace-open in drive': '@disk-read-errors:.35 @tape-load-errors:.5 @drive-not-seen:.25',
  'trace-corroded in drive': '@disk-read-errors:.4 @tape-load-errors:.5',
  'ribbon-cable-cracked in drive': '@tape-load-errors:.7 @disk-read-errors:.3',
  'ribbon-cable-unseated in drive': '@tape-load-errors:.75 @drive-not-seen:.3',
  'external-supply-ripple in drive': '@tape-load-errors:.65 @tape-speed-wrong:.4',
  'regulator-over-voltage in drive': '@drive-not-seen:.5 @burnt-smell:.3 @tape-load-errors:.5',

  // What shows on monitors, handhelds and arcade boards only.
  'solder-bridge in monitor': '@picture-drops-out:.4 @wrong-colours:.4',
  'trace-open in monitor': '@picture-drops-out:.45 @missing-primary:.2',
  'trace-corroded in monitor': '@picture-drops-out:.4 @wrong-colours:.2',
  'ribbon-cable-cracked in monitor': '@missing-primary:.5 @picture-drops-out:.4',
  'ribbon-cable-unseated in monitor': '@missing-primary:.4 @no-picture:.5',
  'ribbon-cable-unseated in handheld': '@missing-lcd-lines:.5',
  'expansion-unit-faulty in handheld': '@crashes-in-use:.5 @hangs-at-start:.4',
  'expansion-unit-faulty in arcade-board': '@crashes-in-use:.5 @hangs-at-start:.4',
  'display-standard-mismatch in arcade-board': '@picture-rolls:.6',

  // Nothing is wrong by the time that the unit is looked at.
  'works-now': '',

  // A monitor's deflection.
  'horizontal-line-way': '@horizontal-line:.9 vertical-drive=absent:.4',
};
