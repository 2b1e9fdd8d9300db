import { describe, expect, it } from 'vitest';
import { type Check, type NumberRule, vocabularySchema } from '../../shared/schemas/vocabulary';
import { vocabulary } from '../../seed/vocabulary/index';

const { roles, symptoms, checks, causes, fixes } = vocabulary;
const slugs = (entries: readonly { slug: string }[]) => new Set(entries.map((entry) => entry.slug));
const checkOf = (slug: string): Check => {
  const found = checks.find((check) => check.slug === slug);
  if (!found) throw new Error(`no check ${slug}`);
  return found;
};

/** Words that stand for one entry, label included, lower case. */
const wordsOf = (entry: { label: string; synonyms: readonly string[] }) =>
  new Set([entry.label, ...entry.synonyms].map((word) => word.toLowerCase()));

/** Words that more than one key claims. */
function shared(claims: readonly (readonly [key: string, words: Iterable<string>])[]): Map<string, string[]> {
  const owners = new Map<string, string[]>();
  for (const [key, words] of claims) for (const word of words) owners.set(word, [...(owners.get(word) ?? []), key]);
  return new Map([...owners].filter(([, keys]) => keys.length > 1));
}

/** The first loop in a graph of slugs, or null. */
function loopIn(edges: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  const visit = (slug: string, path: string[]): string[] | null => {
    if (path.includes(slug)) return [...path, slug];
    if (done.has(slug)) return null;
    for (const next of edges.get(slug) ?? []) {
      const loop = visit(next, [...path, slug]);
      if (loop) return loop;
    }
    done.add(slug);
    return null;
  };
  for (const slug of edges.keys()) {
    const loop = visit(slug, []);
    if (loop) return loop;
  }
  return null;
}

const outcomeFor = (rule: NumberRule, value: number) =>
  rule.bands.find((band) => (band.min === null || value >= band.min) && (band.max === null || value < band.max))?.outcome;

describe('vocabulary', () => {
  it('is valid by its schema', () => {
    expect(vocabularySchema.safeParse(vocabulary).error?.issues ?? []).toEqual([]);
  });

  it('holds enough to find nothing obvious missing', () => {
    expect(symptoms.length).toBeGreaterThanOrEqual(75);
    expect(checks.length).toBeGreaterThanOrEqual(110);
    expect(causes.length).toBeGreaterThanOrEqual(110);
    expect(fixes.length).toBeGreaterThanOrEqual(90);
    const areas = new Set([...symptoms, ...checks].map((entry) => entry.area));
    expect(areas.size).toBe(10);
  });

  it.each([
    ['roles', roles],
    ['symptoms', symptoms],
    ['checks', checks],
    ['causes', causes],
    ['fixes', fixes],
  ])('has no slug and no word twice among its %s', (_kind, entries) => {
    expect(slugs(entries).size).toBe(entries.length);
    expect([...shared(entries.map((entry) => [entry.slug, wordsOf(entry)] as const))]).toEqual([]);
    for (const entry of entries) expect(new Set(entry.synonyms).size, entry.slug).toBe(entry.synonyms.length);
  });

  it('shares a word between kinds only where the bench does', () => {
    const claims = Object.entries({ symptoms, checks, causes, fixes }).flatMap(([kind, entries]) =>
      entries.map((entry) => [kind, wordsOf(entry)] as const),
    );
    expect([...shared(claims).keys()].sort()).toEqual([
      'blown fuse', // seen (symptom), or proved to be all that is wrong (cause)
      'burnt polarizer', // seen, or the cause
      'cleaned the cartridge', // a check where its outcome matters, a fix where it cured; so too the rest
      'cleaned the cartridge port',
      'cleaned the connector',
      'cleaned the slot',
      'convergence off', // seen, or the cause
      'degaussed',
      'new cable',
      'reseated chips',
      'reseated socketed chips',
    ]);
  });

  it('gives every symptom and every check three words or more, and every outcome at least one', () => {
    for (const entry of [...symptoms, ...checks]) expect(entry.synonyms.length, entry.slug).toBeGreaterThanOrEqual(3);
    for (const check of checks)
      for (const outcome of check.outcomes)
        expect(outcome.synonyms.length, `${check.slug} ${outcome.slug}`).toBeGreaterThanOrEqual(1);
  });

  it('writes words the way a reader compares them: lower case, single blanks', () => {
    const words = [...roles, ...symptoms, ...checks, ...causes, ...fixes].flatMap((entry) => entry.synonyms);
    const inside = checks.flatMap((check) => check.outcomes.flatMap((outcome) => outcome.synonyms));
    for (const word of [...words, ...inside]) expect(word).toBe(word.trim().toLowerCase().replace(/\s+/g, ' '));
  });
});

