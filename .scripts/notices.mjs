/** The licences of the packages that go into our bundles: whoever gets the bundle gets their notices with it. */
import { readdirSync, readFileSync } from 'node:fs';

const IN_PACKAGE = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;
const folders = new Set();

/** A plugin for esbuild that notes which packages are bundled. */
export const noticing = {
  name: 'noticing',
  setup: (build) =>
    build.onLoad({ filter: /[\\/]node_modules[\\/]/ }, ({ path }) => {
      const folder = IN_PACKAGE.exec(path)?.[1];
      if (folder !== undefined) folders.add(folder);
      return undefined;
    }),
};

/** The notices of all packages bundled so far, by name. Fails on a package that states no licence. */
export function notices() {
  const each = [...folders].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    if (typeof license !== 'string') throw new Error(`${name} states no licence`);
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file === undefined ? '' : `\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}`;
    return `${name} ${version}: ${license}${text}\n`;
  });
  return [...new Set(each)].sort().join(`\n${'-'.repeat(80)}\n\n`);
}
