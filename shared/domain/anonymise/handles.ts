import { allMatches } from './all-matches';
import { ORDINARY_WORDS } from './ordinary-words';
import type { FindSpans, FoundSpan } from './personal-detail';

/** "@" before a word, as people are addressed on line; "@U5" and "@ 5 V" say where and at what. */
const AT_HANDLE = /(?<![\p{L}\p{N}_@.+/)\]])@(?<it>[\p{L}_\d][\p{L}\p{N}_.-]{1,38}[\p{L}\p{N}_])(?!@)/dgu;
const DESIGNATOR = /^[A-Z]{1,4}\d{1,4}[A-Z]?(?:[.,-].*)?$/iu;
const MEASURED = /^(?:\d|pin(?!\p{L}{3})|(?:the|idle|load|rest|hot|cold|no|full|about|least|start|room|approx|power|boot|reset|startup)(?![\p{L}_]|[.-]\p{L}))/iu;
const PATH_HANDLE = /(?<![\w/])\/?(?:u|user|users|member)\/[A-Za-z0-9_-]{3,30}(?!\w)/gu;
/** The name with four digits that some chat services give. */
const NUMBERED = /(?<!\w)[A-Za-z][\w.]{2,31}#\d{4}(?!\w)/gu;
const NAME = String.raw`[\p{L}\p{N}_](?:[\p{L}\p{N}_.+~-]{0,38}[\p{L}\p{N}_])`;
const QUOTE = String.raw`["'“‘«„<(\[]?`;
/** Words that say outright that a name on line follows. */
const SAYING = String.raw`(?:user[ -]?name|screen[ -]?name|user[ -]?id|account name|login(?: name)?|log-?in|nick(?:name)?|handle|gamertag|call ?sign|alias|pseudo(?:nyme)?|avatar|benutzer(?:name)?|nutzer(?:name)?|spitzname|utilisateur|identifiant|usuario|apodo|utente|gebruikersnaam|gebruiker|användarnamn|alias|profile(?: name)?|forum name|board name|(?:seller|buyer|member|poster)(?:'s)? (?:id|name|account)|(?:irc|chat|forum|messenger|message board|auction|channel|my) (?:user|name|id|nick|handle|account|seller|buyer|member|poster|regular|moderator|mod)(?: name)?)`;
const SAYS = String.raw`(?: (?:there|here|everywhere|on (?:the |that |this |most )?\p{L}+|of mine|over there|online|still|it))?(?:'s|’s)?(?: (?:is|was|of|are|ist|lautet|est|es|reads|still|called|named|being|remains|says))*`;
const CUED = new RegExp(`(?<!\\p{L})${SAYING}${SAYS}[ :=]{1,3}${QUOTE}@?(?<it>${NAME})`, 'dgiu');
const CUED_WITH_COLON = new RegExp(`(?<!\\p{L})(?:irc|chat|forum|messenger|message board|user|poster|member|seller) ?[:=] {0,2}${QUOTE}@?(?<it>${NAME})`, 'dgiu');
/** A person on line: what follows is a name if it looks like none of language. */
const PERSON = String.raw`(?:user|member|poster|forumite|seller|buyer|moderator|mod|admin|lurker|uploader|author|bidder|vendor|guru|regular|fellow|guy|bloke|someone|somebody|person|chap|lad|mitglied|user(?:in)?|verkäufer|membre|vendeur|miembro|vendedor|lid|venditore)(?: (?:called|named|with the (?:name|nick|handle)|by the name of|known as|namens|nommée?|id))?`;
const DOING = String.raw`(?:dm|pm|p\.m\.|ping(?:ed)?|msg|im|message[ds]?|add(?:ed)?|follow(?:ed)?|dm['’]?d|pm['’]?d|tag(?:ged)?|contact(?:ed)?|write to|ask(?:ed)?|find|found|reach|i['’]?m|i am|go(?:es)? (?:by|as)|going by|known as|post(?:s|ed|ing)? (?:as|under|by)|sign(?:ed|s)? up as|(?:find|know|reach|message|ping|add|dm|pm) me (?:as|at|on|under|by|here)|registered as|logged in as|sold by|bought from|uploaded by|shared by|posted by|credit(?:s)? to|thanks (?:go )?to|thx(?: to)?|thanks|props to|kudos to|shout-?out to|hat tip to|h\/t|cheers|per|via|from|by|as|to|with|than|see|hi|hello|hey|dank an|merci à|à|von|bei|auch|and)(?: (?:me|us|him|her))?(?: (?:at|on|as))?`;
/** With "_" inside, letters and then figures, a capital inside, or parts joined. */
const SHAPED = String.raw`(?:\p{L}[\p{L}\p{N}.-]*_[\p{L}\p{N}_.-]*[\p{L}\p{N}]|_+\p{L}[\p{L}\p{N}_]+_*|\p{L}{3,}[\p{L}.]*\d{2,}(?:\p{L}+)?|\p{L}*\p{Ll}{2,}\p{Lu}\p{Ll}[\p{L}\p{N}]*|\p{Lu}{2}\p{Ll}{3,}|\p{L}+\d\p{L}{2,}[\p{L}\p{N}]*|x+\p{Lu}[\p{L}\p{N}]+x+)`;
const JOINED = String.raw`(?:\p{L}{2,}(?:[.-]\p{L}[\p{L}\p{N}]*){1,3}(?:[.-]\d{1,4})?|\p{L}{3,}[.-]\d{1,4})`;
const END = String.raw`(?![\p{L}\p{N}_]|[-.][\p{L}\p{N}])`;
/** Asked again of what a pattern without regard to capitals has found. */
const SHAPED_OR_JOINED = new RegExp(`^(?:${SHAPED}|${JOINED})$`, 'u');
const PERSON_SHAPED = new RegExp(`(?<!\\p{L})${PERSON},? ${QUOTE}@?(?<it>${JOINED}|${SHAPED})${END}`, 'dgiu');
const DOING_SHAPED = new RegExp(`(?<!\\p{L})${DOING}:? ${QUOTE}@?(?<it>${SHAPED})${END}`, 'dgiu');
const PRIVATE = new RegExp(`(?<!\\p{L})(?:(?:dm|pm|msg|ping(?:ed)?)(?:['’]?d)?(?: me)?(?: (?:at|on|as|to|under))?|(?:message|dm|pm|ping|find|reach|add) me(?: (?:there|here|online))? ?(?:at|as|under|:)|i (?:post|go|am|sell|write|sign) (?:as|by|under|there as|online as)|(?:known|goes|registered|posting|signed up|logged in|posts|posted) (?:as|by|under)):? ${QUOTE}@?(?<it>${NAME})`, 'dgiu');
const QUOTED = new RegExp(`(?<!\\p{L})(?:${PERSON}|screen|name|under|as|by|from),? ["“'‘«„](?<it>${NAME})["”'’»“](?: (?:on|in|from|at|who)|[.,]|$)`, 'dgiu');
const PLACE_ON_LINE = String.raw`(?:forums?|fora|boards?(?: (?:thread|forum))|boards|chat|thread|mailing list|newsgroup|channel|irc|group|message board|bbs|foro|server|auction site|site|wiki|discussion|marketplace)`;
const ON_LINE = String.raw`(?:,? ?\(?(?:on|in|from|at|of|over on|over at|via|auf|im|aus dem|sur|du|en|del|op|på)(?: (?:the|this|that|another|some|a|an|our|dem|le|la|el|het|der|my))?(?: [\p{Ll}-]+)? ${PLACE_ON_LINE}(?!\p{L}))`;
const WORD_ON_LINE = new RegExp(`(?<!\\p{L})(?:${PERSON}|${DOING}|advice from|help from|hint from|tip from|,) @?(?<it>${NAME})(?=${ON_LINE}| \\((?:forum|chat|irc|board)\\))`, 'dgiu');
const ASKED_ON_BOARD = new RegExp(`(?<!\\p{L})(?:ask|message|contact|find|see|user|member|poster) @?(?<it>${NAME})(?= on (?:the|this|that) board(?!\\p{L}))`, 'dgiu');
const OPENS_ON_LINE = new RegExp(`(?:^|[\\n.!?;] ?)@?(?<it>${NAME})(?=${ON_LINE}| \\((?:forum|chat|irc|board)\\))`, 'dgiu');
const PERSON_DOES = new RegExp(`(?<!\\p{L})(?:user|member|poster|mitglied|seller|membre|usuario|lid) (?<it>\\p{Ll}[\\p{Ll}\\p{N}]{4,30})(?= (?:said|says|told|wrote|posted|reported|reports|suggested|suggests|pointed|mentioned|found|had|has|sent|shared|measured|uploaded|hat|a|sagt|schrieb)(?!\\p{L}))`, 'dgu');
const SHAPED_DOES = new RegExp(`(?<![\\p{L}\\p{N}_./@-])(?<it>[\\p{L}_][\\p{L}\\p{N}_.]{2,38})(?=['’]s (?:thread|post|video|log|guide|page|advice|write|fix|pictures|photos|repair|build|tip|idea)|,? (?:said|says|told|wrote|writes|posted|posts|reported|suggested|suggests|pointed|mentioned|sent|shared|reckons|thinks|replied|answered|uploaded|sells|sold|helped|confirmed|had the same|has the same|had one|measured|found|recapped|fixed)(?!\\p{L})| \\((?:forum|chat|irc|board)\\))`, 'dgu');
const ORDINARY =
  /^(?:is|was|are|were|the|a|an|it|its|and|or|on|not|of|there|here|to|for|with|off|out|in|at|me|us|you|him|her|them|port|select|strobe|enable|lost|missing|broken|unknown|prompt|screen|chip|line|pin|button|input|output|ground|well|good|bad|dead|faulty|working|tested|untested|sold|spares|repair|parts|scrap|new|used|original|error|manual|guide|interface|memory|program|programs|data|code|area|mode|space|replaceable|serviceable|adjustable|who|that|which|here|where|if|when|before|after|someone|anyone|everyone|people|myself|seller|buyer|user|owner|member|this|usual|both|another|says|said|has|had|asked|told|posted|wrote|my|his|their|your|our|normal|standard|soon|first|one|two|more|some|any|all|names?|described|shown|posting|posts?|thread|details|info|pictures|photos|help|advice|link|links|jack|and|accounts?|login|password|tool|tools|part|kit|kits|request|times|time|test|reply|answers?|hints?|tips?|reads?|seen|found|saw|threads?|schematics?|diagrams?|ideas?|suggestions?|comments?|questions?|members?|users|sellers|guys|folks|experts?|lots|plenty|much|most|few|several|many|something|nothing|everything|available|popular|common|known|discussed|mentioned|suggested|recommended|advised)$/iu;

