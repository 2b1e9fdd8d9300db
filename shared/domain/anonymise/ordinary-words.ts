import { knownWords } from './known-words';

/** Words that stand with a capital at the beginning of a sentence or as a heading, and the names that the trade gives to things. */
const ORDINARY = `a about above absolutely after again all almost already also although always an and another any anybody anyone anything
are as at away bad because been before behind below beside besides between board bought both but by came can careful cause check checked clean
cleaned cold conclusion could did diagnosis do does done down dont each easy either else end even every everything fault fine finally first
fix fixed for found from fully further gave get gets give given go goes going good got great had half hardly has have having he hello help her
here hey hi his hope hot how however i if in inside instead is it its just keep kept later last left less let like line list live look looked
lot made make many maybe me measure measured meanwhile more most much must my near nearly need never new next nice no nobody none nor not note
nothing now of off ok okay old on once one only or other our out outside over own part perhaps please previous probably problem put quick
quite rather ready really remember remove removed replace replaced result right same saw second seems set she should side since so sold
solution some somebody someone something sometimes somewhere soon spare start still strange such summary symptom symptoms take test tested
than thank thanks that the their them then there these they thing third this those though three through thus till to together told too took
tried true try turn turned turns two under unless until up update use used using verdict very via was we well went were what when where
whether which while who whole why will with within without worked working works would yes yet you your
monday tuesday wednesday thursday friday saturday sunday january february march april may june july august september october november december
english german french dutch british american european japanese chinese italian spanish swedish polish latin greek europe america england
germany france japan china britain internet christmas easter god lord earth moon sun mars north south east west
spring summer autumn winter today tomorrow yesterday morning evening tonight weekend
red orange yellow green blue violet brown black grey gray white pink purple amber cyan magenta
basic forth pascal fortran cobol assembler boolean ascii morse unicode
bonjour merci salut hallo danke guten tag cordialement regards cheers best kind yours sincerely greetings dear`;

/** Units, parts, circuits and tools named after people or places long ago. */
const TRADE = `allen phillips flathead darlington schottky zener schmitt colpitts hartley pierce clapp wien wheatstone
kelvin celsius fahrenheit hertz ohm ohms volt volts ampere amp watt farad henry tesla weber joule newton siemens coulomb bel decibel baud gauss
hall thevenin norton kirchhoff fourier nyquist bode miller johnson gray hamming manchester
ferrite tantalum thyristor triac varistor scart jack mini micro peltier seebeck faraday geiger maxwell lissajous
export made handle warranty recycling charity everyone everybody museum passing cheap day
rayleigh bessel butterworth chebyshev harvard turing brinell vickers mohs nichrome constantan`;

/** Words with a capital that are neither a person nor a place unless something beside them says so. */
export const ORDINARY_WORDS = knownWords([ORDINARY, TRADE]);
