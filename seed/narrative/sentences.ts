import { pick, shuffled } from '../random';
import { expand, joined, sentence } from './expand';
import type { CheckStep, FixStep, Story } from './story';
import { attemptDone, causeNoun, checkNoun, outcomeWords, resultWords, symptomClause, symptomNote } from './words';

/** Whether a clause has a subject and a verb of its own, so that it can follow "because" or "that". */
const WHOLE =
  /^(it|you|there|everything|cartridges|tapes|discs|coins|inputs|buttons|programs|letters|values|power (came|led)|stripes|retrace|every|one \w+ (was|repeated|did)|a (tap|set)|(the|its|part of the|nothing|somebody|several|pressing|flicked|volume) .*(was|were|did|came|had|stuck|rolled|wobbled|drifted|grew|ran|crackled|flashed|stayed|started|buzzed|ticked|ground|moved|could|felt|complained|collapsed|ended|said|made|stopped))\b/;

/** Ways to begin that lead into a whole clause. */
const LEAD_IN =
  '{Got it cheap because <a>|Complaint was that <a>|For some time now <a>|Swapped it for some spares, knowing that <a>|Worked last time it was used, then one day <a>|When it got here <a>|The first thing I noticed: <a>|Out of the attic, and <a>|The owner said that <a>|All I knew was that <a>|A while ago <a>|It was fine for years until <a>|Put it on the bench since <a>|I took this one on although <a>|As long as I have had it <a>|After a move <a>|Started with a small thing: <a>|From one day to the next <a>}';

/** Ways to begin that take any clause. */
const LABEL =
  '{Complaint: <a>|On the bench: <a>|What I saw: <a>|The story with this <t>: <a>|Bought as "not working": <a>|"<A>", it said on the box|Same thing every time I tried: <a>|Another <t>, another fault. <A>|Rescued this <t> from a skip. <A>|This <t>: <a>|Somebody had been in it before. <A>|A <t> that had been in storage for years; <a>|State on arrival: <a>|Bad news first: <a>|<A>, and that on a <t> that looked like new|Spare <t>, never tested until now. <A>|Not mine, a friend brought it: <a>|Found at the bottom of a box. <A>|<A>. Familiar?|Hello all. <A>}';

/** What was wrong, as prose. */
export function tellTrouble({ random, lexicon, present, absent, thing }: Story): string {
  const clauses = present.map((slug) => symptomClause(random, slug, lexicon));
  const [first = 'it did not work as it should', ...more] = clauses;
  const named = thing === 'one' ? 'unit' : thing;
  const manner = random();
  const frame = manner < 0.45 ? '<A>' : manner < 0.72 && WHOLE.test(first) ? LEAD_IN : LABEL;
  const opening = expand(random, frame, { a: first, A: sentence(first), t: named });
  const rest = more.map((clause) =>
    expand(
      random,
      WHOLE.test(clause)
        ? '{Also <c>|On top of that <c>|<C>|<C>|And <c>|Besides, <c>|Oh, and <c>|Looking closer, <c>|Then <c> as well|To make it worse, <c>|A bit later I saw that <c>}'
        : '{<C>|<C>|Plus: <c>|Also: <c>|Oh, and <c>|<C>, too|Second symptom: <c>}',
      { c: clause, C: sentence(clause) },
    ),
  );
  const not = absent
    .filter(() => random() < 0.55)
    .map((slug) =>
      expand(
        random,
        '{No sign of "<n>"|It was not a case of "<n>", I looked for that|"<n>": no, not here|What it did not show: <n>|No "<n>", by the way|Not seen: <n>|I looked for "<n>" and did not find it|Unlike others, no "<n>"}',
        { n: symptomNote(random, slug, lexicon) },
      ),
    );
  return [opening, ...rest, ...not].map((text) => `${sentence(text)}.`).join(' ');
}

