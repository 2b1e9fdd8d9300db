/** The pin after a numbered one: `9` gives `10`, `A9` gives `A10`; the empty text for a pin that has a name alone. */
export function nextPin(pin: string): string {
  const [, before = '', number] = /^(.*?)(\d{1,4})$/.exec(pin.trim()) ?? [];
  return number === undefined ? '' : `${before}${Number(number) + 1}`;
}
