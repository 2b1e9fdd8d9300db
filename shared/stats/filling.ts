/** Cells that are fetched when they are first needed. Whoever reads cells `from` to before `to` asks for them before. */
export type Filling = {
  /** Whether all cells are there, so that nobody needs to ask. */
  readonly done: boolean;
  need(from: number, to: number): void;
};

/** Of cells that were there from the beginning. */
export const FILLED: Filling = { done: true, need: () => undefined };
