import type { SyndromeName } from './syndromes';

/** How common a cause is among its kind, before the board's multipliers: A most, D least. */
export type Frequency = 'A' | 'B' | 'C' | 'D';

/** A cause in this world: frequency class and its mixture of fault pictures with weights (any positive scale). */
export type CauseRow = { cause: string; frequency: Frequency; pictures: [SyndromeName, number][] };

const parse = (text: string): CauseRow[] =>
  text
    .trim()
    .split('\n')
    .map((line) => {
      const [cause = '', frequency = 'D', ...pictures] = line.trim().split(/\s+/);
      return {
        cause,
        frequency: frequency as Frequency,
        pictures: pictures.map((picture) => {
          const [name, weight] = picture.split(':');
          return [name as SyndromeName, Number(weight)];
        }),
      };
    });

const outside = parse(`
  external-supply-dead A dead:8 onAdapter:6
  external-supply-low B lowRail:6 resets:3 onAdapter:1
  external-supply-over-voltage D tooMuch:7 dead:2
  external-supply-ripple C ripple:8 crashy:2
  external-supply-cord-broken B inOut:7 dead:3
  mains-lead-open C dead:9 inOut:2
  display-faulty C noPicture:5 rolling:3 dark:2
  wrong-input-selected B noPicture:8 snow:3
  av-cable-open B noPicture:5 primary:3 silent:2
  av-cable-poor-ground C wavy:6 dropsOut:4
  media-dirty A oneMedium:6 noCartridge:3 diskErrors:2
  media-faulty B oneMedium:8 diskErrors:2
  controller-cord-broken B padDead:5 directionDead:5
  controller-contacts-worn C force:5 wrongInput:4 directionDead:2
  expansion-unit-faulty D black:4 noExpansion:5 crashy:2
  no-fault-found A nothing:10 inOut:1 fussy:2
`);

const power = parse(`
  fuse-open B dead:10
  power-switch-resistive B inOut:4 lowRail:4 slowStart:2
  power-jack-cracked B inOut:8 dead:2
  regulator-dead B dead:6 lightOnly:2
  regulator-low C lowRail:7 warmCut:4
  rectifier-shorted D fuse:8 hot:2
  rectifier-open D dead:4 ripple:6
  switching-transistor-shorted C fuse:8 dead:2
  start-capacitor-dried B dead:5 slowStart:5 ticking:2
  mains-filter-capacitor-failed D fuse:3 nothing:3 hot:2
  filter-capacitor-dried A ripple:5 slowStart:4 lowRail:2
  filter-capacitor-leaked A leaking:8 silent:2
  filter-capacitor-shorted D ticking:4 fuse:3 hot:3
  decoupling-capacitor-shorted C hot:5 ticking:4 dead:1
  dc-converter-dead C dead:7 blankLcd:3
  battery-terminal-corroded A onBatteries:8 inOut:3
  backup-battery-flat A savesLost:9
  backup-battery-leaked B leakedCell:5 eaten:5
`);

const logic = parse(`
  crystal-dead C noClock:8 lightOnly:2
  clock-generator-dead D noClock:8
  colour-trimmer-drifted C noColour:9
  reset-held C black:5 lightOnly:3 grey:2
  reset-missing D badStart:7 flashing:3
  processor-dead B black:5 grey:2 solid:3
  processor-partial D crashy:4 bootStop:4 warmFail:2
  address-decoder-stuck C solid:3 garbage:4 border:2
  address-decoder-dead D black:5 white:3
  bus-buffer-stuck D garbage:5 black:3
  program-rom-bit-rot C bootStop:5 flashing:2 crashy:2
  program-rom-dead B black:4 white:3 border:4
  work-ram-stuck-bit A bits:5 bootStop:3 garbage:3
  work-ram-shorted C hot:3 black:4 solid:2
  work-ram-intermittent C warmFail:5 crashy:5
  video-ram-stuck-bit B chars:5 stripes:5
  video-ram-shorted D stripes:4 solid:3 hot:2
  colour-ram-faulty C wrongColour:8 chars:1
  graphics-rom-faulty C graphics:7 sprites:2
  address-multiplexer-faulty C stripes:4 bits:3 garbage:3
  io-port-dead B allKeys:5 padDead:5
  io-port-line-damaged B keyRow:5 directionDead:5
  ic-socket-oxidised A crashy:3 garbage:3 badStart:3
  solder-joint-cracked A flexy:6 inOut:2 dropsOut:2
  trace-open C bootStop:3 keyRow:2 flexy:3
  trace-corroded C eaten:7 someKeys:2
`);

