import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { preparePages } from '../../../server/start/prepare.mjs';
import type { Question } from '../../../shared/schemas/question';
import { startServer } from '../../browser/harness/start-server';
import { buildBareApp } from '../run/bare-app';
import { type Load, loadOf } from '../run/load';
import { ms, type Row } from '../run/measure';
import { fillDatabase } from '../world/database';
import { randomOf } from '../world/draw';
import { drawnModel } from '../world/model';
import { lookUpQuestions } from './look-up';

const CONNECTIONS = 16;
/** More different look-ups than this are not answered in a second. */
const MOST_PER_SECOND = 500;

export type ServingOptions = { cases: number; seconds: number; questions: number; say: (text: string) => void };

/** What the built site answers over HTTP on loopback, beside a bare handler and a bare page; and the scripts of the page. */
export async function servingRows(folder: string, { cases, seconds, questions: count, say }: ServingOptions): Promise<Row[]> {
  // As many as can be asked in the time, each once; the first of them are those that are asked again and again.
  const questions = lookUpQuestions(drawnModel(1, Math.min(cases, 20_000), () => {}), count + seconds * MOST_PER_SECOND);
  const often = mixOf(count, 5_000);
  say('building the pages and a bare application');
  await preparePages();
  const bareApp = await buildBareApp(folder);
  const file = join(folder, 'benchmark-serving.db');
  await fillDatabase(file, cases, (done) => say(`${done} cases stored`));
  const site = await startServer(file);
  const bare = await startServer(file, bareApp);
  try {
    const json = questions.map((question) => `${site.url}/api/trpc/lookup.ask?input=${encodeURIComponent(JSON.stringify(question))}`);
    const pages = questions.map((question) => `${site.url}${pageAddress(question)}`);
    // The first question loads the casebook; what is asked often was asked before, and the tables of the boards asked about are there.
    for (const address of json.slice(0, count)) await fetch(address);
    const load = (addresses: readonly string[]) => loadOf(addresses, { connections: CONNECTIONS, seconds });
    const mixed = (addresses: readonly string[]) => often.map((place) => addresses[place] as string);
    say('a bare handler');
    const handler = await load([`${site.url}/api/alive`]);
    say('look-ups as JSON, some asked often');
    const asked = await load(mixed(json));
    say('look-ups as JSON, no two alike');
    const askedOnce = await load(json.slice(count));
    say('a bare page');
    const barePage = await load([`${bare.url}/`]);
    say('look-up pages, some asked often');
    for (const address of pages.slice(0, count)) await (await fetch(address)).arrayBuffer();
    const page = await load(mixed(pages));
    say('look-up pages, no two alike');
    const pageOnce = await load(pages.slice(count).reverse());
    const size = cases >= 1000 ? `${cases / 1000}k` : String(cases);
    const handlerHead = { alternative: 'a bare route handler on the same server' };
    const pageHead = { alternative: 'a bare server-rendered page of the same framework' };
    const json16 = `look-up over HTTP (JSON), ${size}, ${CONNECTIONS} connections`;
    const page16 = `look-up page, ${size}, ${CONNECTIONS} connections`;
    const again = `${count} different questions, the r-th commonest asked as often as 1/r`;
    return [
      rateRow({ id: 'http-json', work: json16, ...handlerHead }, asked, handler, again),
      rateRow({ id: 'http-json-once', work: json16, ...handlerHead }, askedOnce, handler, 'no question asked twice'),
      rateRow({ id: 'http-page', work: page16, ...pageHead }, page, barePage, again),
      rateRow({ id: 'http-page-once', work: page16, ...pageHead }, pageOnce, barePage, 'no question asked twice'),
      await scriptsRow(pages[0] as string, `${bare.url}/`),
    ];
  } finally {
    await Promise.all([site.stop(), bare.stop()]);
    for (const end of ['', '-wal', '-shm', '.casebook', '-search']) rmSync(`${file}${end}`, { force: true });
  }
}

/** So many places below `count`, drawn as often as questions are asked: the r-th commonest about as often as 1/r (G. K. Zipf). */
function mixOf(count: number, length: number): number[] {
  const random = randomOf(35);
  return Array.from({ length }, () => Math.min(count, Math.floor((count + 1) ** random())) - 1);
}

function pageAddress({ text, device, set }: Question): string {
  const query = new URLSearchParams({ q: text });
  if (device) query.set('on', device);
  for (const { kind, id, value } of set) query.append('f', `${kind}.${id}.${value}`);
  return `/?${query}`;
}

function rateRow(head: Pick<Row, 'id' | 'work' | 'alternative'>, ours: Load, theirs: Load, note: string): Row {
  const share = ours.perSecond / theirs.perSecond;
  const told = ({ perSecond, median, p95, bytes }: Load) =>
    `${perSecond.toFixed(0)}/s, ${ms(median)} (p95 ${ms(p95)}), ${(bytes / 1000).toFixed(0)} kB`;
  return {
    ...head,
    asked: 'at least 60 % of its rate',
    ours: told(ours),
    theirs: told(theirs),
    ratio: share,
    ratioText: `${(share * 100).toFixed(1)} % of its rate`,
    met: share >= 0.6,
    note,
  };
}

async function scriptsRow(page: string, bare: string): Promise<Row> {
  const [ours, theirs] = [await scriptBytes(page), await scriptBytes(bare)];
  const share = ours / theirs;
  return {
    id: 'scripts',
    work: 'scripts on the look-up page, gzip',
    alternative: 'an empty page of the same framework',
    asked: 'at most 1.4 times',
    ours: `${(ours / 1000).toFixed(0)} kB`,
    theirs: `${(theirs / 1000).toFixed(0)} kB`,
    ratio: share,
    ratioText: `${share.toFixed(2)} times`,
    met: share <= 1.4,
    note: 'without those for old browsers',
  };
}

/** Compressed size of every script file that a page names, but for those that only old browsers run. */
async function scriptBytes(address: string): Promise<number> {
  const html = await (await fetch(address)).text();
  const tags = html.match(/<script[^>]*\ssrc="[^"]+"[^>]*>/gi) ?? [];
  const names = new Set(tags.filter((tag) => !/nomodule/i.test(tag)).map((tag) => /src="([^"]+)"/.exec(tag)?.[1] ?? ''));
  let sum = 0;
  for (const name of names) {
    const text = await (await fetch(new URL(name.replaceAll('&amp;', '&'), address))).arrayBuffer();
    sum += gzipSync(Buffer.from(text)).length;
  }
  return sum;
}
