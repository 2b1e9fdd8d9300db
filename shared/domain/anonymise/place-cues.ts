/** Before a place that is on the list. */
export const PLACE_BEFORE = /(?<![\p{L}])(?:in|near|from|at|around|outside|to|of|via|for|through|towards|nach|aus|bei|à|en|près de|de|north of|south of|east of|west of)(?: (?:the|central|downtown|north|south|east|west|rural|greater|sunny|old))? $/iu;

const WHAT =
  'shop|shops|dealer|store|market|fair|museum|club|seller|buyer|workshop|sale|clearance|school|university|college|auction|meet|meet-?up|convention|house|flat|garage|shed|loft|attic|address|office|lab|library|arcade|pub|caf[ée]|hotel|skip|tip|dump|centre|center|surplus|exhibition|event|hackspace|makerspace|bloke|guy|chap|man|woman|lady|mate|friend|customer|brother|sister|uncle|aunt|parents|family|owner|kid|boy|repairer|village|town|city|suburb|region|area|hill|Laden|Flohmarkt|magasin|brocante|marché';
const DOES =
  'live|lives|lived|living|based|born|raised|grew up|moved|posted|shipped|sent|travell?ed|drove|driven|went|over|down|up|back|here|home|workshop|bench|collected|collection|picked (?:it |this |her |one )?up|delivered|imported|came (?:\\w+ )?|hails?|wohne|wohnt|komme|habite|vis';
/** Before a place whatever its name: "from a shop near", "I live in". */
export const STRONG_PLACE_BEFORE = new RegExp(`(?<![\\p{L}])(?:${WHAT}|${DOES})(?: (?:just|somewhere|right|all the way|of mine|here|up|down|over|back)){0,2},? (?:in|near|from|outside|around|to|at|of|by|over in|up in|down in|bei|nach|aus|à|près de)(?: (?:the|central|north|south|east|west|rural))? $`, 'iu');

/** Things named after a place: "Manchester code". */
export const THING_AFTER =
  /^[ -](?:transistors?|pairs?|arrays?|drivers?|cod(?:e|es|ed|ing)|encod(?:ed|ing|er)|decoder|patterns?|bus|filters?|bridges?|oscillators?|diodes?|connectors?|plugs?|sockets?|triggers?|interface|port|cable|screwdriver|screws?|drives?|disks?|effect|amplifier|output|stage|type|steel|blue|green|white|brown)\b/iu;
