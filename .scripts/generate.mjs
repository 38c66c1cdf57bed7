/**
 * Writes what is made from something else; `--check` only says what would change, and fails if anything would.
 *
 *   src/graph/{rule-graph,key-order,graph-shape}.ts  from grammar/rule-graph.schema.json
 *   grammar/history-entry.schema.json    from the shape of src/history/entry.ts
 *   grammar/{assessment,explanation,walk-round,check-report,examples,comparison,task-rules,fleet-line}.schema.json   from the types of the answers
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { compile } from 'json-schema-to-typescript';
import { graphShapeText } from './graph-shape.mjs';
import { SchemaWriter } from './type-schema.mjs';

const root = new URL('../', import.meta.url);
const at = (path) => fileURLToPath(new URL(path, root));
const schemaId = (name) => `https://duewright.invalid/schemas/${name}`;
const json = (value) => `${JSON.stringify(value, null, 2)}\n`;

const graphSchema = JSON.parse(readFileSync(at('grammar/rule-graph.schema.json'), 'utf8'));
const banner = '/* Made from grammar/rule-graph.schema.json by `npm run generate`; do not edit. */';

/** Name of the schema, file and name of the type, title. */
const answers = [
  ['assessment', 'src/assess/assessment.ts', 'Assessment', 'What is due: the answer of `assess` and of `duewright due --json`'],
  ['explanation', 'src/explain/explanation.ts', 'Explanation', 'Why: the answer of `explain` and of `duewright why --json`'],
  [
    'outing',
    'src/outlook/during-outing.ts',
    'OutingOutlook',
    'An outing from end to end: the answer of `duringOuting` and of `duewright outing --json`',
  ],
  [
    'walk-round',
    'src/access/walk-round.ts',
    'WalkRound',
    'In what order, and why: the answer of `walkRound` and of `duewright walk --json`',
  ],
  ['outlook', 'src/outlook/outlook.ts', 'Outlook', 'What lies ahead: the answer of `lookAhead` and of `duewright ahead --json`'],
  ['visits', 'src/adapters/cli/visits-answer.ts', 'VisitsAnswer', 'Proposed visits: the answer of `duewright visits --json`'],
  [
    'supplies',
    'src/outlook/supplies-ahead.ts',
    'SuppliesAhead',
    'What to have on the shelf: the answer of `suppliesAhead` and of `duewright supplies --json`',
  ],
  [
    'check-report',
    'src/adapters/cli/check-report.ts',
    'CheckReport',
    'What is wrong in one schedule: one item of the array that `duewright check --json` answers',
  ],
  [
    'examples',
    'src/examples/report.ts',
    'ExamplesReport',
    'Worked examples, run: the answer of `runExamples` and of `duewright prove --json`',
  ],
  [
    'comparison',
    'src/compare/comparison.ts',
    'Comparison',
    'Two editions compared: the answer of `compareEditions` and of `duewright changes --json`',
  ],
  ['task-rules', 'src/adapters/cli/task-rules.ts', 'TaskRules', 'The rules of one task: the answer of `duewright rules --json`'],
  ['fleet-line', 'src/adapters/cli/fleet-line.ts', 'FleetLine', 'A machine of a fleet: one line of the answer of `duewright fleet --json`'],
];

/** @returns {Promise<Map<string, string>>} path from the root → text */
export async function generated() {
  return new Map([
    ['src/graph/rule-graph.ts', await ruleGraphTypes()],
    ['src/graph/key-order.ts', keyOrderText()],
    ['src/graph/graph-shape.ts', graphShapeText(graphSchema, banner)],
    ['grammar/history-entry.schema.json', await entrySchemaText()],
    ...answerSchemas(),
  ]);
}

function ruleGraphTypes() {
  const options = { bannerComment: banner, unreachableDefinitions: true, additionalProperties: false };
  return compile(structuredClone(graphSchema), 'RuleGraph', options);
}

function keyOrderText() {
  // What a thing is comes first wherever it stands.
  const keys = new Set([...Object.keys(graphSchema.properties), 'id', 'kind', 'is', 'on']);
  collect(graphSchema, keys);
  const list = [...keys].map((key) => `  '${key}',`).join('\n');
  return `${banner}\n\n/** Every key of a rule graph, in the order in which the schema first names it. */\nexport const keyOrder: readonly string[] = [\n${list}\n];\n`;
}

function collect(node, keys) {
  if (Array.isArray(node)) node.forEach((item) => collect(item, keys));
  if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
  if (node.type === 'object' && node.properties) Object.keys(node.properties).forEach((key) => keys.add(key));
  Object.values(node).forEach((item) => collect(item, keys));
}

async function entrySchemaText() {
  const { entryJsonSchemas } = await load('src/history/entry-json-schema.ts');
  const $schema = 'https://json-schema.org/draft/2020-12/schema';
  return json({ $schema, $id: schemaId('history-entry'), title: 'One entry of a logbook: a line of JSON', oneOf: entryJsonSchemas() });
}

/** The exports of one of our TypeScript files. */
async function load(path) {
  const options = { bundle: true, write: false, format: 'esm', platform: 'neutral', mainFields: ['module', 'main'] };
  const { outputFiles } = await build({ entryPoints: [at(path)], ...options });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
}

function answerSchemas() {
  const writer = new SchemaWriter(answers.map(([, file]) => at(file)));
  return answers.map(([name, file, type, title]) => [
    `grammar/${name}.schema.json`,
    json(writer.write(at(file), type, { id: schemaId(name), title })),
  ]);
}

function read(path) {
  try {
    return readFileSync(at(path), 'utf8');
  } catch {
    return undefined;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const stale = [...(await generated())].filter(([path, text]) => read(path) !== text);
  const onlyCheck = process.argv.includes('--check');
  for (const [path, text] of stale) {
    if (onlyCheck) console.error(`${path} is stale: run \`npm run generate\``);
    else writeFileSync(at(path), text);
  }
  if (onlyCheck && stale.length > 0) process.exitCode = 1;
}
