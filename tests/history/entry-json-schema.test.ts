import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Shape } from '../../src/base/shape.js';
import { entryJsonSchemas, jsonSchema } from '../../src/history/entry-json-schema.js';

test('the published schema has the kinds of entry that are checked for, each as it is checked', () => {
  const published = JSON.parse(readFileSync(new URL('../../grammar/history-entry.schema.json', import.meta.url), 'utf8')) as object;
  // Strictly: what is undefined is no JSON.
  expect(entryJsonSchemas()).toStrictEqual((published as { readonly oneOf: unknown }).oneOf);
});

describe('a shape as a schema', () => {
  const text: Shape = { is: 'text' };
  const cases: readonly (readonly [string, Shape, unknown])[] = [
    ['any text', text, { type: 'string' }],
    ['a text of so many characters', { is: 'text', least: 1, most: 9 }, { type: 'string', minLength: 1, maxLength: 9 }],
    ['a text of a form', { is: 'text', forms: [/^a/] }, { type: 'string', pattern: '^a' }],
    ['a text of two forms', { is: 'text', forms: [/^a/, /z$/] }, { type: 'string', allOf: [{ pattern: '^a' }, { pattern: 'z$' }] }],
    ['a flag', { is: 'flag' }, { type: 'boolean' }],
    ['any number', { is: 'number', whole: false }, { type: 'number' }],
    ['a number within bounds', { is: 'number', whole: true, least: 1, most: 5 }, { type: 'integer', minimum: 1, maximum: 5 }],
    ['one word', { is: 'one-of', values: ['a'] }, { type: 'string', const: 'a' }],
    ['one of two words', { is: 'one-of', values: ['a', 'b'] }, { type: 'string', enum: ['a', 'b'] }],
    [
      'a number or a word',
      { is: 'either', number: { is: 'number', whole: false }, words: ['low'] },
      { anyOf: [{ type: 'number' }, { type: 'string', enum: ['low'] }] },
    ],
    ['a list', { is: 'list', of: text }, { type: 'array', items: { type: 'string' } }],
    ['a list of so many', { is: 'list', of: text, least: 2 }, { minItems: 2, type: 'array', items: { type: 'string' } }],
    ['a map', { is: 'map', of: text }, { type: 'object', additionalProperties: { type: 'string' } }],
    [
      'a map by names of a form',
      { is: 'map', of: text, names: { is: 'text', most: 3 } },
      { type: 'object', propertyNames: { type: 'string', maxLength: 3 }, additionalProperties: { type: 'string' } },
    ],
    [
      'an object',
      { is: 'object', members: { a: text, b: text }, optional: ['b'] },
      { type: 'object', properties: { a: { type: 'string' }, b: { type: 'string' } }, required: ['a'], additionalProperties: false },
    ],
    ['a choice', { is: 'choice', tag: 'is', of: { a: text, b: { is: 'flag' } } }, { oneOf: [{ type: 'string' }, { type: 'boolean' }] }],
  ];

  test.each(cases)('%s', (_, shape, schema) => expect(jsonSchema(shape)).toStrictEqual(schema));

  test('there is none of a shape that goes by a name', () => {
    expect(() => jsonSchema({ is: 'named', name: 'x' })).toThrow('entries name no shapes');
  });
});
