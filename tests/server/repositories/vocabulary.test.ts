import { describe, expect, it } from 'vitest';
import { findCatalogue, saveCatalogue } from '../../../server/repositories/catalogue-repository';
import { loadVocabulary } from '../../../server/repositories/load-vocabulary';
import { saveVocabulary } from '../../../server/repositories/save-vocabulary';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCatalogue } from '../fixtures/small-catalogue';
import { smallVocabulary } from '../fixtures/small-vocabulary';

describe('saveVocabulary', () => {
  it('stores everything that loadVocabulary gives back, in the same order', async () => {
    const { db } = testDatabase();
    await saveVocabulary(db, smallVocabulary);
    expect(await loadVocabulary(db)).toEqual(smallVocabulary);
  });

  it('may run again over cases that name its entries, and takes over what has changed', async () => {
    const { db } = testDatabase();
    const step = {
      kind: 'check',
      check: 'clock-at-processor',
      outcome: 'absent',
      designator: null,
      value: null,
      unit: null,
    } as const;
    await fillDatabase(db, [plainCase(1, { steps: [step] })]);
    const changed = structuredClone(smallVocabulary);
    const check = changed.checks.find((c) => c.slug === 'clock-at-processor');
    if (!check) throw new Error('The small vocabulary has lost its clock check.');
    check.label = 'Clock at the processor pin';
    check.outcomes = [...check.outcomes].reverse();
    check.synonyms = ['cpu clock'];
    await saveVocabulary(db, changed);
    expect(await loadVocabulary(db)).toEqual(changed);
  });
});

describe('saveCatalogue', () => {
  it('stores everything that findCatalogue gives back, also when it runs again', async () => {
    const { db } = testDatabase();
    await saveVocabulary(db, smallVocabulary);
    await saveCatalogue(db, smallCatalogue);
    await saveCatalogue(db, smallCatalogue);
    expect(await findCatalogue(db)).toEqual(smallCatalogue);
  });

  it('refuses a part of a role that the vocabulary lacks', async () => {
    const { db } = testDatabase();
    await expect(saveCatalogue(db, smallCatalogue)).rejects.toThrow(/foreign key/i);
  });
});

describe('findCatalogue', () => {
  it('is null where no device is stored', async () => {
    const { db } = testDatabase();
    expect(await findCatalogue(db)).toBeNull();
  });
});
