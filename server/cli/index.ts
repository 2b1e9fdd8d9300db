import { runCommandLine } from './command-line';

await runCommandLine();
