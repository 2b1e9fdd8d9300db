import { canInstallPackages, installDebianPackages } from '../../server/start/debian-packages.mjs';
import { preparePackages } from '../../server/start/prepare.mjs';
import { Refusal } from '../../server/start/refusal.mjs';
import { sourceChecks } from '../../server/start/source-checks.mjs';
import { step } from '../../server/start/step.mjs';
import { chromiumSentence, findChromium } from '../browser/harness/find-chromium.mjs';
import { countLine, exitCode } from './tally.mjs';
import { runProject } from './vitest-part.mjs';

/** @typedef {import('./tally.mjs').Tally & Partial<import('./vitest-part.mjs').Notes>} Tally */

/** @type {{ name: string, run: () => Promise<Tally> }[]} */
const parts = [
  ...sourceChecks.map((check) => ({ name: check.name, run: () => sourceCheck(check) })),
  { name: 'unit tests', run: () => runProject('unit') },
  { name: 'repository and router tests', run: () => runProject('server') },
  { name: 'architecture tests', run: () => runProject('architecture') },
  { name: 'browser tests', run: browserTests },
];

/** @param {typeof sourceChecks[number]} check @returns {Promise<Tally>} */
async function sourceCheck({ run }) {
  const { code, output } = await run();
  if (code !== 0) console.log(output);
  return { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: [] };
}

/** @returns {Promise<Tally>} */
async function browserTests() {
  if (findChromium(process) === null && !process.env.CHROMIUM_PATH && canInstallPackages()) {
    await step('Installing Chromium (apt-get)', async (note) => {
      const fault = await installDebianPackages(['chromium', 'fonts-dejavu-core']);
      if (fault !== null) note(fault);
    });
  }
  if (findChromium(process) === null) return { passed: 0, failed: 0, skipped: [`all of them. ${chromiumSentence(process)}`] };
  return runProject('browser');
}

/** A part that cannot even start is one failure; the others still run. @param {typeof parts[number]} part */
async function runPart({ name, run }) {
  const started = performance.now();
  console.log(`\n== ${name}`);
  /** @type {Tally} */
  let tally = { passed: 0, failed: 1, skipped: [] };
  try {
    tally = await run();
  } catch (error) {
    console.log(error instanceof Refusal ? error.message : error);
  }
  return { name, tally, seconds: (performance.now() - started) / 1000 };
}

/** @returns {Promise<Awaited<ReturnType<typeof runPart>>[]>} */
async function runAll() {
  const installed = await runPart({ name: 'installation', run: () => preparePackages().then(() => ({ passed: 0, failed: 0, skipped: [] })) });
  if (installed.tally.failed > 0) return [installed];
  const done = [];
  for (const part of parts) done.push(await runPart(part));
  return done;
}

const done = await runAll();
console.log('\n== summary');
for (const { name, tally, seconds } of done) console.log(`${name}: ${countLine([tally])} (${seconds.toFixed(0)} s)`);
for (const { name, tally } of done) {
  for (const test of tally.retried ?? []) console.log(`PASSED ONLY WHEN TRIED AGAIN in ${name}: ${test}`);
  for (const test of tally.shortfalls ?? []) console.log(`KNOWN SHORTFALL (expected to fail, and counted as passed) in ${name}: ${test}`);
}
for (const { tally } of done) for (const sentence of tally.told ?? []) console.log(sentence);
for (const { name, tally } of done) for (const skipped of tally.skipped) console.log(`SKIPPED in ${name}: ${skipped}`);
const tallies = done.map(({ tally }) => tally);
process.exitCode = exitCode(tallies);
console.log(countLine(tallies));
