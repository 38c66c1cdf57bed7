/**
 * Test files with all that they import of this repository as one script, which can be evaluated again and again: each time the modules are
 * new, and packages are the ones that are loaded already.
 */
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import vm from 'node:vm';
import { build } from 'esbuild';
import { fewRuns } from './few-runs.mjs';
import { ForgetfulWeakMap } from './forgetful-weak-map.mjs';
import { testList } from './test-list.mjs';
import { isTried } from './tests-for.mjs';

/**
 * @param {readonly string[]} files test files, from the folder that this process runs in
 * @param {boolean} isFar whether the tests that take long are among them
 * @returns {Promise<() => Promise<readonly import('./test-list.mjs').ListedTest[]>>} evaluates the script, and lists its tests
 */
export async function bundleTests(files, isFar) {
  const packages = new Map();
  const entry = files.map((file) => `inFile(${JSON.stringify(file)}); await import(${JSON.stringify(resolve(file))});`).join('\n');
  const { outputFiles } = await build({
    stdin: { contents: `export const collect = async (inFile) => {\n${entry}\n};`, resolveDir: process.cwd() },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    logLevel: 'error',
    plugins: [ownPlace, loadedPackages(packages)],
  });
  const script = new vm.Script(`(function (module, exports, packages, WeakMap) {\n${outputFiles[0]?.text ?? ''}\n})`, {
    filename: 'tests-under-mutation.cjs',
  });
  return async () => {
    const list = testList();
    const module = { exports: {} };
    script.runInThisContext()(module, module.exports, new Map([...packages, ['vitest', list.vitest]]), ForgetfulWeakMap);
    await module.exports.collect(list.inFile);
    return list.tests.filter(({ id }) => isTried(id, isFar));
  };
}

/** Tests find their cases beside themselves: each file keeps the address that it has. */
const ownPlace = {
  name: 'own-place',
  setup({ onLoad }) {
    onLoad({ filter: /\/(src|tests)\/.*\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      return { contents: text.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)), loader: 'ts' };
    });
  },
};

/** Packages are loaded once, outside the script. */
function loadedPackages(packages) {
  return {
    name: 'loaded-packages',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^[^./]/ }, ({ path }) => ({ path, namespace: 'package' }));
      onLoad({ filter: /.*/, namespace: 'package' }, async ({ path }) => {
        const loaded = path === 'fast-check' ? fewRuns : path === 'vitest' ? testList().vitest : await import(path);
        packages.set(path, loaded);
        const names = Object.keys(loaded);
        const members = names.map(
          (name, index) => `const m${index} = loaded[${JSON.stringify(name)}]; export { m${index} as ${JSON.stringify(name)} };`,
        );
        return { contents: `const loaded = packages.get(${JSON.stringify(path)});\n${members.join('\n')}`, loader: 'js' };
      });
    },
  };
}
