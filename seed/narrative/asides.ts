import { pick } from '../random';
import type { Story } from './story';

const ANY: readonly string[] = [
  'Hope this saves someone an evening.',
  'Not my finest hour but it got there.',
  'As so often it was the simple thing.',
  'Measure first, buy parts later.',
  'I should have looked there first.',
  'No schematic, so I compared with what others wrote.',
  'Take pictures before you pull anything apart.',
  'The screws were a fight in themselves.',
  'Next time I start outside the case.',
  'It is always the last thing you check, because then you stop checking.',
  'Thanks to whoever wrote up something similar.',
  'Easy once you know.',
  'Patience helps more than any tool.',
  'My iron is older than the machine.',
  'Do not trust a part just because it is new.',
  'Wear glasses. I can say that now.',
  'The flux was half the success.',
  'Mind the pads, they lift if you look at them wrong.',
  'I had two faults like this before and both were something else.',
  'Worth doing properly.',
  'Somebody had been in there with a very large iron.',
  'Clean inside, which was a surprise.',
  'More dust than electronics in there.',
  'A magnifier is worth its weight in gold.',
  'One for the notebook.',
  'If yours does the same, start there.',
  'Took longer to find than to fix.',
  'Cheap fix in the end.',
  'The thing had clearly been dropped at some point.',
  'I nearly binned it.',
  'Third one of these this year on our bench.',
  'Write down what you measure, I did not and had to do it twice.',
];
const UNSOLVED: readonly string[] = [
  'Ideas welcome.',
  'If anybody has seen this, please write it up.',
  'I posted it all the same, the failed attempts may help.',
  'Sometimes they win.',
  'It beat me, this time.',
  'Will come back to it with a scope.',
];

/** A remark that carries no facts. */
export function aside({ random, content }: Story): string {
  const solved = content.outcome === 'resolved';
  return pick(random, solved || random() < 0.3 ? ANY : UNSOLVED);
}
