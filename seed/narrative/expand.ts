import { pick } from '../random';
import type { Random } from '../world';

/**
 * Writes out one text of a small grammar: `{a|b|c}` is one of the choices, each as likely and any of them empty;
 * `<name>` is a slot. Choices may hold choices and slots. Throws where a brace is left open or a slot has no text.
 */
export function expand(random: Random, grammar: string, slots: Readonly<Record<string, string>> = {}): string {
  const { text } = expandUntil(random, grammar, 0);
  const filled = text.replace(/<([a-zA-Z]+)>/g, (_, name: string) => {
    const slot = slots[name];
    if (slot === undefined) throw new Error(`No text for <${name}>.`);
    return slot;
  });
  return filled
    .replace(/ {2,}/g, ' ')
    .replace(/ ([,.;:!?])/g, '$1')
    .trim();
}

/** Reads from `at` to the end of the text, or to the bar or brace that ends a choice. */
function expandUntil(random: Random, grammar: string, at: number, inChoice = false): { text: string; end: number } {
  let text = '';
  let i = at;
  while (i < grammar.length) {
    const char = grammar[i] as string;
    if (char === '{') {
      const choices: string[] = [];
      do {
        const choice = expandUntil(random, grammar, i + 1, true);
        choices.push(choice.text);
        i = choice.end;
        if (i >= grammar.length) throw new Error(`A brace is left open: ${grammar}`);
      } while (grammar[i] === '|');
      text += pick(random, choices);
      i += 1;
    } else if (inChoice && (char === '|' || char === '}')) return { text, end: i };
    else {
      text += char;
      i += 1;
    }
  }
  return { text, end: i };
}

/** First letter in upper case. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `a`, `a and b`, `a, b and c`. */
export function joined(items: readonly string[], last = 'and'): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}
