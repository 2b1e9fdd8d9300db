import type { FixResult } from '../../shared/schemas/case';
import type { Finding } from '../../shared/schemas/finding';
import { FIX_RESULT_WORDS } from './words';

/** A finding's value in words where no vocabulary is at hand: a slug read as words, a fix's result as it is said. */
export function valueWords(finding: Finding): string {
  if (finding.kind === 'fix') return FIX_RESULT_WORDS[finding.value as FixResult];
  return finding.value.replaceAll('-', ' ');
}
