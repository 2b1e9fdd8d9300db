import { randomBytes } from 'node:crypto';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { makePhoto, TRACES } from '../server/photos/make-photo';
import { addressOf, textOf } from './ask-page';
import { type Look, openPage } from './harness/open-page';

const PASSWORD = 'solder and rosin at dusk';

/** The form, as somebody who has just signed up. */
async function signedUp(look: Look = {}): Promise<Page> {
  const page = await openPage(look);
  await page.goto(addressOf('/sign-up?next=/post'));
  await page.getByLabel('Name', { exact: true }).fill(`photos-${randomBytes(4).toString('hex')}`);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign up' }).click();
  await page.locator('.post-form[data-ready="true"]').waitFor();
  return page;
}

const fileOf = async (name: string) => ({ name, mimeType: 'image/jpeg', buffer: Buffer.from(await makePhoto('jpeg')) });
const photos = (page: Page) => page.locator('.post-photos li');

/** A file that the site hands out, as the page would get it. */
const fetched = (page: Page, address: string) =>
  page.evaluate(async (url) => {
    const answer = await fetch(url);
    const bytes = new Uint8Array(await answer.arrayBuffer());
    return { status: answer.status, headers: Object.fromEntries(answer.headers), text: String.fromCharCode(...bytes.subarray(0, 60_000)) };
  }, address);

describe('a photo', () => {
  it('is added through the form without what the camera wrote, survives a reload, needs words, and is sent with the case', async () => {
    const page = await signedUp({ context: { viewport: { width: 360, height: 780 } }, expected: /404/ });
    const sent = await fileOf('kitchen-table.jpg');
    expect(TRACES.filter((trace) => sent.buffer.toString('latin1').includes(trace))).toContain('ZORKDATUM');
    await page.getByLabel('Add photos').setInputFiles([sent]);
    await photos(page).first().waitFor();
    const address = (await photos(page).locator('img').getAttribute('src'))?.replace('small', 'large') ?? '';
    const stored = await fetched(page, address);
    expect(stored.status).toBe(200);
    expect(stored.text.slice(8, 12)).toBe('WEBP');
    expect(TRACES.filter((trace) => stored.text.includes(trace))).toEqual([]);
    expect(stored.headers).toMatchObject({
      'content-type': 'image/webp',
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    });
    await page.reload();
    await page.locator('.post-form[data-ready="true"]').waitFor();
    expect(await photos(page).count()).toBe(1);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);

    await page.getByLabel('Device and board').selectOption('quellbrook-8');
    await page.getByRole('combobox', { name: 'Add a symptom from the list' }).fill('grey screen');
    await page.locator('.suggestions:not([hidden]) [role="option"]').first().waitFor();
    await page.getByRole('combobox', { name: 'Add a symptom from the list' }).press('Enter');
    await page.getByRole('combobox', { name: 'Add a check or a fix' }).fill('clock at the proc');
    await page.locator('.suggestions:not([hidden]) [role="option"]').first().waitFor();
    await page.getByRole('combobox', { name: 'Add a check or a fix' }).press('Enter');
    await page.getByLabel('It showed').selectOption({ index: 2 });
    await page.getByLabel('Outcome', { exact: true }).selectOption('unresolved');
    await page.getByRole('button', { name: 'Send to review' }).click();
    await page.locator('.fault-summary').getByRole('link', { name: /^Photo 1: Say in a few words/ }).click();
    await page.keyboard.type('The crystal beside the processor, its can dented');
    await page.getByRole('button', { name: 'Send to review' }).click();
    await page.getByRole('heading', { name: 'Sent to review' }).waitFor();
    expect(await textOf(page.locator('.once-shown'))).toMatch(/^([a-z2-7]{4}-){4}[a-z2-7]{4}$/);
    expect((await fetched(page, address)).status).toBe(200);
    await page.context().clearCookies();
    expect((await fetched(page, address)).status).toBe(404);
  });

  it('that is none is refused with what to do, and one that is taken out is gone', async () => {
    const page = await signedUp({ expected: /404/ });
    await page.getByLabel('Add photos').setInputFiles([
      { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all') },
      await fileOf('board.jpg'),
    ]);
    await photos(page).first().waitFor();
    await page.getByText('notes.jpg: This is no JPEG, PNG or WebP picture').waitFor();
    const address = (await photos(page).locator('img').getAttribute('src')) ?? '';
    await page.getByRole('button', { name: /^Take out/ }).click();
    await photos(page).first().waitFor({ state: 'detached' });
    expect((await fetched(page, address)).status).toBe(404);
  });
});

describe('readings at pins', () => {
  it('are typed pin after pin with Enter alone', async () => {
    const page = await signedUp();
    await page.getByText('Readings pin by pin').click();
    await page.getByRole('button', { name: 'Add a reading' }).click();
    await page.getByLabel('Part', { exact: true }).fill('U1');
    await page.getByLabel('Pin', { exact: true }).fill('9');
    await page.getByLabel('Reading', { exact: true }).fill('p');
    await page.keyboard.press('Enter');
    await page.locator('#post-readings-1-reading:focus').waitFor();
    await page.keyboard.type('4.62 V');
    expect(await page.getByLabel('Pin', { exact: true }).nth(1).inputValue()).toBe('10');
    expect(await page.getByLabel('Part', { exact: true }).nth(1).inputValue()).toBe('U1');
  });
});
