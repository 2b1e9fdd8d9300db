import { preparePackages } from './prepare.mjs';
import { runMain } from './refusal.mjs';
import { sourceChecks } from './source-checks.mjs';

// npm run check: type check and lint.
await runMain(async () => {
  await preparePackages();
  let faults = 0;
  for (const { name, run } of sourceChecks) {
    const { code, output } = await run();
    console.log(code === 0 ? `${name}: no faults` : `${name}:\n${output}`);
    if (code !== 0) faults += 1;
  }
  return faults === 0 ? 0 : 1;
});
