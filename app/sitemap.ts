import type { MetadataRoute } from 'next';
import { attempt } from './_casebook/attempt';
import { serverCaller } from './_trpc/server';

/** The pages that stay: lists, symptoms, devices, parts and fixes. Empty where the site does not know its own address. */
export default async function sitemap(): Promise<MetadataRoute.Sitemap> {
  const site = process.env.SITE_URL;
  if (!site) return [];
  const { value: vocabulary } = await attempt(() => serverCaller().casebook.listVocabulary());
  const { value: catalogue } = await attempt(() => serverCaller().casebook.getCatalogue());
  const under = (path: string, entries: readonly { slug: string }[] = []) => entries.map(({ slug }) => `${path}/${slug}`);
  const paths = [
    ...['/', '/casebook', '/cases', '/symptoms', '/devices', '/parts', '/fixes', '/data', '/method', '/safety'],
    ...under('/symptoms', vocabulary?.symptoms),
    ...under('/devices', catalogue?.models),
    ...under('/parts', vocabulary?.roles),
    ...under('/fixes', vocabulary?.fixes),
  ];
  return paths.map((path) => ({ url: `${new URL(site).origin}${path}` }));
}
