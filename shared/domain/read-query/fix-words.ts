import type { Fix } from '../../schemas/vocabulary';
import type { FixResult } from '../../schemas/case';

export type ActionTerm = '!replace' | '!reflow' | '!clean' | '!reseat' | '!adjust' | '!repair' | '!recap' | '!remove';

/** The verb by which each kind of fix is named at the bench. */
export const ACTION_TERMS: Record<Fix['action'], ActionTerm> = {
  replace: '!replace', 'swap-outside': '!replace', reflow: '!reflow', clean: '!clean', reseat: '!reseat',
  adjust: '!adjust', repair: '!repair', recap: '!recap', remove: '!remove',
};

const VERBS: Record<ActionTerm, string> = {
  '!replace': `replace replaced replacing replaces replacement replacements swap swapped swapping swaps swop swopped change changed changing renew renewed renewing
    new another different spare substitute substituted substituting sub subbed exchange exchanged fitted fit refitted donor known-good`,
  '!reflow': 'reflow reflowed reflowing resolder resoldered resoldering re-soldered retouched',
  '!clean': 'clean cleaned cleaning cleans scrub scrubbed wipe wiped wash washed deoxidise deoxidised polished polish',
  '!reseat': 'reseat reseated reseating reinsert reinserted re-inserted replugged re-plugged resocketed re-socketed unplugged refit refitted',
  '!adjust': 'adjust adjusted adjusting adjustment trim trimmed tweak tweaked tweaking align aligned aligning realign realigned set calibrate calibrated lubricate',
  '!repair': 'repair repaired repairing repairs patch patched jumper jumpered bodge bodged bridged bridge mend mended rebuild rebuilt remade fix-wire',
  '!recap': 'recap recapped recapping recaps re-cap re-capped',
  '!remove': 'remove removed removing removal removes lift lifted lifting disconnect disconnected disconnecting unplug unplugged pulled pull took-out desoldered',
};

const byVerb = new Map<string, ActionTerm[]>();
for (const [term, verbs] of Object.entries(VERBS) as [ActionTerm, string][]) {
  for (const verb of verbs.trim().split(/\s+/)) byVerb.set(verb, [...(byVerb.get(verb) ?? []), term]);
}

/** The kinds of fix that a word in normal form can name; empty for every other word. */
export function actionTermsOf(word: string): readonly ActionTerm[] {
  return byVerb.get(word) ?? [];
}

/** Every word that names a kind of fix. */
export function actionWords(): Iterable<string> {
  return byVerb.keys();
}

/** Phrases that say what a fix did. */
export const RESULT_PHRASES: Readonly<Record<FixResult, readonly string[]>> = {
  'no-change': [
    'no change', 'no changes', 'no change at all', 'no difference', 'no joy', 'no luck', 'no good', 'no effect', 'no better', 'no improvement', 'no use', 'no avail', 'no help', 'no dice',
    'no cure', 'no fix', 'no result', 'no success', 'did not help', 'not helped', 'did not fix', 'not fixed', 'did not change', 'not changed', 'did not cure', 'not cured', 'did not work', 'did not solve', 'not solved',
    'same', 'same fault', 'same problem', 'same issue', 'same thing', 'same result', 'same symptom', 'same symptoms', 'same as before', 'just the same', 'exactly the same', 'unchanged', 'nothing changed',
    'made no odds', 'no odds', 'was not it', 'not it', 'not that', 'was not that', 'not the problem', 'not the cause', 'not the culprit', 'did nothing', 'does nothing', 'nothing', 'useless', 'in vain', 'without effect', 'without success', 'without change',
    'without improvement', 'fault remains', 'fault persists', 'problem remains', 'problem persists', 'fault still there', 'still there', 'still faulty', 'still broken', 'still not working', 'still the same', 'as before', 'same again', 'still same', 'fault stays',
    'not better', 'not improved', 'did not improve', 'did not make any difference', 'no different', 'pointless', 'to no effect', 'not resolved', 'did not resolve', 'not sorted', 'not made any difference',
  ],
  cured: [
    'fixed', 'fixed it', 'cured', 'cured it', 'solved', 'solved it', 'sorted', 'sorted it', 'resolved', 'resolved it', 'works now', 'now works', 'working now', 'now working', 'works again', 'working again', 'all good now',
    'now fine', 'fine now', 'ok now', 'now ok', 'now good', 'good now', 'back to life', 'that did it', 'did it', 'did the trick', 'fault gone', 'fault cleared', 'cleared it', 'cleared the fault', 'problem gone', 'problem solved', 'brought it back', 'success',
    'back to normal', 'alive again', 'fault disappeared', 'now perfect', 'perfect now', 'cleared', 'that was it', 'that was the culprit', 'was the culprit', 'fixes it', 'fixed the problem', 'fixed the fault', 'cures it', 'it works', 'made it work', 'working perfectly', 'all working',
  ],
  partly: [
    'partly', 'partially', 'better', 'a bit better', 'slightly better', 'improved', 'some improvement', 'slight improvement', 'improvement', 'helped', 'helped a bit', 'helped a little', 'helped some', 'helps', 'partly fixed', 'partially fixed', 'partly cured', 'partial fix',
    'less often', 'improved it', 'much better', 'big improvement', 'reduced it', 'almost fixed', 'half fixed', 'better but not fixed', 'better but not cured', 'better but not perfect', 'partial improvement', 'some better',
  ],
  'symptom-changed': [
    'different fault', 'different symptom', 'different symptoms', 'fault changed', 'symptom changed', 'symptoms changed', 'changed the symptom', 'changed the symptoms', 'changed the fault', 'changed symptom', 'now different', 'different now', 'different problem',
    'new symptom', 'new fault', 'fault moved', 'fault is different', 'something else now', 'behaves differently', 'other fault now', 'changed it',
  ],
  'made-worse': ['worse', 'made it worse', 'made things worse', 'made worse', 'now worse', 'worse now', 'worse than before', 'even worse', 'got worse', 'worsened'],
};
