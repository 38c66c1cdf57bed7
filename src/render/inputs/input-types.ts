import type { Json, JsonSchema } from '../../history/entry-json-schema.js';
import { safeText } from '../safe-text.js';
import type { Inputs } from './input-definitions.js';
import { inputSchema } from './input-schema.js';

/**
 * The same as `inputSchema` for a TypeScript compiler: a module of types, in which `Entry` is what can be logged against this schedule.
 *
 * Every such `Entry` is an `Entry` of `duewright`. What a type cannot say (that a date exists, that a number is not negative) is left to the
 * schema.
 *
 * @example
 * const entry: Entry = { id: '7', on: '2026-05-13', kind: 'done', tasks: ['change-engine-oil'] };
 */
export function inputTypes(graph: Inputs): string {
  const schema = inputSchema(graph);
  const definitions = Object.entries(asObject(schema['$defs']));
  const head = `/* Made from the schedule \`${commentText(graph.schedule.name)}\` by \`duewright inputs --types\`; do not edit. */\n`;
  const types = definitions.map(([name, each]) => `${comment(each, '')}export type ${name} = ${typeOf(asObject(each), '')};\n`);
  return [head, ...types, `${comment(schema, '')}export type Entry = ${typeOf(schema, '')};\n`].join('\n');
}

/** Our schemas use few words of JSON Schema; one that is not known here is a bug and not `unknown`. */
function typeOf(schema: JsonSchema, indent: string): string {
  const { $ref: ref, const: only, enum: values, type } = schema;
  if (typeof ref === 'string') return ref.slice(ref.lastIndexOf('/') + 1);
  if (only !== undefined) return JSON.stringify(only);
  if (Array.isArray(values)) return values.map((value) => JSON.stringify(value)).join(' | ');
  const alternatives = schema['oneOf'] ?? schema['anyOf'];
  if (Array.isArray(alternatives)) return union(alternatives as readonly Json[], indent);
  switch (type) {
    case 'string':
      return 'string';
    case 'number':
    case 'integer':
      return 'number';
    case 'array':
      return `(${typeOf(asObject(schema['items']), indent)})[]`;
    case 'object':
      return objectType(schema, indent);
    default:
      throw new Error(`no type is known for ${JSON.stringify(schema)}`);
  }
}

function union(alternatives: readonly Json[], indent: string): string {
  if (alternatives.length === 0) return 'never';
  const deeper = `${indent}  `;
  return alternatives.map((each) => `\n${comment(each, deeper)}${deeper}| ${typeOf(asObject(each), deeper)}`).join('');
}

function objectType(schema: JsonSchema, indent: string): string {
  const members = Object.entries(asObject(schema['properties']));
  if (members.length === 0) return '{ [name: string]: never }';
  const required = schema['required'];
  const deeper = `${indent}  `;
  const lines = members.map(([name, each]) => {
    const optional = Array.isArray(required) && required.includes(name) ? '' : '?';
    return `${comment(each, deeper)}${deeper}${JSON.stringify(name)}${optional}: ${typeOf(asObject(each), deeper)};\n`;
  });
  return `{\n${lines.join('')}${indent}}`;
}

/** What a thing is called, as a comment above it. */
function comment(schema: Json, indent: string): string {
  const { title, description } = asObject(schema);
  const words = title ?? description;
  return typeof words === 'string' ? `${indent}/** ${commentText(words)} */\n` : '';
}

/** An author's words cannot end the comment that they stand in. */
function commentText(words: string): string {
  return safeText(words).replaceAll('*/', '*\u200b/');
}

function asObject(value: Json | undefined): JsonSchema {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Error('a part of the schema of inputs is no schema');
  return value as JsonSchema;
}