describe('symptoms', () => {
  it('are hidden only by known symptoms of a category they share, and never by themselves in a circle', () => {
    for (const symptom of symptoms)
      for (const slug of symptom.hiddenBy) {
        const hider = symptoms.find((other) => other.slug === slug);
        expect(
          hider?.categories.some((category) => symptom.categories.includes(category)),
          `${symptom.slug} ${slug}`,
        ).toBe(true);
      }
    expect(loopIn(new Map(symptoms.map((symptom) => [symptom.slug, symptom.hiddenBy])))).toBeNull();
  });

  it('cannot be heard or seen on a dead unit, unless they lie before the power or under the eye', () => {
    const unhidden = symptoms.filter((symptom) => !symptom.hiddenBy.includes('no-power'));
    expect([...new Set(unhidden.map((symptom) => symptom.area))].sort()).toEqual(['mechanical-battery', 'monitor', 'power']);
  });

  it('never say present and absent with the same phrase', () => {
    const present = new Set(symptoms.flatMap((symptom) => symptom.synonyms));
    for (const symptom of symptoms) for (const phrase of symptom.absentPhrases) expect(present.has(phrase), phrase).toBe(false);
    expect([...shared(symptoms.map((symptom) => [symptom.slug, symptom.absentPhrases] as const))]).toEqual([]);
  });
});

describe('checks', () => {
  it('look at a known role and offer distinct outcomes, the working one among them', () => {
    const known = slugs(roles);
    for (const check of checks) {
      expect(known, check.slug).toContain(check.targetRole);
      for (const role of check.clears ?? []) expect(known, check.slug).toContain(role);
      expect(slugs(check.outcomes), check.slug).toContain(check.workingOutcome);
      expect([...shared(check.outcomes.map((outcome) => [outcome.slug, outcome.synonyms] as const))], check.slug).toEqual([]);
    }
  });

  it('ask first for checks that exist, apply to the same categories, and are no more invasive', () => {
    for (const check of checks)
      for (const slug of check.prerequisites) {
        const first = checkOf(slug);
        expect(first.stage, `${check.slug} ${slug}`).toBeLessThanOrEqual(check.stage);
        expect(
          check.categories.filter((category) => !first.categories.includes(category)),
          `${check.slug} ${slug}`,
        ).toEqual([]);
      }
    expect(loopIn(new Map(checks.map((check) => [check.slug, check.prerequisites])))).toBeNull();
  });

  it('turn numbers into known outcomes by bands that join, and name where the limits come from', () => {
    for (const { slug, rule, outcomes } of checks) {
      if (!rule) continue;
      const known = slugs(outcomes);
      rule.bands.forEach((band, index) => {
        expect(known, slug).toContain(band.outcome);
        if (index > 0) expect(band.min, slug).toBe(rule.bands[index - 1]?.max);
        if (index > 0) expect(band.min, slug).not.toBeNull();
        if (band.min !== null && band.max !== null) expect(band.min, slug).toBeLessThan(band.max);
      });
      if (rule.overload) expect(known, slug).toContain(rule.overload);
      expect(rule.source, slug).toMatch(/common practice, no source|data sheet|ITU-R|SMPTE/i);
    }
  });

  // SN54/74LS00 data sheet (Motorola, FAST and LS TTL Data): operating supply 4.75 to 5.25 V.
  it.each([
    [4.74, 'low'],
    [4.75, 'in-tolerance'],
    [5, 'in-tolerance'],
    [5.24, 'in-tolerance'],
    [5.26, 'high'],
    [0, 'absent'],
  ])('read %f V on the 5 V rail as %s', (volts, outcome) => {
    const rule = checkOf('rail-5v').rule;
    expect(rule?.unit).toBe('V');
    expect(rule && outcomeFor(rule, volts)).toBe(outcome);
  });

  // Subcarriers: 315/88 MHz (SMPTE 170M), 4.43361875 MHz (ITU-R BT.470). Line rates: 15.734 and 15.625 kHz (same).
  it.each([
    ['colour-clock', 315 / 88, 'in-tolerance'],
    ['colour-clock', 4.43361875, 'in-tolerance'],
    ['colour-clock', 4, 'off'],
    ['sync-output', 15.625, 'present'],
    ['sync-output', (315 / 88) * 1000 * (2 / 455), 'present'],
    ['clock-at-processor', 3.58, 'pulsing'], // common practice, no source
    ['drive-speed', 60_000 / 300, 'in-tolerance'], // 300 turns a minute: 200 ms, by arithmetic
    ['drive-speed', 60_000 / 290, 'slow'],
  ])('read %s at %f as %s', (slug, value, outcome) => {
    const rule = checkOf(slug).rule;
    expect(rule && outcomeFor(rule, value)).toBe(outcome);
  });

  it('warn before a tube or the mains is opened, and leave it to qualified people', () => {
    const tube = new Set([
      'crt',
      'flyback-transformer',
      'horizontal-output',
      'deflection-yoke',
      'screen-control',
      'video-output-stage',
    ]);
    const mains = new Set([
      'mains-transformer',
      'rectifier',
      'switching-transistor',
      'start-capacitor',
      'mains-filter-capacitor',
    ]);
    for (const check of checks) {
      if (check.stage > 0 && tube.has(check.targetRole)) expect(check.cautions, check.slug).toContain('high-voltage');
      if (check.stage > 0 && mains.has(check.targetRole)) expect(check.cautions, check.slug).toContain('mains');
      if (check.cautions.includes('high-voltage')) expect(check.howTo, check.slug).toMatch(/qualified|Not on hot tubes/);
    }
  });
});

