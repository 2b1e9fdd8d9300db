/** Who somebody is to the writer. */
export const RELATION =
  'mate|mates|friend|friends|neighbou?r|brother|sister|father|dad|mum|mom|mother|uncle|aunt|auntie|wife|husband|son|daughter|cousin|nephew|niece|colleague|boss|customer|client|owner|pal|buddy|grandad|grandfather|grandson|grandma|gran|nan|co-?worker|workmate|seller|buyer|flatmate|partner|girlfriend|boyfriend|teacher|tutor|apprentice|trainee|student|lad|guy|bloke|chap|lady|gentleman|engineer|technician|repairman|stepson|fiancée?|brother-in-law|father-in-law|in-law|Kumpel|Freund|Freundin|Nachbar|Bruder|Vater|Kollege|Kunde|ami|voisin|frère|père|collègue|client';

const BEFORE_NAME = [
  // "my mate Dave", "a customer called Ellis", "the previous owner, Ellis"
  `(?:${RELATION})(?:'s)?(?: name)?(?: is| was)?(?: from work| of mine)?,?(?: (?:named|called|is called|was called|by the name of|namens|appelée?))?`,
  'signed(?: off)?(?: by)?[:,]?',
  '(?:my|his|her|their|whose|the|first|last|sur|full|real|owner\'s|customer\'s) ?names?(?: is| was|\'s|:| reads)?',
  'name(?: on the (?:label|sticker|lid|case|box|receipt))?(?: is| was|:| reads)',
  '(?:named|called) after',
  '(?:owner|customer|client|contact|technician|engineer|repaired by|name|seller|buyer|attn|author|posted by|kunde|from)(?: name)?:',
  'courtesy of|credits?(?: go(?:es)?)? to|credit to|thanks to|thank you to|many thanks to|kudos to|hats off to|shout-?out to|thx to|danke an|merci à|belongs to|belonged to|belonging to|property of|care of|c\\/o|on behalf of|ask for|speak to|spoke to|talked to|written by|soldered by|repaired by|recapped by|serviced by|fixed by|modded by|built by|diagnosed by|advice from|tip from|help from|help of|according to',
].join('|');
/** Before a person's name, whatever the name is. */
export const STRONG_BEFORE = new RegExp(`(?<![\\p{L}])(?:${BEFORE_NAME})[ "“'(]{0,2}$`, 'iu');

/** Before a person's name that is on the list, or has two words. */
export const WEAK_BEFORE =
  /(?<![\p{L}])(?:from|by|to|with|for|of|and|asked|told|tell|ask|gave|give|lent|sold|thanks|thank|thx|met|visited|phoned|called|rang|emailed|mailed|messaged|contacted|helped|let|like|as|when|if|because|since|that|after|before|but|so|said|says|than|mit|von|für|bei|avec|de|par|chez|pour)[ ,"“'(]{1,2}$/iu;

/** A letter's beginning, at the beginning of a line or sentence. */
export const GREETING = /(?:^|[\n.!?:;,]\s*)(?:hi|hello|hey|dear|hiya|hallo|liebe[r]?|bonjour|salut|morning|evening|good (?:morning|evening|day))(?: there)?[ ,]{1,2}$/iu;

/** A letter's end: what follows is who wrote it. */
export const SIGN_OFF =
  /(?:^|[\n.!?;,…]\s*)(?:cheers|thanks|thx|ta|regards|(?:kind|best|warm|many) (?:regards|wishes|thanks)|all the best|best|yours(?: sincerely| truly| faithfully)?|sincerely|love|greetings|mit freundlichen grüßen|viele grüße|liebe grüße|gruß|grüße|lg|vg|mfg|cordialement|amicalement|bien à vous|merci|salutations|73|happy (?:soldering|repairing|fixing)|good luck|hope (?:this|that|it) helps)[ ,.!:\n–—-]{1,6}$/iu;
export const DASH_BEFORE = /(?:^|[\n.!?)\]]\s*)(?:--?|–|—|~|\/)\s{0,2}$/u;

/** After the name of somebody who does something. */
export const VERB_AFTER =
  /^(?:['’]s\b|,? (?:said|says|told|gave|gives|sold|reckons|reckoned|thought|thinks|suggested|suggests|pointed|helped|lent|sent|brought|brings|fixed|repaired|did|does|had|has|was|is|wants|wanted|asked|knows|knew|found|who|and I|and me|came|swears|swore|spotted|noticed|recapped|built|bought|wrote|posted|used|tried|from|lives|owns|owned|dropped|left|donated|owes|meint|sagt|hat|dit|a dit)\b)/u;

/** A title before a surname. */
export const TITLE = /^(?:Mr|Mrs|Ms|Miss|Mister|Dr|Prof|Professor|Sir|Lady|Herr|Herrn|Frau|Monsieur|Madame|Mme|Mlle|Señor|Señora|Signor|Signora|Mevrouw|Meneer|Uncle|Aunt|Auntie|Father|Sister|Pastor|Rev)\.?$/u;
