/**
 * Words for the state a thing is in, whatever the thing. An outcome of a check is found by the
 * classes of its own words; a symptom's subject by "present" and "absent".
 */
export type StateClass =
  | 'good'
  | 'present'
  | 'absent'
  | 'dead'
  | 'bad'
  | 'high'
  | 'low'
  | 'stuck'
  | 'pulsing'
  | 'floating'
  | 'short'
  | 'open'
  | 'hot'
  | 'cool'
  | 'clean'
  | 'dirty'
  | 'weak'
  | 'noisy'
  | 'steady'
  | 'cracked'
  | 'loose'
  | 'slow'
  | 'fast';

const WORDS: Record<StateClass, string> = {
  good: `ok okay okey good fine great healthy normal correct correctly works work working worked right perfect perfectly alright proper properly passes pass passed
    sound-ish nominal expected perfect functional functions functioning function o.k. spot-on tested-good gd ace solid well lovely nice happy responds respond sensible`,
  present: 'present there exists exist seen visible yes detected available lit',
  absent:
    'zero missing absent gone none nothing lost nowhere nil vanished disappeared disappears disappear zilch nada zip unlit empty',
  dead: 'dead faulty failed broken fails failing kaput kaputt knackered duff toast fried bust busted borked buggered defunct inoperative gone blown',
  bad: 'bad poor wrong iffy dodgy suspect suspicious odd strange weird funny incorrect abnormal rubbish terrible awful crap ropey horrible',
  high: 'high hi excessive raised elevated',
  low: 'low lo sagging sags sag drooping droops droop reduced dropping drops',
  stuck: 'stuck static frozen held constant permanently jammed latched pinned tied pegged fixed-level unchanging sits',
  pulsing:
    'pulsing pulses pulse toggling toggles toggle active activity moving changing oscillating oscillates running runs run ticking switching alive clocking busy square squarewave',
  floating: 'floating floats float undefined tristate tristated high-impedance hi-z',
  short: 'short shorted shorts shorting shorten',
  open: 'open broken-through discontinuous',
  hot: 'hot warm scorching burning boiling roasting cooking overheating overheats',
  cool: 'cool cold cold-ish',
  clean: 'clean tidy spotless unmarked shiny intact undamaged',
  dirty: 'dirty corroded corrosion filthy grubby tarnished oxidised rusty rusted green crusty',
  weak: 'weak faint dim attenuated feeble small',
  noisy: 'noisy ripple rippling dirty hum unclean hash noise',
  steady: 'steady stable rock-solid',
  cracked: 'cracked crack cracks split broken fractured snapped',
  loose: 'loose wobbly wobbles moves intermittent bent',
  slow: 'slow sluggish',
  fast: 'fast quick',
};

const byWord = new Map<string, StateClass[]>();
for (const [cls, words] of Object.entries(WORDS) as [StateClass, string][]) {
  for (const word of words.trim().split(/\s+/)) byWord.set(word, [...(byWord.get(word) ?? []), cls]);
}

/** The classes of one word in normal form; empty for a word that names no state. */
export function stateClassesOf(word: string): readonly StateClass[] {
  return byWord.get(word) ?? [];
}

const OPPOSITE: Partial<Record<StateClass, readonly StateClass[]>> = {
  good: ['dead', 'bad'],
  present: ['absent'],
  absent: ['present', 'good'],
  dead: ['good'],
  bad: ['good'],
  clean: ['dirty', 'bad'],
  steady: ['bad', 'noisy'],
  pulsing: ['stuck', 'absent', 'dead'],
  high: ['low'],
  low: ['high'],
};

/** What "not" makes of states; empty where their opposite is no class of its own ("not high"). */
export function oppositeClasses(classes: Iterable<StateClass>): StateClass[] {
  return [...classes].flatMap((c) => OPPOSITE[c] ?? []);
}

/** Every word that names a state. */
export function stateWords(): Iterable<string> {
  return byWord.keys();
}

/** Phrases of several words that name a state. */
export const STATE_PHRASES: Readonly<Record<string, readonly StateClass[]>> = {
  'in spec': ['good'],
  'within spec': ['good'],
  'to spec': ['good'],
  'in tolerance': ['good'],
  'within tolerance': ['good'],
  'as expected': ['good'],
  'as it should': ['good'],
  'no problem': ['good'],
  'no issue': ['good'],
  'no issues': ['good'],
  'no fault': ['good'],
  'up and running': ['good', 'pulsing'],
  'spot on': ['good'],
  'checks out': ['good'],
  'check out': ['good'],
  'checked out': ['good'],
  'out of spec': ['bad'],
  'out of tolerance': ['bad'],
  'no good': ['bad', 'dead'],
  'way off': ['bad'],
  'messed up': ['bad'],
  'doing nothing': ['dead', 'absent'],
  'does nothing': ['dead', 'absent'],
  'did nothing': ['dead', 'absent'],
  'no signal': ['absent'],
  'no sign': ['absent'],
  'no activity': ['absent'],
  'no voltage': ['absent'],
  'no volts': ['absent'],
  'no pulse': ['absent'],
  'no pulses': ['absent'],
  'no output': ['absent'],
  'no life': ['dead'],
  'no response': ['dead', 'absent'],
  'packed up': ['dead'],
  'given up': ['dead'],
  'flat line': ['absent'],
  flatline: ['absent'],
  'too high': ['high'],
  'too low': ['low'],
  'stuck high': ['stuck', 'high'],
  'stuck low': ['stuck', 'low'],
  'held high': ['stuck', 'high'],
  'held low': ['stuck', 'low'],
  'pulled low': ['stuck', 'low'],
  'pulled high': ['stuck', 'high'],
  'dead short': ['short'],
  'open circuit': ['open'],
  'short circuit': ['short'],
  'to ground': ['short'],
};
