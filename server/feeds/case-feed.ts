import { createHash } from 'node:crypto';
import { XMLBuilder } from 'fast-xml-parser';
import type { CaseListItem } from '../../shared/schemas/case-view';

type CaseFeed = {
  title: string;
  /** Address of the feed itself, and of the page whose cases it has; both begin with the site's origin. */
  self: string;
  page: string;
  origin: string;
  cases: readonly CaseListItem[];
  /** Where there is no case: the month that the feed says it was updated in, YYYY-MM. */
  emptySince: string;
};

const builder = new XMLBuilder({ ignoreAttributes: false, attributeNamePrefix: '@', format: true, suppressEmptyNode: true });

/** An Atom feed (RFC 4287) of cases. Times are the first instant of the month: finer ones are not kept. */
export function caseFeed({ title, self, page, origin, cases, emptySince }: CaseFeed): string {
  const months = cases.map((item) => item.month).sort();
  return builder.build({
    '?xml': { '@version': '1.0', '@encoding': 'utf-8' },
    feed: {
      '@xmlns': 'http://www.w3.org/2005/Atom',
      '@xml:lang': 'en-GB',
      id: nameBasedUrn(`feed ${new URL(self).pathname}`),
      title,
      subtitle: 'Times are months. Cases are volunteered, not sampled.',
      updated: startOf(months.at(-1) ?? emptySince),
      author: { name: 'Second Bench contributors' },
      rights: 'CC BY 4.0, https://creativecommons.org/licenses/by/4.0/',
      link: [
        { '@rel': 'self', '@type': 'application/atom+xml', '@href': self },
        { '@rel': 'alternate', '@type': 'text/html', '@href': page },
      ],
      entry: cases.map((item) => entryOf(item, origin)),
    },
  });
}

function entryOf(item: CaseListItem, origin: string) {
  const symptoms = item.symptoms.length > 0 ? item.symptoms.join(', ') : 'No symptom recorded';
  const causes = item.causes.length > 0 ? item.causes.map((cause) => cause.label).join(', ') : 'cause not found';
  return {
    id: nameBasedUrn(`case ${item.id}`),
    title: `${symptoms}: ${causes} (${item.device.label})`,
    updated: startOf(item.month),
    published: startOf(item.month),
    link: { '@rel': 'alternate', '@type': 'text/html', '@href': `${origin}/cases/${item.id}` },
    summary: item.excerpt === '' ? `${symptoms}: ${causes}.` : item.excerpt,
  };
}

const startOf = (month: string) => `${month}-01T00:00:00Z`;

/** Name space of the names below: made once at random. */
const NAME_SPACE = Buffer.from('7c1f4a4e9d0b4b6f8a2c5e3d1f60b7a9', 'hex');

/** A name-based UUID (version 5, RFC 9562) as a URN: the same name gives the same id wherever the site stands. */
function nameBasedUrn(name: string): string {
  const bytes = createHash('sha1').update(NAME_SPACE).update(name).digest().subarray(0, 16);
  bytes[6] = ((bytes[6] as number) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] as number) & 0x3f) | 0x80;
  return `urn:uuid:${bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')}`;
}