/** One check, as prose. */
export function tellCheck({ random, lexicon }: Story, step: CheckStep): string {
  const check = lexicon.check(step.check);
  const slots = { n: checkNoun(random, check), o: outcomeWords(random, step, check), d: step.designator ?? '' };
  const trial = check.outcomes.some((outcome) => outcome.slug === 'cured');
  const where = step.designator !== null && !trial ? ' {(<d>)|, measured at <d>,|}' : '';
  const frames = trial
    ? '{tried <n>: <o>|with <n>, <o>|<n>, <o>|next <n>, which gave <o>|<n> as a test: <o>|gave <n> a go, result: <o>}'
    : `{<n>${where}: <o>|checked <n>${where}, <o>|<n> came out as <o>|looked at <n>, and it was <o>|<n>? <o>|<o> on <n>|for <n> I got <o>|<n> - <o>|next was <n>${where}: <o>|<n> read <o>|then <n>: <o>|a look at <n> gave <o>}`;
  return expand(random, frames, slots);
}

/** Checks that found nothing, in one breath. */
export function tellFine(story: Story, steps: readonly CheckStep[]): string {
  const { random, lexicon } = story;
  if (steps.length === 0) return '';
  const short = steps.map((step) => {
    const check = lexicon.check(step.check);
    return `${checkNoun(random, check)} ${step.value === null && random() < 0.5 ? '' : `(${outcomeWords(random, step, check)})`}`.trim();
  });
  const allNamed = steps.map((step) => tellCheck(story, step));
  return random() < 0.6
    ? expand(
        random,
        '{First I went through the easy things|Nothing odd about|Ruled out|Looked fine|As expected|All as it should be|The usual round first}{: | - |: }<l>.',
        { l: joined(short) },
      )
    : `${sentence(allNamed.join(pick(random, ['; ', ', ', '. '])))}.`;
}

/** A fix that did not cure. */
export function tellFailed({ random, lexicon }: Story, step: FixStep): string {
  const done = attemptDone(random, step, lexicon);
  const slots = { f: done, F: sentence(done), r: resultWords(random, step.result) };
  return expand(
    random,
    '{<F>: <r>.|<F>. {Well, |}<r>.|I <f>, <r>.|First I <f> - <r>.|My first guess was wrong: <f>, <r>.|<F>, with some hope. <r>, of course.|An evening later I had <f>. <r>.|<F> because that is what everyone says. <r>.|Went ahead and <f>; <r>.|Next try: <f>. Result: <r>.|Then I <f>. <r>.|Thought I had it and <f>: <r>.}',
    slots,
  ).replace(/([.!?] )([a-z])/g, (_, stop: string, letter: string) => stop + letter.toUpperCase());
}

/** The fix that cured. */
export function tellCure({ random, lexicon, thing }: Story, step: FixStep): string {
  const done = attemptDone(random, step, lexicon);
  const iron = step.fixes.some(({ fix }) => lexicon.fix(fix).stage >= 3);
  const told = expand(
    random,
    '{<F> and <r>.|<F>. <R>.|<F>. <R>!|<F>, <r>.|In the end I <f>, <r>.|So: <f>. <R>!|Finally <f> - <r>.|Then <f>. <R>.|What cured it: <f>.|I <f> and switched on: <r>.|<F>, crossed my fingers, <r>.|<F>, tested, <r>.|I <f>. <R>.|Cure: <f>.|That left one thing, so I <f>. <R>.|Out of parts bins and into the <t>: <f>, <r>.|<F>; <r>.|After I <f>: <r>.|Fix: <f>. <R>.|<R> after I <f>.|Took the iron and <f>... <r>.|Nothing to lose, so I <f>. <R>.}',
    {
      t: thing === 'one' ? 'unit' : thing,
      f: done,
      F: sentence(done),
      r: resultWords(random, 'cured'),
      R: sentence(resultWords(random, 'cured')),
    },
  );
  return iron ? told : told.replace('Took the iron and', 'Sat down and');
}

