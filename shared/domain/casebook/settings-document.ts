import { z } from 'zod';
import { defaultSettings, type Settings, SETTINGS_VERSION } from '../../stats/settings';
import type { Coding } from '../coding/coding';

/**
 * Fitted settings as stored: the per-observable lists are named, so that a vocabulary that has grown since
 * keeps what was fitted and takes the default for what is new.
 */
const documentSchema = z.object({
  settings: z.looseObject({
    version: z.literal(SETTINGS_VERSION),
    weights: z.array(z.number().min(0)),
    concentrationFactors: z.array(z.number().positive()),
  }),
  observables: z.array(z.string()),
});

const nameOf = ({ kind, id }: { kind: string; id: string }) => `${kind} ${id}`;

/** Settings as one document. */
export function settingsToDocument(coding: Coding, settings: Settings): string {
  return JSON.stringify({ settings, observables: coding.observables.map(nameOf) });
}

/** The settings of a document, fitted to the coding as it is now; null where the document is of another version or damaged. */
export function settingsFromDocument(coding: Coding, document: string): Settings | null {
  const parsed = documentSchema.safeParse(parseJson(document));
  if (!parsed.success) return null;
  const { settings, observables } = parsed.data;
  const stored = settings as unknown as Settings;
  const defaults = defaultSettings(coding.layout);
  const place = new Map(observables.map((name, index) => [name, index]));
  const pick = (list: readonly number[], fallback: readonly number[]) =>
    coding.observables.map((o, index) => list[place.get(nameOf(o)) ?? -1] ?? (fallback[index] as number));
  return {
    ...defaults,
    ...stored,
    weights: pick(stored.weights, defaults.weights),
    concentrationFactors: pick(stored.concentrationFactors, defaults.concentrationFactors),
  };
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
