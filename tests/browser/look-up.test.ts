import { describe, expect, it } from 'vitest';
import { addressOf, askPage, paramsOf, percentIn, STANDING_EXAMPLE, textOf } from './ask-page';
import { openPage } from './harness/open-page';

describe('the look-up of the standing example', () => {
  it('answers with causes, each with its chance, its bracket and the cases behind it', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const rows = page.locator('.causes .rows > .row').filter({ has: page.locator('.cause-name') });
    expect(await rows.count()).toBeGreaterThanOrEqual(4);
    const first = await textOf(rows.first());
    expect(first).toMatch(/\d+%/);
    expect(first).toMatch(/\d+–\d+%/);
    expect(first).toMatch(/of [\d,]+ matching cases|no matching case/);
    expect(await textOf(page.locator('.unlisted'))).toContain('None of these');
  });

  it('makes the clock crystal unlikely, and says why', async () => {
    // Common practice, no source: a clock pulse seen at the processor clears the crystal.
    const page = await askPage(STANDING_EXAMPLE, {}, [['why', 'crystal-dead']]);
    const crystal = page.locator('#cause-crystal-dead');
    expect(percentIn(await textOf(crystal.locator('.cause-share')))).toBeLessThanOrEqual(2);
    const row = crystal.locator('.evidence tr', { hasText: /clock at the processor/i }).first();
    expect(await textOf(row)).toMatch(/−\d/);
  });

  it('adds the evidence up: prior and weights come to the total in both tables', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.getByRole('link', { name: /^Show the evidence for/ }).first().click();
    await page.locator('.causes .evidence').waitFor();
    for (const table of await page.locator('.causes details[open] .evidence table').all()) {
      const cells = (await table.locator('td.figure').allInnerTexts()).map((text) =>
        Number(text.replace('−', '-').replace(/[^\d.+-]/g, '')),
      );
      const total = cells.pop() ?? Number.NaN;
      const sum = cells.reduce((a, b) => a + b, 0);
      // Each row is rounded to a tenth.
      expect(Math.abs(sum - total)).toBeLessThanOrEqual(0.05 * (cells.length + 1) + 1e-9);
    }
  });

  it('shows cases like it, each leading to the case', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const links = page.locator('.case-row a');
    expect(await links.count()).toBeGreaterThan(0);
    expect(await links.count()).toBeLessThanOrEqual(10);
    await links.first().click();
    await page.waitForURL(/\/cases\/[a-z2-7]{16}$/);
  });

  it('says once that cases are volunteered, and that one fault is assumed', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const text = await textOf(page.locator('main'));
    expect(text.match(/volunteered, not sampled/g)).toHaveLength(1);
    expect(text).toContain('single fault');
  });
});

describe('how the words were read', () => {
  it('flips a symptom between present and absent, and the address says so', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.getByRole('link', { name: /grey screen is present; make it absent/i }).click();
    await page.getByRole('link', { name: /grey screen is absent; make it present/i }).waitFor();
    expect(paramsOf(page, 'f')).toEqual(['symptom.grey-screen.absent']);
  });

  it("changes a check's outcome through its menu", async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const tag = page.locator('.tag', { hasText: /clock at the processor/i });
    await tag.locator('summary').click();
    await tag.locator('.menu a').first().click();
    await page.waitForURL(/f=check\.clock-at-processor\./);
    expect(paramsOf(page, 'f')[0]).not.toBe('check.clock-at-processor.pulsing');
    expect(await page.locator('.tag', { hasText: /set by you/ }).count()).toBe(1);
  });

  it('takes a finding out and puts it back', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.getByRole('link', { name: /take out grey screen/i }).click();
    await page.waitForURL(/not=symptom\.grey-screen/);
    await page.getByText('taken out:').waitFor();
    await page.getByRole('link', { name: 'Put back' }).click();
    await page.getByRole('link', { name: /take out grey screen/i }).waitFor();
    expect(paramsOf(page, 'not')).toEqual([]);
  });

  it('adds a finding by type-ahead, with the keys alone', async () => {
    const page = await askPage('grey screen');
    await page.locator('.add summary').click();
    const box = page.getByRole('combobox', { name: /symptom, check or fix/i });
    await box.fill('clock at proc');
    const option = page.locator('.add').getByRole('option').first();
    await option.waitFor();
    await box.press('ArrowDown');
    expect(await option.getAttribute('aria-selected')).toBe('true');
    await box.press('Enter');
    await page.waitForURL(/f=check\.clock-at-processor\./);
  });

  it('keeps words that it could not read in sight until they are set aside', async () => {
    const page = await askPage('grey screen, zzyzx quux');
    const unread = page.locator('.tag-unread');
    expect(await textOf(unread)).toContain('zzyzx');
    await unread.getByRole('link', { name: /set aside/i }).click();
    await page.waitForURL(/aside=/);
    await page.locator('.tag-aside', { hasText: 'zzyzx' }).waitFor();
    expect(await page.locator('.tag-unread').count()).toBe(0);
  });

  it('takes "that is all I see" at once', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    await page.getByLabel(/that is all i see/i).check();
    await page.waitForURL(/all=1/);
  });
});

