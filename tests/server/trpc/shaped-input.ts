import fc, { type Arbitrary } from 'fast-check';

/** As much of JSON Schema as zod writes for the inputs of procedures. */
export type Shape = {
  type?: string;
  enum?: unknown[];
  const?: unknown;
  anyOf?: Shape[];
  oneOf?: Shape[];
  allOf?: Shape[];
  items?: Shape;
  prefixItems?: Shape[];
  properties?: Record<string, Shape>;
  additionalProperties?: Shape | boolean;
  pattern?: string;
  maxLength?: number;
  $ref?: string;
  $defs?: Record<string, Shape>;
};

const HOSTILE = [
  '',
  ' ',
  "'; DROP TABLE CaseFile; --",
  '" OR ""="',
  '../../etc/passwd',
  '%00',
  '\u0000',
  '\uD800',
  '\u202Eabc',
  '<script>alert(1)</script>',
  '__proto__',
  'constructor',
  'x'.repeat(3000),
  '9'.repeat(400),
  '2026-13',
  'NEAR(a b) AND * "',
];

/**
 * Inputs of the given shape, with now and then something else in any place, so that they come past the door and break
 * what stands behind it, if anything does.
 *
 * @param known words that exist in the casebook, for the texts.
 */
export function shapedInput(shape: Shape, known: readonly string[]): Arbitrary<unknown> {
  const text = fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom(...known) },
    { weight: 2, arbitrary: fc.constantFrom(...HOSTILE) },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  );
  const of = (inner: Shape, depth: number): Arbitrary<unknown> => {
    const true_ = exact(inner, depth);
    return fc.oneof({ weight: 14, arbitrary: true_ }, { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 1 }) });
  };
  const exact = (inner: Shape, depth: number): Arbitrary<unknown> => {
    if (depth > 6) return fc.constant(null);
    if (inner.$ref !== undefined) return of(shape.$defs?.[inner.$ref.split('/').at(-1) ?? ''] ?? {}, depth + 1);
    if (inner.const !== undefined) return fc.constant(inner.const);
    if (inner.enum !== undefined) return fc.constantFrom(...inner.enum);
    const choices = inner.anyOf ?? inner.oneOf;
    if (choices !== undefined) return fc.oneof(...choices.map((choice) => of(choice, depth + 1)));
    if (inner.allOf?.[0] !== undefined) return of(inner.allOf[0], depth + 1);
    switch (inner.type) {
      case 'object':
        return fc.record(
          Object.fromEntries(Object.entries(inner.properties ?? {}).map(([name, property]) => [name, of(property, depth + 1)])),
          depth % 2 === 0 ? {} : { requiredKeys: Object.keys(inner.properties ?? {}).slice(1) },
        );
      case 'array':
        return fc.array(of(inner.items ?? {}, depth + 1), { maxLength: 4 });
      case 'string':
        return text;
      case 'integer':
        return fc.oneof(fc.integer({ min: -2, max: 60 }), fc.constantFrom(2 ** 31, -(2 ** 53), 2 ** 53));
      case 'number':
        return fc.oneof(fc.double({ noNaN: true }), fc.integer({ min: -2, max: 60 }));
      case 'boolean':
        return fc.boolean();
      case 'null':
        return fc.constant(null);
      default:
        return fc.oneof(text, fc.jsonValue({ maxDepth: 2 }));
    }
  };
  return of(shape, 0);
}
