/**
 * A fault model of one board, as plain numbers. A *way of failing* ("way") is one manner in which a cause shows:
 * it is the hidden variable that makes symptoms and checks go together. Given the cause and the way, symptoms and checks
 * are independent of each other; a fix depends on the cause, the way and on whether the part fitted was good.
 */
export type BoardModel = {
  readonly board: string;
  readonly causes: readonly string[];
  /** P(cause), in the order of `causes`; sums to 1. */
  readonly prior: Float64Array;
  /** Per way: index of its cause, and P(way | cause). */
  readonly wayCause: Int32Array;
  readonly wayShare: Float64Array;
  readonly symptoms: ReadonlyMap<string, SymptomModel>;
  readonly checks: ReadonlyMap<string, CheckModel>;
  readonly fixes: ReadonlyMap<string, FixModel>;
};

export type SymptomModel = {
  /** P(present | way). */
  readonly present: Float64Array;
  /** Symptoms that, present, make this one impossible to observe; whatever hides those hides it too. */
  readonly hiddenBy: readonly string[];
};

export type CheckModel = {
  readonly outcomes: readonly string[];
  /** P(outcome | way): way-major, `outcomes.length` numbers per way. */
  readonly table: Float64Array;
};

export type FixModel = {
  /** P(the part fitted is itself bad, or the work was not done well). */
  readonly badPart: number;
  /** P(result | way, part good) and P(result | way, part bad): way-major, one number per result in the schema's order. */
  readonly good: Float64Array;
  readonly bad: Float64Array;
};

/** Number of ways of failing of a board's model. */
export function wayCount(model: BoardModel): number {
  return model.wayCause.length;
}

/** P(way) before anything is known, per way; sums to 1. */
export function wayPrior(model: BoardModel): Float64Array {
  return model.wayShare.map((share, way) => share * (model.prior[model.wayCause[way] as number] as number));
}