const isWord = (word: string) => word.length < 3 || ORDINARY.test(word) || ORDINARY_WORDS.has(word.toLowerCase());
const UNITS_OR_PARTS = /^(?:\d+(?:[.,]\d+)?\p{L}{0,4}|[A-Z]{1,4}\d{1,5}[A-Z]{0,3}|\p{L}{1,3}\d+\p{L}?\d*|[kM]?Hz|mV|kHz|MHz|kB|[A-Z0-9_]+)$/u;

/** Names under which people write on line. */
export const handles: FindSpans = (text, known) => {
  const named = (pattern: RegExp, isOther: (name: string) => boolean): FoundSpan[] =>
    allMatches(text, pattern, 'handle').filter(({ start, end }) => !isOther(text.slice(start, end)));
  const isKnown = (name: string) => isWord(name) || known.has(name.toLowerCase());
  const isThing = (name: string) => isKnown(name) || UNITS_OR_PARTS.test(name) || name.toLowerCase().split(/[^\p{L}\p{N}]+/u).every((part) => known.has(part) || isWord(part));
  return [
    ...named(AT_HANDLE, (name) => DESIGNATOR.test(name) || MEASURED.test(name)).map((span) => ({ ...span, start: span.start - 1 })),
    ...allMatches(text, PATH_HANDLE, 'handle'),
    ...allMatches(text, NUMBERED, 'handle'),
    ...named(CUED, isWord),
    ...named(CUED_WITH_COLON, isThing),
    ...named(PERSON_SHAPED, (name) => isKnown(name) || UNITS_OR_PARTS.test(name) || !SHAPED_OR_JOINED.test(name)),
    ...named(SHAPED_DOES, (name) => !SHAPED_OR_JOINED.test(name) || /^[^_]*\./u.test(name) || isKnown(name) || UNITS_OR_PARTS.test(name)),
    ...named(PRIVATE, (name) => isKnown(name) || UNITS_OR_PARTS.test(name)),
    ...named(DOING_SHAPED, (name) => isThing(name) || !SHAPED_OR_JOINED.test(name)),
    ...[QUOTED, WORD_ON_LINE, OPENS_ON_LINE, ASKED_ON_BOARD, PERSON_DOES].flatMap((pattern) => named(pattern, isThing)),
  ];
};
