import type { Finding, ReadQuery } from '../../../shared/schemas/finding';

/** One hand-written phrase with what a repairer means by it. */
export type ExpectedPhrase = { text: string; findings: Finding[]; device?: string };

export type Score = {
  phrases: number;
  expected: number;
  read: number;
  hits: number;
  /** Hits over findings read; 1 where nothing was read. */
  precision: number;
  /** Hits over findings expected; 1 where nothing was expected. */
  recall: number;
  devicesRight: number;
  devices: number;
  misses: { text: string; missing: string[]; wrong: string[] }[];
};

/** Scores a reader on phrases. A hit needs kind, id and value right; an ambiguous or unread span is no reading. */
export function scorePhrases(phrases: readonly ExpectedPhrase[], read: (text: string) => ReadQuery): Score {
  const score: Score = {
    phrases: phrases.length,
    expected: 0,
    read: 0,
    hits: 0,
    precision: 1,
    recall: 1,
    devices: 0,
    devicesRight: 0,
    misses: [],
  };
  for (const phrase of phrases) {
    const result = read(phrase.text);
    const wanted = new Set(phrase.findings.map(keyOf));
    const got = new Set(result.findings.map(keyOf));
    const hits = [...got].filter((k) => wanted.has(k)).length;
    score.expected += wanted.size;
    score.read += got.size;
    score.hits += hits;
    if (phrase.device !== undefined) {
      score.devices += 1;
      if (result.device === phrase.device) score.devicesRight += 1;
    }
    const missing = [...wanted].filter((k) => !got.has(k));
    const wrong = [...got].filter((k) => !wanted.has(k));
    if (missing.length + wrong.length > 0) score.misses.push({ text: phrase.text, missing, wrong });
  }
  score.precision = score.read === 0 ? 1 : score.hits / score.read;
  score.recall = score.expected === 0 ? 1 : score.hits / score.expected;
  return score;
}

function keyOf(finding: Finding): string {
  return `${finding.kind} ${finding.id} ${finding.value}`;
}
