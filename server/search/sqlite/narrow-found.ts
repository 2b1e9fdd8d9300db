import { FILTER_NAMES, type FilterName, type SearchFacets, type SearchFilters } from '../../../shared/schemas/search';
import { type CaseColumns, codesInOrder, codesOf, nameBit } from './case-columns';

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
  const counts = new Uint32Array(columns.names.length);
  const kept: Found = all === 0 ? found : { docs: [], scores: found.scores === null ? null : [] };
  for (let i = 0; i < found.docs.length; i += 1) {
    const doc = found.docs[i] as number;
    const from = starts[doc / 2] as number;
    const to = starts[doc / 2 + 1] as number;
    let met = 0;
    if (all !== 0) for (let at = from; at < to; at += 1) met |= bits[codes[at] as number] as number;
    const missing = all & ~met;
    if (missing !== 0) {
      countMissing(columns, counts, { from, to, missing });
      continue;
    }
    for (let at = from; at < to; at += 1) counts[codes[at] as number] = (counts[codes[at] as number] as number) + 1;
    if (all === 0) continue;
    kept.docs.push(doc);
    kept.scores?.push(found.scores?.[i] as number);
  }
  return { kept, facets: facetsOf(columns, counts) };
}

/** A case that lacks what one filter asks for, and nothing else, counts for that filter alone. */
function countMissing({ codes, names }: CaseColumns, counts: Uint32Array, { from, to, missing }: { from: number; to: number; missing: number }): void {
  if ((missing & (missing - 1)) !== 0) return;
  for (let at = from; at < to; at += 1) {
    const code = codes[at] as number;
    if (nameBit(names[code] as FilterName) === missing) counts[code] = (counts[code] as number) + 1;
  }
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

/** In the order of the values, so that the order in which cases came in does not show. */
function facetsOf(columns: CaseColumns, counts: Uint32Array): SearchFacets {
  const { names, values } = columns;
  const facets = noFacets();
  for (const code of codesInOrder(columns)) {
    const count = counts[code] as number;
    if (count > 0) facets[names[code] as keyof SearchFacets][values[code] as string] = count;
  }
  return facets;
}
