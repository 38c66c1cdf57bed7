import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { entryJsonSchemas } from '../../src/history/entry-json-schema.js';

test('the published schema has the kinds of entry that are checked for, each as it is checked', () => {
  const published = JSON.parse(readFileSync(new URL('../../grammar/history-entry.schema.json', import.meta.url), 'utf8')) as object;
  expect(entryJsonSchemas()).toEqual((published as { readonly oneOf: unknown }).oneOf);
});
