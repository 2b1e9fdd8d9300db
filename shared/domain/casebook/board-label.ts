/** A board revision in words: `Quellbrook 8, revision B`. */
export function boardLabel(model: { name: string }, board: { revision: string }): string {
  return `${model.name}, revision ${board.revision}`;
}
