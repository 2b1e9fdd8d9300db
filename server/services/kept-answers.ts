/** Answers that stay right as long as a revision does, the least lately asked for dropped first. */
export type KeptAnswers<A> = {
  /** The kept answer, or a new one; a failed one is not kept. */
  answer(asked: { key: string; revision: number }, work: () => Promise<A>): Promise<A>;
};

/** Room for so many answers. */
export function createKeptAnswers<A>(most: number): KeptAnswers<A> {
  const answers = new Map<string, Promise<A>>();
  let current = -1;
  return {
    answer({ key, revision }, work) {
      if (revision !== current) answers.clear();
      current = revision;
      const known = answers.get(key);
      // A map lists its entries in the order in which they were put: the first is the one not asked for longest.
      answers.delete(key);
      const answer = known ?? work();
      answers.set(key, answer);
      const [oldest] = answers.keys();
      if (answers.size > most && oldest !== undefined) answers.delete(oldest);
      if (known === undefined) {
        answer.catch(() => {
          if (answers.get(key) === answer) answers.delete(key);
        });
      }
      return answer;
    },
  };
}
