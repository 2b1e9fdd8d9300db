import { z } from 'zod';
import { type Endpoint, procedureOf } from './endpoints';

/** One parameter of an endpoint, as JSON Schema describes it. */
export type Parameter = { name: string; in: 'path' | 'query'; required: boolean; schema: Record<string, unknown>; description?: string };

/** The parameters of an endpoint: the fields of its procedure's input. Null is said by leaving one out, so it does not stand. */
export function parametersOf(endpoint: Endpoint): Parameter[] {
  const [input] = procedureOf(endpoint).inputs;
  if (!input) return [];
  const { properties = {}, required = [] } = z.toJSONSchema(input, { target: 'draft-2020-12', io: 'input' });
  return Object.entries(properties).map(([name, property]) => {
    const { description, ...schema } = withoutNull(property as Record<string, unknown>);
    const inPath = endpoint.path.includes(`{${name}}`);
    return {
      name,
      in: inPath ? 'path' : 'query',
      required: inPath || required.includes(name),
      ...(typeof description === 'string' ? { description } : {}),
      schema,
    };
  });
}

function withoutNull({ anyOf, ...rest }: Record<string, unknown>): Record<string, unknown> {
  if (!Array.isArray(anyOf)) return rest;
  const choices = (anyOf as Record<string, unknown>[]).filter((choice) => choice.type !== 'null');
  const { default: _, ...kept } = rest;
  return choices.length === 1 ? { ...choices[0], ...kept } : { anyOf: choices, ...kept };
}

/** A parameter's text as the value that the procedure takes: a number where its schema says so, else the text itself. */
export function parameterValue({ schema }: Parameter, text: string): unknown {
  if (schema.type !== 'integer' && schema.type !== 'number') return text;
  return text.trim() === '' ? Number.NaN : Number(text);
}