const videoAndSound = parse(`
  video-generator-dead B noPicture:4 black:4 solid:2
  video-generator-partial C stripes:3 wrongColour:3 chars:3
  sprite-generator-faulty C sprites:9
  palette-faulty D wrongColour:6 primary:4
  video-encoder-dead C noPicture:7 dark:2
  video-encoder-no-colour C noColour:8 wrongColour:2
  video-buffer-open C noPicture:4 dark:4 primary:3
  video-coupling-dried C dark:7 rolling:2
  rf-modulator-dead C snow:6 noPicture:4
  video-connector-cracked B dropsOut:8 primary:2
  sound-generator-dead C silent:9
  sound-generator-voice-lost C voice:9
  amplifier-dead C silent:8
  sound-coupling-dried B quiet:7 distorted:3
  speaker-open C silent:5 phonesOnly:5
  volume-control-worn A crackle:8 silent:1
`);

const inputAndMedia = parse(`
  keyboard-contacts-dirty A someKeys:8 keyRepeats:2
  keyboard-membrane-cracked B keyRow:6 someKeys:3
  ribbon-cable-cracked C keyRow:3 flexy:3 lcdLines:3
  controller-port-cracked C directionDead:5 padDead:4
  button-pads-dirty A force:7 directionDead:3
  button-pads-worn C force:7 directionDead:4
  cartridge-connector-dirty A fussy:5 noCartridge:5
  cartridge-connector-loose B fussy:7 noCartridge:2
  tape-interface-faulty D tapeErrors:8
  disk-controller-faulty D driveGone:6 diskErrors:3
  drive-logic-faulty D driveGone:5 diskStill:4 noDisc:3
  drive-belt-slack B tapeSpeed:4 diskErrors:4
  drive-belt-perished A diskStill:8 tapeChewed:2
  read-head-dirty A tapeErrors:5 diskErrors:5
  tape-azimuth-off C tapeErrors:8
  laser-lens-dirty B discSkips:6 noDisc:3
  laser-pickup-weak A noDisc:5 discSkips:4
`);

const screens = parse(`
  lcd-flex-bond-failed A lcdLines:9
  lcd-polariser-degraded C lcdDark:6 faintLcd:4
  lcd-driver-faulty D lcdLines:5 blankLcd:5
  contrast-control-worn B faintLcd:7 blankLcd:2
  flyback-shorted B whine:5 arcs:2 noRaster:4
  flyback-focus-failed C blurred:8 arcs:1
  horizontal-output-shorted A dead:4 ticking:5 whine:2
  horizontal-hold-drifted C rolling:8
  vertical-amplifier-dead A hLine:9
  vertical-amplifier-nonlinear B folded:6 shrunk:4
  sync-separator-faulty D rolling:9
  video-output-stage-dead C primary:7 noPicture:2
  main-supply-low C shrunk:6 noRaster:2
  screen-control-misadjusted C retrace:5 dark:4
  crt-weak-emission B dark:6 blurred:3
  crt-magnetised C blotches:9
  degauss-failed C blotches:7 fuse:2
`);

/** Every cause of this world. */
export const causeRows: readonly CauseRow[] = [...outside, ...power, ...logic, ...videoAndSound, ...inputAndMedia, ...screens];
