import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../src/history/canonical-json.js';

describe('canonical JSON', () => {
  test.each<[unknown, string]>([
    [{ b: 1, a: [2, { d: null, c: 'x' }] }, '{"a":[2,{"c":"x","d":null}],"b":1}'],
    [{ b: undefined, a: 'A' }, '{"a":"A"}'],
    [[], '[]'],
    [{}, '{}'],
    [null, 'null'],
    ['"', '"\\""'],
    [undefined, 'null'],
    [[undefined, 1], '[null,1]'],
  ])('of %j', (value, text) => {
    expect(canonicalJson(value)).toBe(text);
  });

  test('says what JSON says, whatever order the members were put in', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse());
        expect(canonicalJson(turned)).toBe(canonicalJson(value));
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });
});
