import { describe, expect, it } from 'vitest';
import { settingsFromDocument, settingsToDocument } from '../../../shared/domain/casebook/settings-document';
import { createCoding } from '../../../shared/domain/coding/coding';
import { defaultSettings } from '../../../shared/stats/settings';
import { smallCatalogue } from '../../server/fixtures/small-catalogue';
import { smallVocabulary } from '../../server/fixtures/small-vocabulary';

const coding = createCoding(smallVocabulary, smallCatalogue);
const fitted = { ...defaultSettings(coding.layout), mixing: 0.01, weights: coding.observables.map((_, i) => 0.1 + i / 100) };

describe('settingsFromDocument', () => {
  it('gives back what settingsToDocument wrote', () => {
    expect(settingsFromDocument(coding, settingsToDocument(coding, fitted))).toEqual(fitted);
  });

  it('keeps what was fitted to each observable when the vocabulary has grown, and takes the default for the new one', () => {
    const first = smallVocabulary.symptoms[0];
    if (!first) throw new Error('The small vocabulary has no symptom.');
    const grown = {
      ...smallVocabulary,
      symptoms: [{ ...first, slug: 'smells-burnt', label: 'Smells burnt' }, ...smallVocabulary.symptoms],
    };
    const now = createCoding(grown, smallCatalogue);
    const settings = settingsFromDocument(now, settingsToDocument(coding, fitted));
    expect(settings?.weights).toEqual([defaultSettings(now.layout).weights[0], ...fitted.weights]);
    expect(settings?.mixing).toBe(0.01);
  });

  it.each([
    '',
    '{',
    'null',
    '{"settings":{"version":-1},"observables":[]}',
    '{"settings":{"version":1,"weights":["x"],"concentrationFactors":[]},"observables":[]}',
  ])('is null for a document that is damaged or of another version: %s', (document) => {
    expect(settingsFromDocument(coding, document)).toBeNull();
  });
});
