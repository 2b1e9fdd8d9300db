import type { DeviceCatalogue } from '../../../shared/schemas/device';
import type { Vocabulary } from '../../../shared/schemas/vocabulary';

/** How large the generated world is. */
export const BOARDS = 60;
export const CAUSES = 300;
export const SYMPTOMS = 120;
export const CHECKS = 200;
export const FIXES = 150;
export const ROLES = 60;
const MODELS = 30;
const MAKERS = 6;

const CATEGORIES = ['home-computer', 'console'] as const;
const ADJECTIVES = ['dull', 'grey', 'striped', 'rolling', 'torn', 'faint', 'noisy', 'frozen', 'warm', 'shifted', 'doubled', 'dark'];
const NOUNS = ['picture', 'border', 'sound', 'cursor', 'colour', 'line', 'text', 'sprite', 'reset', 'light'];

const number = (i: number) => String(i).padStart(3, '0');
const meaning = (what: string) => `Invented for measuring: ${what}.`;

/** A vocabulary of the size that the figures are asked for; its words are nobody's. */
export function generatedVocabulary(): Vocabulary {
  const roles = Array.from({ length: ROLES }, (_, i) => ({
    slug: `role-${number(i)}`,
    label: `part ${number(i)}`,
    meaning: meaning('a part'),
    synonyms: [],
    outside: false,
  }));
  const categories = [...CATEGORIES];
  return {
    roles,
    symptoms: Array.from({ length: SYMPTOMS }, (_, i) => ({
      slug: `symptom-${number(i)}`,
      label: `${ADJECTIVES[i % 12]} ${NOUNS[Math.floor(i / 12)]}`,
      meaning: meaning('a symptom'),
      synonyms: [],
      area: 'video' as const,
      absentPhrases: [],
      categories,
      hiddenBy: [],
    })),
    checks: Array.from({ length: CHECKS }, (_, i) => ({
      slug: `check-${number(i)}`,
      label: `level at part ${number(i % ROLES)} point ${Math.floor(i / ROLES)}`,
      meaning: meaning('a check'),
      synonyms: [],
      area: 'buses' as const,
      howTo: 'Invented for measuring: probe the point and see what it does.',
      targetRole: `role-${number(i % ROLES)}`,
      instruments: ['logic-probe' as const],
      needs: [],
      stage: (i % 4) as 0 | 1 | 2 | 3,
      minutes: 2 + (i % 9),
      cautions: [],
      outcomes: ['pulsing', 'stuck', 'floating'].map((slug) => ({ slug, label: slug, synonyms: [] })),
      workingOutcome: 'pulsing',
      rule: null,
      prerequisites: [],
      risk: 0 as const,
      categories,
    })),
    causes: Array.from({ length: CAUSES }, (_, i) => ({
      slug: `cause-${number(i)}`,
      label: `part ${number(i % ROLES)} at fault, kind ${Math.floor(i / ROLES)}`,
      meaning: meaning('a cause'),
      synonyms: [],
      role: `role-${number(i % ROLES)}`,
      mode: `kind ${Math.floor(i / ROLES)}`,
      usualProof: 'Invented for measuring: by another part.',
      categories,
    })),
    fixes: Array.from({ length: FIXES }, (_, i) => ({
      slug: `fix-${number(i)}`,
      label: `Renew part ${number(i % ROLES)}, way ${Math.floor(i / ROLES)}`,
      meaning: meaning('a fix'),
      synonyms: [],
      action: 'replace' as const,
      role: `role-${number(i % ROLES)}`,
      howTo: 'Invented for measuring: take the old one out, put a new one in.',
      first: 'Switch it off.',
      minutes: 20,
      partCostCents: { low: 100, high: 900 },
      stage: 3 as const,
      instruments: ['soldering-iron' as const],
      needs: [],
      cautions: [],
      addresses: Array.from({ length: CAUSES / ROLES }, (_, kind) => `cause-${number((i % ROLES) + kind * ROLES)}`),
      risk: 0 as const,
      categories,
    })),
  };
}

/** Two boards to a model, five models to a maker; each part comes in four kinds, so that boards share parts. */
export function generatedCatalogue(): DeviceCatalogue {
  return {
    models: Array.from({ length: MODELS }, (_, m) => ({
      slug: `model-${number(m)}`,
      name: `Generated ${number(m)}`,
      maker: { slug: `maker-${m % MAKERS}`, name: `Maker ${m % MAKERS}` },
      category: CATEGORIES[m % 2] as (typeof CATEGORIES)[number],
      summary: meaning('a model'),
      synonyms: [],
      boards: [0, 1].map((b) => ({
        slug: boardSlug(m * 2 + b),
        revision: 'AB'[b] as string,
        summary: meaning('a board'),
        parts: Array.from({ length: ROLES }, (_, r) => ({
          designator: `U${r + 1}`,
          role: `role-${number(r)}`,
          partNumber: `P${r}-${(m * 2 + b + r) % 4}`,
          package: 'DIP' as const,
          pins: 16,
          pinNames: [],
        })),
        impossibleChecks: [],
      })),
    })),
  };
}

/** Slug of the nth board. */
export function boardSlug(n: number): string {
  return `board-${number(n)}`;
}
