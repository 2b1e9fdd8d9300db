import { FILTER_NAMES, type SearchFacets, type SearchFilters } from '../../../shared/schemas/search';
import { type CaseColumns, codesOf, nameBit } from './case-columns';

/** Found cases: numbers in the full text, and a score for each where they were found by words. */
export type Found = { docs: number[]; scores: number[] | null };

/** No case, under every filter. */
export function noFacets(): SearchFacets {
  return Object.fromEntries(FILTER_NAMES.map((name) => [name, {}])) as SearchFacets;
}

/**
 * The found cases that have one of the wanted values of every filter, and how many cases have each value; a filter's own
 * choice does not narrow its own counts. One walk over the cases.
 */
export function narrowFound(columns: CaseColumns, found: Found, filters: SearchFilters): { kept: Found; facets: SearchFacets } {
  const { codes, starts } = columns;
  const { all, bits } = wantedBits(columns, filters);
  const nameBits = Uint16Array.from(columns.names, nameBit);
  const counts = new Uint32Array(columns.names.length);
  const kept: Found = { docs: [], scores: found.scores === null ? null : [] };
  found.docs.forEach((doc, i) => {
    const from = starts[doc / 2] as number;
    const to = starts[doc / 2 + 1] as number;
    let met = 0;
    for (let at = from; at < to; at += 1) met |= bits[codes[at] as number] as number;
    const missing = all & ~met;
    if (missing === 0) {
      kept.docs.push(doc);
      kept.scores?.push(found.scores?.[i] as number);
      for (let at = from; at < to; at += 1) counts[codes[at] as number] = (counts[codes[at] as number] as number) + 1;
    } else if ((missing & (missing - 1)) === 0) {
      // It lacks what one filter asks for, and counts for that one alone.
      for (let at = from; at < to; at += 1) {
        const code = codes[at] as number;
        if (nameBits[code] === missing) counts[code] = (counts[code] as number) + 1;
      }
    }
  });
  return { kept, facets: facetsOf(columns, counts) };
}

/** The filters that are set, as bits, and by code the filter that it satisfies. */
function wantedBits(columns: CaseColumns, filters: SearchFilters): { all: number; bits: Uint16Array } {
  const bits = new Uint16Array(columns.names.length);
  let all = 0;
  for (const name of FILTER_NAMES) {
    const values = filters[name] ?? [];
    if (values.length === 0) continue;
    all |= nameBit(name);
    for (const code of codesOf(columns, name, values)) bits[code] = nameBit(name);
  }
  return { all, bits };
}

function facetsOf({ names, values }: CaseColumns, counts: Uint32Array): SearchFacets {
  const facets = noFacets();
  counts.forEach((count, code) => {
    if (count > 0) facets[names[code] as keyof SearchFacets][values[code] as string] = count;
  });
  return facets;
}
