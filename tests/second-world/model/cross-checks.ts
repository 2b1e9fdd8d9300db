/** A rule for a check that looks at more than one part: causes, roles (`role:`) or unit states (`state:`) and what it shows then. */
type Rule = { when: string[]; outcome: string; chance: number };

const rules = new Map<string, Rule[]>();
for (const line of `
  visual-inspection leakage .72 filter-capacitor-leaked backup-battery-leaked
  visual-inspection corrosion .6 trace-corroded battery-terminal-corroded
  visual-inspection cracked-joint .4 solder-joint-cracked power-jack-cracked video-connector-cracked controller-port-cracked
  visual-inspection burnt-part .4 state:short
  visual-inspection broken-wire .35 trace-open ribbon-cable-cracked external-supply-cord-broken
  joints-inspected cracked .35 power-jack-cracked video-connector-cracked controller-port-cracked
  corroded-traces-inspected eaten .55 backup-battery-leaked filter-capacitor-leaked
  battery-inspected leaking .9 backup-battery-leaked
  rails-short-test shorted .78 state:short
  rails-short-test low .3 work-ram-shorted video-ram-shorted
  rail-sectioned section-found .7 decoupling-capacitor-shorted filter-capacitor-shorted work-ram-shorted video-ram-shorted
  current-drawn high .8 state:short
  current-drawn none .9 state:dead
  current-drawn high .45 state:high
  power-light dark .93 state:dead
  power-light dark .5 state:short
  power-light dim .55 state:low
  power-light flickering .5 power-jack-cracked external-supply-cord-broken power-switch-resistive
  plug-wiggled cuts-in-and-out .75 power-jack-cracked external-supply-cord-broken
  plug-wiggled cuts-in-and-out .2 power-switch-resistive solder-joint-cracked
  cable-wiggled picture-returns .35 av-cable-open av-cable-poor-ground
  working-unit-same-chain fails-too .9 role:external-supply role:display role:input-selector role:av-cable
  working-unit-same-chain fails-too .5 role:media role:controller role:expansion-unit
  cable-swapped cured .12 video-connector-cracked
  supply-swapped changed .4 regulator-low filter-capacitor-dried
  supply-under-load sags .3 power-switch-resistive
  supply-ripple-apart high .7 external-supply-low
  warm-up-trend better-warm .6 filter-capacitor-dried start-capacitor-dried
  warm-up-trend worse-warm .62 work-ram-intermittent regulator-low processor-partial
  warm-up-trend worse-warm .3 solder-joint-cracked video-generator-partial
  cooling-spray one-part-reacts .68 work-ram-intermittent processor-partial video-generator-partial
  cooling-spray one-part-reacts .3 solder-joint-cracked regulator-low
  board-flexed changes .55 ic-socket-oxidised trace-open video-connector-cracked ribbon-cable-cracked
  sockets-reseated cured .15 solder-joint-cracked
  capacitor-esr high .25 filter-capacitor-leaked
  capacitor-value leaky .75 filter-capacitor-leaked
  rail-ripple high .85 external-supply-ripple filter-capacitor-dried rectifier-open
  rail-ripple marginal .4 external-supply-low regulator-low filter-capacitor-leaked
  regulator-input absent .88 role:external-supply power-jack-cracked fuse-open rectifier-open mains-lead-open
  regulator-input low .5 power-switch-resistive external-supply-low
  regulator-input present .95 regulator-dead regulator-low
  regulator-temperature hot .7 state:short
  diagnostic-medium memory-error .8 role:work-ram address-multiplexer-faulty
  diagnostic-medium rom-error .7 program-rom-bit-rot
  diagnostic-medium io-error .6 role:io-port
  diagnostic-medium does-not-start .85 state:halted
  start-without-media same-fault .88 state:halted
  controller-other-port same-fault .9 role:controller
  controller-other-port same-fault .75 io-port-dead
  other-video-output same-fault .88 state:halted
  other-video-output same-fault .85 video-generator-dead video-generator-partial palette-faulty video-ram-stuck-bit
  sound-other-output same-fault .85 sound-generator-dead sound-generator-voice-lost sound-coupling-dried
  monitor-test-signal same-fault .93 role:flyback-transformer role:horizontal-oscillator role:vertical-amplifier role:crt role:video-output-stage role:sync-separator role:main-supply-regulator role:horizontal-output
  high-voltage-signs absent .85 horizontal-output-shorted flyback-shorted
  degauss-run cleared .8 crt-magnetised
  degauss-run partly .6 degauss-failed
  video-generator-output flat .5 clock-generator-dead crystal-dead
  volume-moved no-effect .7 amplifier-dead sound-generator-dead speaker-open
  headphones-tried sound .9 speaker-open
  headphones-tried no-sound .85 amplifier-dead sound-generator-dead
  media-contacts-cleaned cured .3 cartridge-connector-dirty
  media-swapped cured .1 cartridge-connector-loose
  cartridge-port-cleaned better .5 cartridge-connector-loose
  connector-pins dirty .2 cartridge-connector-loose
  ram-piggyback changed .2 address-multiplexer-faulty
  key-contact-resistance high .2 keyboard-membrane-cracked
  matrix-continuity line-open .7 ribbon-cable-cracked
  rom-compared differs .85 program-rom-bit-rot
  rom-compared unreadable .85 program-rom-dead
  azimuth-by-ear dull .4 read-head-dirty
  drive-speed slow .6 drive-belt-slack
  drive-speed not-turning .9 drive-belt-perished
  fuse-continuity open .75 state:short
`
  .trim()
  .split('\n')) {
  const [check = '', outcome = '', chance = '0', ...when] = line.trim().split(/\s+/);
  rules.set(check, [...(rules.get(check) ?? []), { when, outcome, chance: Number(chance) }]);
}

/** Checks whose target is another part than the one at fault although the roles are the same: a clock arriving at a dead chip. */
const blind = new Set([
  'clock-at-processor processor',
  'wait-line processor',
  'clock-at-video-generator video-generator',
  'modulator-supply rf-modulator',
  'modulator-input rf-modulator',
  'amplifier-supply amplifier',
  'vertical-supply vertical-amplifier',
  'encoder-input video-encoder',
  'sound-other-output amplifier',
  'other-video-output rf-modulator',
  'start-without-media media',
]);

/** Whether a check aimed at this role says nothing about a fault of the part itself. */
export function isBlind(check: string, role: string): boolean {
  return blind.has(`${check} ${role}`);
}

/** The written rule for a check under a cause, its role and the unit's state: cause before role before state. */
export function crossRule(
  check: string,
  about: { cause: string; role: string; state: string },
): { outcome: string; chance: number } | null {
  for (const key of [about.cause, `role:${about.role}`, `state:${about.state}`]) {
    const found = rules.get(check)?.find((rule) => rule.when.includes(key));
    if (found) return found;
  }
  return null;
}

/** Every check and outcome that a written rule names. */
export const writtenRules: readonly { check: string; outcome: string; when: string[] }[] = [...rules].flatMap(([check, list]) =>
  list.map(({ outcome, when }) => ({ check, outcome, when })),
);
