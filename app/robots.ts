import type { MetadataRoute } from 'next';

/** What search engines may look at: everything but accounts and what is asked or made on the spot. */
export default function robots(): MetadataRoute.Robots {
  const site = process.env.SITE_URL;
  return {
    rules: { userAgent: '*', allow: '/', disallow: ['/account', '/api/', '/plan', '/post', '/reset', '/search', '/submissions'] },
    ...(site ? { sitemap: `${new URL(site).origin}/sitemap.xml` } : {}),
  };
}
