/**
 * Words that say nothing about a case: passed over in a search unless nothing else was typed. "No" and "not" are not
 * among them: no sound is a symptom.
 */
export const STOP_WORDS: ReadonlySet<string> = new Set(
  `a an the this that these those there it its i my me you your we our he she they is are was were be been being am
  to of at in on into for from by with as and or about some any has have had thread case cases
  will would do does did wont cant dont doesnt didnt isnt wasnt`
    .trim()
    .split(/\s+/),
);
