import { stemmer } from 'stemmer';

/** American to British, for the words that differ at a bench; endings follow in `britishOf`. */
const BRITISH: Record<string, string> = {
  gray: 'grey', grays: 'greys', grayish: 'greyish', grayed: 'greyed', color: 'colour', colors: 'colours', colored: 'coloured', colorless: 'colourless', coloring: 'colouring',
  discolored: 'discoloured', discoloration: 'discolouration', center: 'centre', centered: 'centred', fiber: 'fibre', analog: 'analogue', catalog: 'catalogue', meter: 'metre',
  behavior: 'behaviour', flavor: 'flavour', mold: 'mould', moldy: 'mouldy', aluminum: 'aluminium', odor: 'odour', vapor: 'vapour', program: 'programme', programs: 'programmes',
  odd: 'odd', tire: 'tyre', labeled: 'labelled', canceled: 'cancelled', favorite: 'favourite', plow: 'plough', check: 'check', cheque: 'check', okey: 'okay', ok: 'ok', okay: 'ok',
};

/** Irregular forms that a suffix stemmer cannot join. */
const IRREGULAR: Record<string, string> = {
  stuck: 'stick', sticks: 'stick', sticking: 'stick', broke: 'break', broken: 'break', breaks: 'break', breaking: 'break', blew: 'blow', blown: 'blow', blows: 'blow', froze: 'freez', frozen: 'freez', freezes: 'freez',
  freeze: 'freez', freezing: 'freez', burnt: 'burn', burned: 'burn', lost: 'lose', bent: 'bend', torn: 'tear', worn: 'wear', shook: 'shake', shaken: 'shake', hung: 'hang', hangs: 'hang', hanging: 'hang', lit: 'light',
  dying: 'die', dies: 'die', died: 'die', corrosion: 'corrod', corrosive: 'corrod', distortion: 'distort', leakage: 'leak', leaky: 'leak', noisy: 'nois', noise: 'nois', noises: 'nois', fuzzy: 'fuzz', snowy: 'snow', wavy: 'wave',
  wobbly: 'wobbl', jumpy: 'jump', dusty: 'dust', dirty: 'dirt', smelly: 'smell', smelt: 'smell', rusty: 'rust', crackly: 'crackl', buzzy: 'buzz', blurry: 'blur', blurred: 'blur', stripy: 'stripe', striped: 'stripe', garbage: 'garbag', garbled: 'garbl',
  lines: 'line', keys: 'key', batteries: 'batteri', overheat: 'overheat', unstable: 'unstabl', brightness: 'bright', blank: 'blank', ran: 'run', spun: 'spin', swollen: 'swell', shrunk: 'shrink', shrunken: 'shrink', drew: 'draw', drawn: 'draw', fell: 'fall', fallen: 'fall', began: 'begin',
  went: 'go', gone: 'gone', rolls: 'roll', rolling: 'roll', colourless: 'colourless', silent: 'silent', silence: 'silent', jittery: 'jitter', flickery: 'flicker', snapped: 'snap', slipped: 'slip', chipped: 'chip', reversed: 'revers', booting: 'boot', loading: 'load', powered: 'power',
};

/** Abbreviations and everyday twins that mean the same on every bench. */
const SAME_WORD: Record<string, string> = {
  pic: 'picture', pics: 'picture', image: 'picture', images: 'picture', xtal: 'crystal', telly: 'tv', television: 'tv', gnd: 'ground', kbd: 'keyboard', addr: 'address', osc: 'oscillator', mux: 'multiplexer',
  pwr: 'power', clk: 'clock', clks: 'clock', vert: 'vertical', horiz: 'horizontal', sig: 'signal', vidram: 'vram', mem: 'memory', kybd: 'keyboard', keyb: 'keyboard', bw: 'monochrome', sw: 'switch', cpu: 'cpu', vol: 'volume', resistors: 'resistor', colr: 'colour', temp: 'temperature', freq: 'frequency', intermittantly: 'intermittently',
  gunk: 'dirt', cartridges: 'cartridge', cart: 'cartridge', carts: 'cartridge', cap: 'capacitor', caps: 'capacitor', psu: 'psu', psus: 'psu', reg: 'regulator', pot: 'potentiometer', pots: 'potentiometer', trimpot: 'trimmer', conn: 'connector', elcos: 'electrolytic', lytics: 'electrolytic', lytic: 'electrolytic',
  audio: 'sound', vid: 'video', brill: 'good', batt: 'battery', chars: 'characters', char: 'character', diag: 'diagnostic', sync: 'sync', synch: 'sync', hsync: 'hsync', floppies: 'floppy', joypad: 'joypad', wobbles: 'wobble', transformer: 'transformer', tranny: 'transformer', led: 'led', leds: 'led', ic: 'chip', ics: 'chip', elec: 'electrolytic',
};

/** British spelling of a lower-case word; words that are already British come back unchanged. */
export function britishOf(word: string): string {
  const known = BRITISH[word];
  if (known !== undefined) return known;
  if (word.length > 6) return word.replace(/yz(e[ds]?|ing)$/, 'ys$1').replace(/iz(e[ds]?|ing|ation)$/, 'is$1');
  return word;
}

/** The word for which `word` is a common short form or twin, else the word itself. */
export function twinOf(word: string): string {
  return SAME_WORD[word] ?? word;
}

/** Normal form of a written word: straight apostrophes dropped to one kind, possessive removed, British spelling. */
export function normalWord(written: string): string {
  const straight = written.replace(/[’`´]/g, "'");
  const bare = straight.replace(/'s$/, '');
  return britishOf(bare.normalize('NFKC'));
}

const stems = new Map<string, string>();

/** Stem under which inflected forms meet ("resets", "resetting" → "reset"). */
export function stemOf(word: string): string {
  const irregular = IRREGULAR[word];
  if (irregular !== undefined) return irregular;
  if (word.length > 30) return word;
  const kept = stems.get(word);
  if (kept !== undefined) return kept;
  const stem = /\d/.test(word) ? word : stemmer(word);
  if (stems.size < 5000) stems.set(word, stem);
  return stem;
}
