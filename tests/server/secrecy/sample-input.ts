import { z } from 'zod';

type Shape = {
  type?: string | string[];
  const?: unknown;
  enum?: unknown[];
  anyOf?: Shape[];
  oneOf?: Shape[];
  allOf?: Shape[];
  properties?: Record<string, Shape>;
  items?: Shape;
  minItems?: number;
  maxItems?: number;
  minimum?: number;
  exclusiveMinimum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
};

/**
 * Inputs that a schema takes, filled from a pool: each text is one of those of the pool that fit where it stands, another one
 * in each input. A schema that cannot be told (a file) is given bytes.
 */
export function sampleInputs(schema: z.ZodType, pool: readonly string[]): unknown[] {
  const shape = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Shape;
  const samples = pool.map((_, turn) => build(shape, pool, turn));
  const distinct = [...new Map(samples.map((sample) => [JSON.stringify(sample), sample])).values()];
  return distinct.filter((sample) => schema.safeParse(sample).success);
}

function build(shape: Shape, pool: readonly string[], turn: number): unknown {
  if ('const' in shape) return shape.const;
  if (shape.enum) return shape.enum[turn % shape.enum.length];
  const choices = shape.anyOf ?? shape.oneOf;
  if (choices) {
    const filled = choices.filter(({ type }) => type !== 'null');
    return build(filled[turn % filled.length] ?? {}, pool, turn);
  }
  if (shape.allOf) return Object.assign({}, ...shape.allOf.map((part) => build(part, pool, turn)));
  switch (shape.type) {
    case 'object':
      return Object.fromEntries(Object.entries(shape.properties ?? {}).map(([name, inner]) => [name, build(inner, pool, turn)]));
    case 'array':
      return shape.items && shape.maxItems !== 0 ? [build(shape.items, pool, turn)] : [];
    case 'string': {
      const fits = pool.filter((text) => fitsIn(shape, text));
      return fits[turn % fits.length] ?? '';
    }
    case 'integer':
    case 'number':
      return Math.max(shape.minimum ?? shape.exclusiveMinimum ?? 1, 1);
    case 'boolean':
      return turn % 2 === 0;
    case 'null':
      return null;
    default:
      return new Uint8Array();
  }
}

function fitsIn({ pattern, minLength = 0, maxLength = Number.POSITIVE_INFINITY }: Shape, text: string): boolean {
  return text.length >= minLength && text.length <= maxLength && (pattern === undefined || new RegExp(pattern, 'u').test(text));
}
