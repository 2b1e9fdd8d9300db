import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vocabulary } from '../../../seed/vocabulary';
import { applyEdits } from '../../../shared/domain/words/apply-edits';
import { judgeChange } from '../../../shared/domain/words/judge-change';
import { nearestWords } from '../../../shared/domain/words/nearest-words';
import { renameContent, renameQuestion } from '../../../shared/domain/words/rename-content';
import { aliasesOf } from '../../../shared/domain/words/word-aliases';
import { findWord, withoutRetired, wordsOfKind } from '../../../shared/domain/words/word-lists';
import { questionSchema } from '../../../shared/schemas/question';
import { type Fix, type Symptom, vocabularySchema } from '../../../shared/schemas/vocabulary';
import { WORD_KINDS, type WordEdit, wordEditSchema } from '../../../shared/schemas/word-edit';
import { smallCases } from '../../server/fixtures/small-cases';

const merge = { act: 'merge', kind: 'symptom', from: 'grey-screen', into: 'black-screen' } as const;

/** Any change of the shipped vocabulary that is allowed on it. */
const anyEdit: fc.Arbitrary<WordEdit> = fc.constantFrom(...WORD_KINDS).chain((kind) => {
  const slug = fc.constantFrom(...wordsOfKind(vocabulary, kind).map((word) => word.slug));
  const change = fc.oneof(
    fc.record({ act: fc.constant('merge' as const), kind: fc.constant(kind), from: slug, into: slug }),
    fc.record({ act: fc.constant('retire' as const), kind: fc.constant(kind), slug }),
    fc.record({
      act: fc.constant('reword' as const),
      kind: fc.constant(kind),
      slug,
      label: fc.constant('Said anew'),
      meaning: fc.constant('It is said in other words.'),
    }),
    fc.record({
      act: fc.constant('synonyms' as const),
      kind: fc.constant(kind),
      slug,
      add: fc.constant<string[]>(['like a beehive']),
      remove: fc.constant<string[]>([]),
    }),
    fc.record({
      act: fc.constant('add' as const),
      kind: fc.constant(kind),
      like: slug,
      label: fc.constant('Something new'),
      meaning: fc.constant('It was never seen before.'),
      synonyms: fc.constant<string[]>([]),
    }),
  );
  return change
    .map((asked) => judgeChange(vocabulary, asked))
    .filter((judged) => 'edit' in judged)
    .map((judged) => (judged as { edit: WordEdit }).edit);
});

describe('the vocabulary with changes on top', () => {
  it('leaves what it is made from as it was, so that a change left out is as if it had never been', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 5 }), anyEdit, (before, undone) => {
        const without = applyEdits(vocabulary, before);
        applyEdits(vocabulary, [...before, undone]);
        expect(applyEdits(vocabulary, before)).toEqual(without);
        expect(applyEdits(vocabulary, [])).toEqual(vocabulary);
      }),
      { numRuns: 30 },
    );
  });

  it('fits its schema, refers to nothing that is gone, and is kept as JSON without loss', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 6 }), (edits) => {
        const changed = vocabularySchema.parse(applyEdits(vocabulary, edits));
        expect(edits.map((edit) => wordEditSchema.parse(JSON.parse(JSON.stringify(edit))))).toEqual(edits);
        const slugs = Object.fromEntries(
          WORD_KINDS.map((kind) => [kind, new Set(wordsOfKind(changed, kind).map((w) => w.slug))]),
        );
        for (const kind of WORD_KINDS) expect(slugs[kind]?.size).toBe(wordsOfKind(changed, kind).length);
        for (const symptom of changed.symptoms) expect(symptom.hiddenBy.filter((slug) => !slugs.symptom?.has(slug))).toEqual([]);
        for (const fix of changed.fixes) expect(fix.addresses.filter((slug) => !slugs.cause?.has(slug))).toEqual([]);
        for (const check of changed.checks) expect(check.prerequisites.filter((slug) => !slugs.check?.has(slug))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('has one entry for two that were merged, with the names of both', () => {
    const changed = applyEdits(vocabulary, [merge]);
    const [gone, stayed] = [findWord(vocabulary, 'symptom', merge.from), findWord(changed, 'symptom', merge.into) as Symptom];
    expect(findWord(changed, 'symptom', merge.from)).toBeUndefined();
    const names = stayed.synonyms.map((name) => name.toLowerCase());
    for (const name of [gone?.label ?? '', ...(gone?.synonyms ?? [])]) expect(names).toContain(name.toLowerCase());
    expect(changed.symptoms.flatMap((symptom) => symptom.hiddenBy)).not.toContain(merge.from);
    expect(stayed.hiddenBy).not.toContain(merge.into);
  });

  it('keeps a retired entry for the cases that have it, and offers it to nobody', () => {
    const changed = applyEdits(vocabulary, [{ act: 'retire', kind: 'symptom', slug: merge.from }]);
    expect(findWord(changed, 'symptom', merge.from)?.retired).toBe(true);
    expect(findWord(withoutRetired(changed), 'symptom', merge.from)).toBeUndefined();
    expect(nearestWords(changed, 'symptom', 'grey screen').map(({ slug }) => slug)).not.toContain(merge.from);
  });

  it('goes by the old label too after it was reworded', () => {
    const before = findWord(vocabulary, 'symptom', merge.from);
    const changed = applyEdits(vocabulary, [
      { act: 'reword', kind: 'symptom', slug: merge.from, label: 'Plain grey', meaning: 'Nothing but grey.' },
    ]);
    const word = findWord(changed, 'symptom', merge.from);
    expect(word?.label).toBe('Plain grey');
    expect(word?.synonyms.map((name) => name.toLowerCase())).toContain(before?.label.toLowerCase());
  });
});

