import { describe, expect, it } from 'vitest';
import { addressOf, paramsOf, percentIn, STANDING_EXAMPLE, textOf } from './ask-page';
import { openPage } from './harness/open-page';

/** What is asked, and an ending dear enough for several steps to pay. */
const asked: [string, string][] = [
  ['q', STANDING_EXAMPLE],
  ['on', 'quellbrook-8'],
  ['over', '150'],
];

describe('the repair plan', () => {
  it('runs up a chance that never falls, and ends in stopping or handing over', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', asked));
    const chances = (await page.locator('.plan-figures', { hasText: 'works by now' }).allInnerTexts()).map((text) =>
      percentIn(text.slice(text.indexOf('works by now'))),
    );
    expect(chances.length).toBeGreaterThan(1);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(await textOf(page.locator('.plan-step h3').last())).toMatch(/stop, or hand it over/i);
  });

  it('flows anew without a step that was struck, and puts it back', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', asked));
    const first = page.locator('.plan-step').first();
    const name = await textOf(first.locator('h3'));
    await first.getByRole('link', { name: /^strike: /i }).click();
    await page.waitForURL(/strike=/);
    await page.getByText('struck:').waitFor();
    expect(await page.locator('.plan-step h3').allInnerTexts()).not.toContain(name);
    await page.getByRole('link', { name: /put back/i }).click();
    await page.waitForURL((url) => !url.search.includes('strike='));
    await page
      .locator('.plan-step h3', { hasText: name.split('\n').pop() })
      .first()
      .waitFor();
  });

  it('holds to the stage that the user will go to', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', [...asked, ['stage', '1']]));
    const stages = (await page.locator('.plan-step .stage-mark').allTextContents()).map((text) =>
      Number(text.replace(/\D/g, '')),
    );
    expect(stages.length).toBeGreaterThan(0);
    expect(Math.max(...stages)).toBeLessThanOrEqual(1);
  });

  it('takes the form: the address then says what an hour is worth and what is at hand', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', asked));
    await page.getByText('Your time, tools and limits').click();
    await page.getByLabel(/an hour of work/i).fill('7.50');
    await page.getByLabel('Oscilloscope').uncheck();
    await page.getByRole('button', { name: /make the plan again/i }).click();
    await page.waitForURL(/hour=7\.50/);
    expect(paramsOf(page, 'have')).toContain('multimeter');
    expect(paramsOf(page, 'have')).not.toContain('oscilloscope');
    expect(await page.getByText(/an hour counts 7\.50/i).count()).toBe(1);
  });

  it('takes what a step showed, and goes on from there', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', asked));
    const step = page.locator('.plan-step', { hasText: 'I did this, and found' }).first();
    const name = await step.locator('h3').textContent();
    await step.getByText('I did this, and found').click();
    await step.locator('.word-values a').first().click();
    await page.waitForURL(/f=check\./);
    await page.waitForFunction(
      (gone) => ![...document.querySelectorAll('.plan-step h3')].some((head) => head.textContent === gone),
      name,
    );
  });

  it('says why no step pays where stopping costs nothing, and offers a dearer ending', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan', [...asked.slice(0, 2), ['over', '0']]));
    expect(await page.locator('.plan-step h3').count()).toBe(1);
    await page.getByRole('link', { name: 'Plan at 200.00' }).click();
    await page.waitForURL(/over=200/);
    await page.locator('.plan-step h3').nth(1).waitFor();
  });

  it('sends whoever asked nothing back to the look-up', async () => {
    const page = await openPage();
    await page.goto(addressOf('/plan'));
    expect(await page.getByRole('main').getByRole('link', { name: 'Look up' }).count()).toBe(1);
  });
});
