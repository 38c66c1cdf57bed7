import * as z from 'zod/mini';
import { entrySchema } from './entry.js';

/** JSON as it is written to a file: what a JSON Schema is made of. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [member: string]: Json };

/** A JSON Schema, or a part of one. */
export type JsonSchema = { readonly [keyword: string]: Json };

/**
 * The JSON Schemas of the kinds of entry, one each, in the order in which `grammar/history-entry.schema.json` has them.
 *
 * Made from the schema that `validateEntry` goes by, so that the two cannot part.
 */
export function entryJsonSchemas(): readonly JsonSchema[] {
  const whole = z.toJSONSchema(entrySchema) as JsonSchema;
  const kinds = whole['oneOf'];
  if (!Array.isArray(kinds)) throw new Error('the schema of entries is no longer one of several kinds');
  return kinds as readonly JsonSchema[];
}