describe('judgeChange', () => {
  it('makes a new entry from a similar one, under a slug of its own', () => {
    const judged = judgeChange(vocabulary, {
      act: 'add',
      kind: 'fix',
      like: 'replace-crystal',
      label: 'Re-cut  the Crystal!',
      meaning: 'Grind it anew.',
      synonyms: ['regrind'],
    });
    const { edit } = judged as { edit: Extract<WordEdit, { act: 'add' }> };
    const model = findWord(vocabulary, 'fix', 'replace-crystal') as Fix;
    expect(edit.entry).toEqual({
      ...model,
      slug: 're-cut-the-crystal',
      label: 'Re-cut  the Crystal!',
      meaning: 'Grind it anew.',
      synonyms: ['regrind'],
    });
  });

  it.each([
    [
      'a name that another entry goes by',
      { act: 'synonyms', kind: 'symptom', slug: 'black-screen', add: ['GREY SCREEN'], remove: [] },
      'synonyms',
    ],
    ['a merge of an entry into itself', { act: 'merge', kind: 'symptom', from: 'grey-screen', into: 'grey-screen' }, 'into'],
    ['a merge into an entry that is not there', { act: 'merge', kind: 'symptom', from: 'grey-screen', into: 'no-such' }, 'into'],
    [
      'a merge of checks whose outcomes differ',
      { act: 'merge', kind: 'check', from: 'clock-at-processor', into: 'supply-apart' },
      'into',
    ],
    [
      'a rewording that changes nothing',
      {
        act: 'reword',
        kind: 'symptom',
        slug: 'grey-screen',
        label: findWord(vocabulary, 'symptom', 'grey-screen')?.label ?? '',
        meaning: findWord(vocabulary, 'symptom', 'grey-screen')?.meaning ?? '',
      },
      'label',
    ],
    [
      'a label without letters',
      { act: 'add', kind: 'symptom', like: 'grey-screen', label: '!!!', meaning: 'Nobody knows what.', synonyms: [] },
      'label',
    ],
  ] as const)('refuses %s, at its field', (_what, change, field) => {
    const judged = judgeChange(vocabulary, change as never);
    expect('fields' in judged && Object.keys(judged.fields)).toEqual([field]);
  });
});

describe('aliases', () => {
  const into = (from: string, to: string): WordEdit => ({ act: 'merge', kind: 'symptom', from, into: to });

  it('lead to the last of a row of merges, and never in a circle', () => {
    expect([...aliasesOf([into('a', 'b'), into('b', 'c')]).symptom]).toEqual([
      ['a', 'c'],
      ['b', 'c'],
    ]);
    expect([...aliasesOf([into('a', 'b'), into('b', 'a')]).symptom]).toEqual([['a', 'b']]);
  });

  it('give a case the words of now: both symptoms are one, present where either was', () => {
    const [record] = smallCases(1);
    const content = {
      ...(record as NonNullable<typeof record>).content,
      symptoms: [
        { symptom: 'a', present: false },
        { symptom: 'x', present: true },
        { symptom: 'b', present: true },
      ],
    };
    expect(renameContent(aliasesOf([into('a', 'b')]), content).symptoms).toEqual([
      { symptom: 'b', present: true },
      { symptom: 'x', present: true },
    ]);
    expect(renameContent(aliasesOf([into('q', 'r')]), content)).toBe(content);
  });

  it('give an old address the words of now', () => {
    const question = questionSchema.parse({
      set: [{ kind: 'symptom', id: 'a', value: 'present' }],
      without: [{ kind: 'symptom', id: 'a' }],
    });
    const renamed = renameQuestion(aliasesOf([into('a', 'b')]), question);
    expect([renamed.set[0]?.id, renamed.without[0]?.id]).toEqual(['b', 'b']);
  });
});

describe('nearestWords', () => {
  it('finds the entry that goes by just this name, and one that is near', () => {
    const [grey] = nearestWords(vocabulary, 'symptom', 'Grey Screen');
    expect(grey).toMatchObject({ slug: 'grey-screen', similarity: 1 });
    expect(nearestWords(vocabulary, 'symptom', 'gray screan').map(({ slug }) => slug)).toContain('grey-screen');
    expect(nearestWords(vocabulary, 'symptom', 'zzzz qqqq xxxx')).toEqual([]);
  });
});
