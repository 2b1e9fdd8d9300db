import { type QueueFilter, queueFilterSchema } from '../../../../shared/schemas/review';
import { firstOf, type SearchParams } from '../../../_address/question';

/** Reads the queue's filter out of an address. Never throws: what it cannot read counts as not set. */
export function readFilter(params: SearchParams): QueueFilter {
  const read = queueFilterSchema.safeParse({
    device: firstOf(params, 'on'),
    marks: firstOf(params, 'marks') !== null,
    newcomer: firstOf(params, 'new') !== null,
    words: firstOf(params, 'words') !== null,
    order: firstOf(params, 'order') === 'newest' ? 'newest' : 'oldest',
  });
  return read.success ? read.data : queueFilterSchema.parse({});
}

/** The filter as address parameters; the inverse of `readFilter`. */
export function filterPairs({ device, marks, newcomer, words, order }: QueueFilter): [string, string][] {
  const pairs: [string, string][] = [];
  if (device !== null) pairs.push(['on', device]);
  if (marks) pairs.push(['marks', '1']);
  if (newcomer) pairs.push(['new', '1']);
  if (words) pairs.push(['words', '1']);
  if (order === 'newest') pairs.push(['order', 'newest']);
  return pairs;
}

/** An address of the review pages with the filter in it and whatever else it says. */
export function reviewHref(path: string, filter: QueueFilter, more: [string, string][] = []): string {
  const query = new URLSearchParams([...filterPairs(filter), ...more]).toString();
  return query === '' ? path : `${path}?${query}`;
}
