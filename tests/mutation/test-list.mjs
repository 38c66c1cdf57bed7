/**
 * As much of vitest as the tests under mutation use: `describe`, `test` and `expect` that write the tests down in a list, to be run one by one.
 * The matchers are vitest's own.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ASYMMETRIC_MATCHERS_OBJECT, chai, customMatchers, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';

/** Golden files are read, never written; their paths start from the test file. */
const fileSnapshots = (_, { addMethod, flag }) =>
  addMethod(chai.Assertion.prototype, 'toMatchFileSnapshot', function (path) {
    const url = new URL(path, pathToFileURL(resolve(flag(this, 'file'))));
    new chai.Assertion(this._obj).to.equal(readFileSync(url, 'utf8'));
  });

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers, fileSnapshots]) chai.use(plugin);

/**
 * @typedef {{ readonly id: string, readonly file: string, readonly body: () => unknown }} ListedTest
 * @typedef {{ readonly tests: ListedTest[], readonly inFile: (file: string) => void, readonly vitest: Readonly<Record<string, unknown>> }} TestList
 */

/** An empty list, and the `vitest` that fills it. @returns {TestList} */
export function testList() {
  const tests = [];
  const titles = new Map();
  const path = [];
  let [file, running] = ['', ''];

  const describe = (name, body) => {
    path.push(String(name));
    body();
    path.pop();
  };
  const test = (name, ...more) => {
    const [body, place] = [bodyIn(more), file];
    const title = [file, ...path, String(name)].join(' > ');
    titles.set(title, (titles.get(title) ?? 0) + 1);
    const run = () => {
      running = place;
      return body();
    };
    tests.push({ id: titles.get(title) === 1 ? title : `${title} (${titles.get(title)})`, file, body: run });
  };
  const expect = (value, message) => {
    const assertion = chai.expect(value, message);
    chai.util.flag(assertion, 'file', running);
    return assertion;
  };
  const vitest = {
    describe: withEach(describe),
    test: withEach(test),
    it: withEach(test),
    expect: Object.assign(expect, chai.expect, customMatchers, globalThis[ASYMMETRIC_MATCHERS_OBJECT]),
  };
  return { tests, vitest, inFile: (name) => void (file = name) };
}

/** A test may have options before its body, or a timeout after it; neither matters here. */
function bodyIn(args) {
  return args.find((arg) => typeof arg === 'function');
}

function withEach(declare) {
  const each =
    (rows) =>
    (name, ...more) =>
      rows.forEach((row, index) => {
        const given = Array.isArray(row) ? row : [row];
        // A row that begins with a text is called by it.
        const title = typeof given[0] === 'string' ? name.replace('%s', () => given[0]) : name;
        declare(`${title} ${index + 1}`, () => bodyIn(more)(...given));
      });
  return Object.assign(declare, { each });
}
