import { assertNever } from '../base/assert-never.js';
import type { NumberShape, ObjectShape, Shape, TextShape } from '../base/shape.js';
import { entryShape } from './entry.js';

/** JSON as it is written to a file: what a JSON Schema is made of. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [member: string]: Json };

/** A JSON Schema, or a part of one. */
export type JsonSchema = { readonly [keyword: string]: Json };

/**
 * The JSON Schemas of the kinds of entry, one each, in the order in which `grammar/history-entry.schema.json` has them.
 *
 * Made from the shape that `validateEntry` goes by, so that the two cannot part. A schema asks for no other members, where `validateEntry`
 * passes over those that it does not know.
 */
export function entryJsonSchemas(): readonly JsonSchema[] {
  return Object.values(entryShape.of).map((kind) => jsonSchema(kind));
}

/**
 * The JSON Schema of a shape.
 *
 * @throws Error for a shape that goes by a name: entries have none.
 * @example jsonSchema({ is: 'number', whole: true, least: 1 }) // { type: 'integer', minimum: 1 }
 */
export function jsonSchema(shape: Shape): JsonSchema {
  switch (shape.is) {
    case 'text':
      return textSchema(shape);
    case 'flag':
      return { type: 'boolean' };
    case 'number':
      return numberSchema(shape);
    case 'one-of':
      return { type: 'string', ...(shape.values.length === 1 ? { const: shape.values[0] ?? null } : { enum: shape.values }) };
    case 'either':
      return { anyOf: [numberSchema(shape.number), { type: 'string', enum: shape.words }] };
    case 'list':
      return { ...(shape.least === undefined ? {} : { minItems: shape.least }), type: 'array', items: jsonSchema(shape.of) };
    case 'map':
      return {
        type: 'object',
        ...(shape.names === undefined ? {} : { propertyNames: textSchema(shape.names) }),
        additionalProperties: jsonSchema(shape.of),
      };
    case 'object':
      return objectSchema(shape);
    case 'choice':
      return { oneOf: Object.values(shape.of).map((kind) => jsonSchema(kind)) };
    case 'named':
      throw new Error('entries name no shapes');
    default:
      return assertNever(shape);
  }
}

function textSchema({ least, most, forms = [] }: TextShape): JsonSchema {
  const patterns = forms.map(({ source }) => ({ pattern: source }));
  return {
    type: 'string',
    ...(least === undefined ? {} : { minLength: least }),
    ...(most === undefined ? {} : { maxLength: most }),
    ...(patterns.length > 1 ? { allOf: patterns } : patterns[0]),
  };
}

function numberSchema({ whole, least, most }: NumberShape): JsonSchema {
  return {
    type: whole ? 'integer' : 'number',
    ...(least === undefined ? {} : { minimum: least }),
    ...(most === undefined ? {} : { maximum: most }),
  };
}

function objectSchema({ members, optional }: ObjectShape): JsonSchema {
  const names = Object.keys(members);
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(members).map(([name, of]) => [name, jsonSchema(of)])),
    required: names.filter((name) => !optional.includes(name)),
    additionalProperties: false,
  };
}