describe('the address', () => {
  it('holds the whole question: opened elsewhere, it shows the same page', async () => {
    const page = await askPage(`${STANDING_EXAMPLE}, hums`);
    await page.getByRole('link', { name: /grey screen is present; make it absent/i }).click();
    await page.waitForURL(/f=/);
    await page.getByLabel(/that is all i see/i).check();
    await page.waitForURL(/all=1/);
    const other = await openPage();
    await other.goto(page.url());
    expect(await textOf(other.locator('.verdict'))).toBe(await textOf(page.locator('.verdict')));
    expect(await other.locator('.tag').allInnerTexts()).toEqual(await page.locator('.tag').allInnerTexts());
  });

  it('leads back step by step, the box with it', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const before = await textOf(page.locator('.verdict'));
    await page.locator('#words').fill('no sound');
    await page.getByRole('button', { name: 'Look up' }).click();
    await page.waitForURL(/q=no\+sound/);
    await page
      .locator('.tag', { hasText: /no sound/i })
      .first()
      .waitFor();
    await page.goBack({ waitUntil: 'commit' });
    await page
      .locator('.tag', { hasText: /grey screen/i })
      .first()
      .waitFor();
    expect(await page.locator('#words').inputValue()).toBe(STANDING_EXAMPLE);
    expect(await textOf(page.locator('.verdict'))).toBe(before);
  });

  it('keeps what was typed before the scripts had loaded', async () => {
    const page = await openPage();
    await page.route(/\.js(\?|$)/, async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 1500));
      await route.continue();
    });
    await page.goto(addressOf('/', [['q', STANDING_EXAMPLE]]), { waitUntil: 'commit' });
    await page.locator('#words').fill('no sound');
    await page.waitForLoadState('networkidle');
    expect(await page.locator('#words').inputValue()).toBe('no sound');
  });

  it('names a device that is not there: the page says so and keeps the words', async () => {
    const page = await askPage(STANDING_EXAMPLE, {}, [['on', 'no-such-device']]);
    expect(await textOf(page.getByRole('alert').first())).toContain('No such device');
    expect(await page.locator('#words').inputValue()).toBe(STANDING_EXAMPLE);
  });
});

describe('what to check next', () => {
  it('puts the least invasive stage first, and a caution before the way to do it', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const stages = (await page.locator('.ladder .rung-head .stage-mark').allTextContents()).map((text) =>
      Number(text.replace(/\D/g, '')),
    );
    expect(stages).toEqual([...stages].sort((a, b) => a - b));
    for (const body of await page.locator('.check-body').all()) {
      const cautions = await body.locator('.cautions').count();
      if (cautions > 0) expect(await body.evaluate((node) => node.firstElementChild?.className)).toBe('cautions');
    }
  });

  it('adds an outcome with one press, and the check is then done', async () => {
    const page = await askPage(STANDING_EXAMPLE);
    const check = page.locator('.check').first();
    const name = await textOf(check.locator('.check-name'));
    await check.locator('.outcome .press').first().click();
    await page.waitForURL(/f=check\./);
    await page.locator('.tag', { hasText: name }).waitFor();
    expect(await page.locator('.check-name').allInnerTexts()).not.toContain(name);
  });
});

describe('the look-up without an answer to give', () => {
  it('offers examples to press on a first visit', async () => {
    const page = await openPage();
    await page.goto(addressOf('/'));
    await page.getByRole('link', { name: STANDING_EXAMPLE }).click();
    await page.locator('.verdict').waitFor();
  });

  it('says that nothing was read, and shows the words', async () => {
    const page = await askPage('zzyzx');
    expect(await textOf(page.locator('.notes'))).toMatch(/none of your words could be read/i);
    expect(await textOf(page.locator('.tag-unread'))).toContain('zzyzx');
  });
});
