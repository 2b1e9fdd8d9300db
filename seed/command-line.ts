/**
 * The command line with the demo's world beside it, so that `evaluate --demo` can hold the casebook against what is known to be
 * true there. It starts here because `server` never reaches `seed`.
 */
import { runCommandLine } from '../server/cli/command-line';

await runCommandLine({ demoWorld: async () => (await import('./simulate/known-demo-world')).knownDemoWorld });
