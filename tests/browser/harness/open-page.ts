import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, expect, onTestFinished } from 'vitest';
import { chromiumSentence, findChromium } from './find-chromium.mjs';

/** Sizes that the pages are looked at in, in CSS pixels. */
export const screens = { desktop: { width: 1280, height: 900 }, phone: { width: 390, height: 844 } };

/** How a page is looked at; what is left out is a desktop, light, with scripts. */
export interface Look {
  screen?: keyof typeof screens;
  theme?: 'light' | 'dark';
  scripts?: boolean;
  /** A fault that the test brings about itself, and that may be logged. */
  expected?: RegExp;
  /** Whatever else the browser context takes. */
  context?: BrowserContextOptions;
}

let running: Promise<Browser> | null = null;

/** This test file's browser, started at first use and closed after the last test. */
function browser(): Promise<Browser> {
  running ??= launch();
  return running;
}

afterAll(async () => {
  const started = await running;
  running = null;
  await started?.close();
});

async function launch(): Promise<Browser> {
  const executablePath = findChromium(process);
  if (executablePath === null) throw new Error(chromiumSentence(process));
  const quiet = [
    '--disable-gpu',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ];
  // Chromium refuses to run as root inside its own sandbox.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium.launch({ executablePath, args: [...quiet, ...asRoot] });
}

/**
 * Opens an empty page for one test; call it inside `it`. It is closed when the test ends, which fails if the page
 * threw, logged an error, or asked for something from another address.
 */
export async function openPage({
  screen = 'desktop',
  theme = 'light',
  scripts = true,
  expected,
  context = {},
}: Look = {}): Promise<Page> {
  const opened = await (await browser()).newContext({
    viewport: screens[screen],
    colorScheme: theme,
    javaScriptEnabled: scripts,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    ...context,
  });
  const page = await opened.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`threw: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' && !expected?.test(message.text())) faults.push(`logged: ${message.text()}`);
  });
  page.on('request', (request) => {
    if (!/^(http:\/\/127\.0\.0\.1:|data:|blob:)/.test(request.url())) faults.push(`asked for ${request.url()}`);
  });
  onTestFinished(async () => {
    await opened.close();
    expect(faults, 'faults in the page').toEqual([]);
  });
  return page;
}
