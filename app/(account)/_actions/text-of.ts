/** A text field of a form as it was typed; '' where it is missing, or a file. */
export function textOf(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === 'string' ? value : '';
}