/** What it was. */
export function tellCause({ random, lexicon, content, cause, thing }: Story): string {
  if (!cause)
    return expand(
      random,
      '{I never found out what it was.|Cause unknown.|No idea what it is.|Still in the dark about the cause.|I could not find it.|Cause not found, if anyone has an idea I am listening.|Beats me.}',
    );
  if (cause.slug === 'no-fault-found') {
    return expand(
      random,
      `{Nothing wrong with it that I could find.|No fault found. It just works here.|On my bench the ${thing} behaved the whole time.|Could not make it fail. NFF.|I suspect it was never the ${thing}.|Works. Always did, as far as I can tell.}`,
    );
  }
  const noun = causeNoun(random, cause, lexicon);
  const [first] = content.causes;
  const at = first && first.designators.length > 0 ? ` {(<d>)|, <d>|at <d>|: <d>}` : '';
  const sure =
    content.proof === 'suspected'
      ? '{I suspect <c><at>, without proof.|My guess is <c><at>.|Probably <c><at>, not proved.|<C><at>, I think.|If I had to bet: <c><at>.}'
      : '{It was <c><at>.|Cause: <c><at>.|So it turned out to be <c><at>.|<C><at>, plain and simple.|The culprit was <c><at>.|<C><at>. Who would have thought.|Real cause: <c><at>.|What had failed was <c><at>.|Diagnosis: <c><at>.|<C><at>.|<C><at>.|<C><at>, then.|Blame <c><at>.|In short: <c><at>.|The villain: <c><at>.|All of that from <c><at>.|Down to <c><at>.|Found it: <c><at>.|<C><at> was behind it.|Root of it all: <c><at>.|Mystery solved, <c><at>.|Classic <c><at>, I am told.|Ended up as <c><at>.|That makes it <c><at>.|It came down to <c><at>.|Fault traced to <c><at>.}';
  return expand(random, sure.replaceAll('<at>', at), { c: noun, C: sentence(noun), d: first?.designators.join(', ') ?? '' });
}

/** How it ended where it was not solved, or what was tested afterwards. */
export function tellEnd({ random, lexicon, content, thing }: Story): string {
  if (content.outcome === 'unresolved')
    return expand(
      random,
      `{Shelved for now.|Gave up on it.|Back on the shelf until I have a better idea.|I am out of ideas.|It waits in a drawer.|Not solved.|Passing the ${thing} on to somebody with more patience.}`,
    );
  if (content.outcome === 'not-economical')
    return expand(
      random,
      '{Not worth the parts it would take.|Kept for spares.|Too far gone to be worth it.|It will live on as a donor.|I stopped there, the work costs more than another one.|Became a parts machine.}',
    );
  if (content.outcome === 'partly-resolved')
    return expand(
      random,
      '{Good enough for now.|Usable, not perfect.|Left it at that.|Lives with a small flaw.|The rest is for another day.|Better than it was, and I leave it there.}',
    );
  const again = content.afterRepairChecks.map((slug) => checkNoun(random, lexicon.check(slug)));
  const tests =
    again.length > 0
      ? expand(
          random,
          '{Checked again afterwards: <l>.|Second look at <l>, all right now.|And <l>? Good now.|Repeated: <l>. Good.|Went over <l> once more, fine.|Afterwards <l> looked right.|Measured <l> again to be sure.|}',
          { l: joined(again) },
        )
      : '';
  const minutes = content.soakMinutes;
  const soak =
    minutes === null
      ? ''
      : expand(
          random,
          `{Ran it for <m> without trouble.|<M> of soak test, no problem.|Left on for <m>, fine.|Has been running for <m> now.|Soaked it <m>.|Still good after <m>.|Let it play for <m>.}`,
          {
            m: minutes % 60 === 0 ? (minutes === 60 ? 'an hour' : `${minutes / 60} hours`) : `${minutes} minutes`,
            M: minutes % 60 === 0 ? (minutes === 60 ? 'One hour' : `${minutes / 60} hours`) : `${minutes} minutes`,
          },
        );
  return shuffled(
    random,
    [tests, soak].filter((text) => text !== ''),
  ).join(' ');
}