describe('causes', () => {
  it('name a known role, and no part only where nothing was found', () => {
    const known = slugs(roles);
    for (const cause of causes) expect(known, cause.slug).toContain(cause.role);
    expect(causes.filter((cause) => cause.role === 'no-part').map((cause) => cause.slug)).toEqual(['no-fault-found']);
  });

  it('are a role and a failure mode, each pair once', () => {
    expect(new Set(causes.map((cause) => `${cause.role} ${cause.mode}`)).size).toBe(causes.length);
  });

  it('have a fix in every category they occur in, but for no fault found', () => {
    for (const cause of causes)
      for (const category of cause.categories) {
        const fixed = fixes.some((fix) => fix.addresses.includes(cause.slug) && fix.categories.includes(category));
        expect(fixed, `${cause.slug} in ${category}`).toBe(cause.slug !== 'no-fault-found');
      }
  });
});

describe('fixes', () => {
  it('name a known role and known causes', () => {
    const known = slugs(causes);
    for (const fix of fixes) {
      expect(slugs(roles), fix.slug).toContain(fix.role);
      for (const cause of fix.addresses) expect(known, fix.slug).toContain(cause);
    }
  });

  it('cost no less at the high end than at the low', () => {
    for (const fix of fixes) expect(fix.partCostCents.high, fix.slug).toBeGreaterThanOrEqual(fix.partCostCents.low);
  });

  it('warn of the iron where they use one, and use none below stage 3', () => {
    for (const fix of fixes) {
      const iron = fix.instruments.includes('soldering-iron');
      if (iron) expect(fix.cautions, fix.slug).toEqual(expect.arrayContaining(['hot-tools', 'fumes']));
      if (iron) expect(fix.stage, fix.slug).toBeGreaterThanOrEqual(3);
    }
  });

  it('warn of solvent, mains and tube voltage where the work meets them, and leave the last two to qualified people', () => {
    const tube =
      /^(crt|flyback-transformer|horizontal-|deflection-yoke|screen-control|video-output-stage|retrace-capacitor|vertical-amplifier)/;
    const mains = /^(mains-|rectifier|switching-transistor|start-capacitor|main-supply-regulator|degauss)/;
    for (const fix of fixes) {
      if (/alcohol|contact cleaner/.test(fix.howTo)) expect(fix.cautions, fix.slug).toContain('flammable-solvent');
      if (/vinegar/.test(fix.howTo)) expect(fix.howTo, fix.slug).toMatch(/Gloves/);
      if (fix.stage > 0 && tube.test(fix.role)) expect(fix.cautions, fix.slug).toContain('high-voltage');
      if (mains.test(fix.role)) expect(fix.cautions, fix.slug).toContain('mains');
      if (fix.stage > 0 && (tube.test(fix.role) || mains.test(fix.role))) expect(fix.howTo, fix.slug).toMatch(/qualified/);
    }
  });
});
