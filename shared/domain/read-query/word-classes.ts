/**
 * The small words of bench English, by what they do in a sentence. Nothing here belongs to one
 * vocabulary entry: entries bring their own words.
 */
const list = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/));

/** Pure grammar: never needed to tell one vocabulary phrase from another. */
export const GRAMMAR_WORDS = list(`
  a an the this that these those there there's it it's its itself he she they them their we us our you your i i'm i've i'd me my
  is are was were be been being am do does did doing has have had having will would can could should may might shall
  to of at in on into onto from for by with as than then so if when where which who while since until till during about
`);

/** Words that may be passed over silently: they carry no finding by themselves. */
export const FILLER_WORDS = list(`
  a an the this that these those there's it its it's itself he she they them their we us our you your i i'm i've i'd my me mine one ones
  is are was were be been being am isn do does did done doing has have had having will would can could should may might must shall
  to of at in on into onto from for by with as than then so if when where which who what while whilst once since until till before after
  during about around across between through via per towards against under over above below off out up down back away along
  very quite rather really just only even also too bit little lot lots some any somewhat slightly mostly mainly nearly almost
  completely totally fully entirely wholly absolutely utterly plain simply all whole entire always sometimes occasionally often usually
  again ever yet here there now still already next first finally eventually suddenly initially currently today yesterday
  seems seem seemed looks look looked appears appear appeared like sort kind type thing things something anything stuff
  get gets got getting go goes going went come comes coming came become becomes make makes made making give gives gave giving given
  keep keeps kept stay stays stayed remain remains remained start starts started let lets put puts use used using try tries tried trying
  check checked checking checks test tested testing tests measure measured measuring measures found find finds see saw sees seeing seen
  show shows showed showing shown read reads reading readings says say said tell tells think thought guess believe know
  reckon suspect want wants need needs much many more most less least few other another others else same own such each every both either
 well please hi hello thanks thank anyone help ideas idea cheers unit machine system board pcb console computer device set mine
  because due cause caused causes though
  behind inside outside onto upon within whenever whatever however whichever anyway basically actually probably maybe perhaps possibly
  approx approximately roughly circa ca around exactly total nominal
  pin pins leg legs side end point points place places area
  getting receiving receive gives produces produce displays
  bought old recently fresh owner says customer friend mate
  everything otherwise report reports reporting reported two three four five six seven eight nine ten twenty thirty dozen couple several few
  over seconds second
  day days week weeks month months year years ago time times minute minutes min mins hour hours moment moments while long ages
`);

/** Words that name an observation without saying what: read with a neighbour, unread alone. */
export const WEAK_WORDS = list(`
  signal signals line lines activity level levels output outputs input voltage voltages volts value condition state status result results
  pulse sign signs presence rail rails reading chip chips ic ics
`);

export const NEGATOR_WORDS = list(`
  no not non never without wo neither nor cannot cant can't dont don't doesnt doesn't didnt didn't isnt isn't wasnt wasn't arent aren't werent
  weren't wont won't couldnt couldn't hasnt hasn't havent haven't hadnt hadn't wouldnt wouldn't shouldnt shouldn't aint ain't lacks lacking lack
  hardly barely
`);

/** Verbs that deny what follows them with "to": "fails to start". */
export const REFUSING_WORDS = list('fails fail failing failed refuses refuse refusing refused');

/** Grammar that a very short phrase cannot do without: "has sound", "resets itself". */
export const KEPT_WHEN_SHORT = list('has have itself');
/** Particles that a single verb cannot do without: "powers on" is not "power". */
export const KEPT_PARTICLES = list('on in');

/** A number before one of these is a duration, not a reading. */
export const DURATION_WORDS = list(
  'day days week weeks month months year years minute minutes min mins hour hours hrs times seconds second secs attempts tries',
);

export const CANNOT_WORDS = list("cannot cant can't couldnt couldn't");

export const JOINER_WORDS = list('and or nor plus & + / , and/or as-well-as');
export const BREAK_WORDS = list('but . ; ! ? although though however yet whereas except while whilst');
/** Marks that neither join nor break: "clock: present", "rail (4.6 V)", "recapped -> no joy". */
export const PASSED_MARKS = list(': = ( ) [ ] { } | -> => →');

export const STILL_WORDS = list('still');
export const NOW_WORDS = list('now then');
/** Words that put a fix before its result: "no change after a recap". */
export const AFTER_WORDS = list('after with by despite following from using when once');
export const TRIED_WORDS = list('tried already');

export const OTHER_WORDS = list('another other different spare second borrowed alternative known-good');

/** Everyday words that must never be "corrected" into a vocabulary word. */
export const EVERYDAY_WORDS = list(`
  house card work works word world home name game games gamer play played player playing disk disks best rest lost last list cost cast hard hand
  land band sand fast past part parts port ports sort short shirt start state stage store stone tone done gone line like lake late rate date data
  gate game came same some come home hope rope role rule tube tune turn burn born form from farm warm harm hear near year dear fear wear bear beer deer
  with wish dish fish list mist must just dust trust rust best west nest next text test tent sent send tend bend mend blend spend found round sound ground
  mouse moose loose lose close clothes nose pose rose those these them then than when what where were here there their three tree free four five six seven
  eight nine ten eleven twelve hundred thousand second third fourth fifth love live life wife wide side site size sign sing song long strong wrong along
  people paper pepper person letter better bitter butter water later matter latter master mister sister older order under wonder number member remember
  green black white brown blue purple pink orange yellow grey red colour bright dark light right night might tight sight fight eight weight height
  buy bought sell sold shop store price cheap money paid free gift attic loft garage shed basement kitchen garden bedroom window door floor wall table chair
  bench work job task week weekend morning evening night afternoon summer winter spring autumn
  manual guide book page video channel forum site post thread question answer
  small large big huge tiny high tall deep wide narrow heavy light clean dirty dusty rusty fresh
  move moved moving push pushed pull pulled press pressed hold held drop dropped lift lifted open opened close closed shut tap tapped wiggle wiggled
`);
