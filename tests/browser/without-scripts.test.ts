import { describe, expect, it } from 'vitest';
import { addressOf, askPage, paramsOf, STANDING_EXAMPLE, textOf } from './ask-page';
import { openPage } from './harness/open-page';

const scripts = false;

describe('the look-up without scripts', () => {
  it('answers the form', async () => {
    const page = await openPage({ scripts });
    await page.goto(addressOf('/'));
    await page.locator('#words').fill(STANDING_EXAMPLE);
    await page.locator('#words').press('Enter');
    await page.waitForURL(/q=/);
    expect(await page.locator('.cause-name').count()).toBeGreaterThanOrEqual(4);
    expect(await textOf(page.locator('.verdict'))).toMatch(/\d+%/);
    expect(await page.locator('#words').inputValue()).toBe(STANDING_EXAMPLE);
  });

  it('flips, takes out, adds an outcome and opens the evidence', async () => {
    const page = await askPage(STANDING_EXAMPLE, { scripts });
    await page
      .getByRole('link', { name: /make it absent/i })
      .first()
      .click();
    expect(paramsOf(page, 'f')).toEqual(['symptom.grey-screen.absent']);
    await page.getByRole('link', { name: /take out clock at the processor/i }).click();
    expect(paramsOf(page, 'not')).toEqual(['check.clock-at-processor']);
    await page.locator('.check .outcome .press').first().click();
    expect(paramsOf(page, 'f')).toHaveLength(2);
    await page.getByRole('link', { name: /^Show the evidence for/ }).first().click();
    expect(await page.locator('.causes .evidence').first().isVisible()).toBe(true);
  });

  it('shows a check that was folded away in full, and the causes that hardly matter', async () => {
    const page = await askPage(STANDING_EXAMPLE, { scripts });
    await page.locator('.rung-folded a').first().click();
    expect(paramsOf(page, 'rung')).toHaveLength(1);
    const line = page.locator('.rung-folded .check:has(.check-line)').first();
    const name = await textOf(line.locator('.check-name'));
    await line.getByRole('link', { name: /what it tells/i }).click();
    const opened = page.locator('.check[open]', { hasText: name });
    expect(await opened.locator('.outcome').count()).toBeGreaterThanOrEqual(2);
    await page.getByRole('link', { name: /other causes/ }).click();
    expect(paramsOf(page, 'rest')).toEqual(['1']);
    // What was unfolded before stays so.
    expect(await opened.count()).toBe(1);
    await page.getByRole('link', { name: /other fix/ }).click();
    expect(paramsOf(page, 'fixes')).toEqual(['1']);
    expect(await page.locator('#other-fixes .fix-row').count()).toBeGreaterThan(0);
    await page.getByRole('link', { name: /^Why / }).first().click();
    expect(await page.locator('.causes .evidence').last().isVisible()).toBe(true);
  });

  it('joins words added to those that are there', async () => {
    const page = await askPage('grey screen', { scripts });
    await page.locator('.add summary').click();
    await page.locator('.add input[name="also"]').fill('no sound');
    await page.locator('.add button').click();
    expect(paramsOf(page, 'q')).toEqual(['grey screen, no sound']);
    expect(paramsOf(page, 'also')).toEqual([]);
  });

  it('adds a finding from the list of all words', async () => {
    const page = await askPage('grey screen', { scripts });
    await page.locator('.add summary').click();
    await page
      .getByRole('link', { name: /all the words/i })
      .first()
      .click();
    await page.getByRole('link', { name: 'Clock and reset' }).click();
    await page.locator('#clock-at-processor a', { hasText: /pulsing/i }).click();
    expect(paramsOf(page, 'q')).toEqual(['grey screen']);
    expect(paramsOf(page, 'f')).toEqual(['check.clock-at-processor.pulsing']);
  });
});

describe('the other pages without scripts', () => {
  it('make a plan, strike a step and narrow the cases to a device', async () => {
    const page = await askPage(STANDING_EXAMPLE, { scripts }, [['on', 'quellbrook-8']]);
    await page.getByRole('link', { name: 'Make a repair plan' }).click();
    await page.goto(`${page.url()}&over=150`);
    const first = await textOf(page.locator('.plan-step h3').first());
    await page
      .getByRole('link', { name: /^strike: /i })
      .first()
      .click();
    expect(paramsOf(page, 'strike')).toHaveLength(1);
    expect(await textOf(page.locator('.plan-step h3').first())).not.toBe(first);
    await page.goto(addressOf('/cases'));
    await page.locator('#device').selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Show' }).click();
    await page.waitForURL(/[?&]on=/);
    await page.locator('.case-line').first().waitFor();
    expect(paramsOf(page, 'on')).toHaveLength(1);
    expect(await page.locator('.case-line').count()).toBeGreaterThan(0);
  });
});
