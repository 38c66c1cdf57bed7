/**
 * Writes the files that are made from grammar/rule-graph.schema.json: its types, and the order of its keys.
 *
 * `npm run generate`; with `--check` nothing is written, and a stale file is an error.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { compile } from 'json-schema-to-typescript';

const root = new URL('../', import.meta.url);
const schema = JSON.parse(readFileSync(new URL('grammar/rule-graph.schema.json', root), 'utf8'));
const banner = '/* Made from grammar/rule-graph.schema.json by `npm run generate`; do not edit. */';

/** @returns {Promise<Map<string, string>>} path from the root → text */
export async function generated() {
  const types = await compile(structuredClone(schema), 'RuleGraph', { bannerComment: banner, unreachableDefinitions: true, additionalProperties: false });
  return new Map([
    ['src/graph/rule-graph.ts', types],
    ['src/graph/key-order.ts', keyOrderText()],
  ]);
}

function keyOrderText() {
  const keys = new Set();
  collect(schema, keys);
  const list = [...keys].map((key) => `  '${key}',`).join('\n');
  return `${banner}\n\n/** Every key of a rule graph, in the order in which the schema first names it. */\nexport const keyOrder: readonly string[] = [\n${list}\n];\n`;
}

function collect(node, keys) {
  if (Array.isArray(node)) node.forEach((item) => collect(item, keys));
  if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
  if (node.type === 'object' && node.properties) Object.keys(node.properties).forEach((key) => keys.add(key));
  Object.values(node).forEach((item) => collect(item, keys));
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  const files = await generated();
  const stale = [...files].filter(([path, text]) => read(path) !== text);
  for (const [path, text] of stale) {
    if (process.argv.includes('--check')) console.error(`${path} is stale: run \`npm run generate\``);
    else writeFileSync(new URL(path, root), text);
  }
  process.exitCode = process.argv.includes('--check') && stale.length > 0 ? 1 : 0;
}

function read(path) {
  try {
    return readFileSync(new URL(path, root), 'utf8');
  } catch {
    return undefined;
  }
}
