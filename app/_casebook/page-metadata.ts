import type { Metadata } from 'next';

type PageWords = {
  /** The finding of the page, in one line: it stands in the tab and in a preview of the link. */
  title: string;
  description: string;
  /** The page's own address, without what only narrows or turns a list. */
  path: string;
  /** Addresses of its Atom feed, if it has one. */
  feed?: string;
};

/**
 * Title, description and preview of a page. The canonical address is stated only where the site knows its own (SITE_URL): a
 * guess would send search engines elsewhere.
 */
export function pageMetadata({ title, description, path, feed }: PageWords): Metadata {
  const isKnown = Boolean(process.env.SITE_URL);
  return {
    title,
    description,
    openGraph: { title, description, siteName: 'Second Bench', type: 'article', ...(isKnown ? { url: path } : {}) },
    twitter: { card: 'summary', title, description },
    alternates: {
      ...(isKnown ? { canonical: path } : {}),
      ...(feed ? { types: { 'application/atom+xml': feed } } : {}),
    },
  };
}
