/**
 * Work that takes some hundredths of a second or more and says by `yield`, every millisecond or so, where it may be left for a
 * while. What comes out is the same however long it is left.
 */
export type Steps<T> = Generator<void, T>;

/** Does all steps at once. */
export function allSteps<T>(work: Steps<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
