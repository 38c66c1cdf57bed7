/** The packed package inside fresh projects: an ES module, a CommonJS module, a strict TypeScript project, a page built by Vite. */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packPackage, type Packed, root } from './packed.js';

const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly dependencies: Readonly<Record<string, string>>;
};

const use = `
const text = 'schedule pump "Pump"\\n  language 1\\nmeter engine "Hours" counts h\\ntask oil "Change the oil"\\n  every 50 h of engine\\n';
const { graph } = whole.compile('pump.due', (path) => (path === 'pump.due' ? text : undefined));
const entries = [
  { kind: 'done', id: 'a', on: '2026-01-01', tasks: ['oil'], meters: { engine: 10 } },
  { kind: 'reading', id: 'b', on: '2026-02-01', meters: { engine: 60 } },
];
const assessment = engine.assess(graph, entries, { day: engine.dayOf('2026-02-01'), minute: null });
const told = assessment.tasks.map((task) => task.task + ' ' + task.state).join();
`;

let packed: Packed;
beforeAll(() => {
  if (!existsSync(join(root, 'dist/index.d.ts'))) throw new Error('there is no dist/: run `npm run build` first');
  packed = packPackage(Object.keys(manifest.dependencies), ['typescript', 'vite', '@types/node', 'undici-types']);
});
afterAll(() => packed.remove());

function run(folder: string, command: string, ...args: readonly string[]): string {
  const { stdout, stderr } = spawnSync(command, args, {
    cwd: folder,
    encoding: 'utf8',
    env: { PATH: process.env['PATH'], HOME: packed.folder },
  });
  return stdout + stderr;
}

describe('a project that uses the package', () => {
  test('finds the licences of what is bundled into it', () => {
    const notices = readFileSync(join(root, 'dist/third-party-notices.txt'), 'utf8');
    for (const bundled of ['commander', 'saxes', '@codemirror/view', '@observablehq/plot'])
      expect(notices).toMatch(new RegExp(`^${bundled} [0-9.]+: [A-Z]`, 'm'));
  });

  test('as an ES module', () => {
    const folder = packed.project('esm', {
      'main.mjs': `import * as whole from 'duewright';\nimport * as engine from 'duewright/engine';\n${use}console.log(told);\n`,
    });
    expect(run(folder, process.execPath, 'main.mjs')).toBe('oil due\n');
  });

  test('from CommonJS, with `require`', () => {
    const folder = packed.project('cjs', {
      'main.cjs': `const whole = require('duewright');\nconst engine = require('duewright/engine');\n${use}console.log(told);\n`,
    });
    expect(run(folder, process.execPath, '--no-warnings', 'main.cjs')).toBe('oil due\n');
  });

  test('for a fleet, over worker threads', () => {
    const folder = packed.project('fleet', {
      'main.mjs': `import { compile, dayOf } from 'duewright';
import { assessFleet, STATES } from 'duewright/fleet';
const text = 'schedule pump "Pump"\\n  language 1\\nmeter engine "Hours" counts h\\ntask oil "Change the oil"\\n  every 50 h of engine\\n';
const { graph } = compile('pump.due', (path) => (path === 'pump.due' ? text : undefined));
const line = (hours) => JSON.stringify({ machine: 'm' + hours, on: '2026-02-01', meters: { engine: hours }, done: { oil: { on: '2026-01-01', meters: { engine: 10 } } } });
const lines = [20, 60, 70].map(line).join('\\n');
const script = new URL(import.meta.resolve('duewright/fleet-worker'));
for await (const { machines, state } of assessFleet(graph, [lines], { today: dayOf('2026-02-01'), workers: 2, script }))
  console.log(machines.map((name, m) => name + ' ' + STATES[state[m]]).join());
`,
    });
    expect(run(folder, process.execPath, 'main.mjs')).toBe('m20 clear,m60 due,m70 overdue\n');
  });

  test('for an editor', () => {
    const folder = packed.project('editor', {
      'main.mjs': `import { check } from 'duewright';
import { symbolsOf, complete } from 'duewright/editor';
const text = 'schedule pump "Pump"\\n  language 1\\nmeter engine "Hours" counts h\\ntask oil "Change the oil"\\n  every 50 h of ';
const checked = check('pump.due', (path) => (path === 'pump.due' ? text : undefined));
console.log(complete({ checked, file: 0 }, text.length).map(({ label }) => label).includes('engine'));
console.log(typeof symbolsOf);
`,
    });
    expect(run(folder, process.execPath, 'main.mjs')).toBe('true\nfunction\n');
  });

  test('in strict TypeScript, with the types of a browser and not those of Node', () => {
    const options = {
      strict: true,
      module: 'NodeNext',
      moduleResolution: 'NodeNext',
      target: 'ES2023',
      lib: ['ES2023', 'DOM'],
      types: [],
      noEmit: true,
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
    };
    const folder = packed.project('typed', {
      'package.json': '{ "type": "module" }',
      'tsconfig.json': JSON.stringify({ compilerOptions: options, include: ['main.ts'] }),
      'main.ts': `import { assess, compile, dayOf, type Assessment, type Entry } from 'duewright';
const { graph } = compile('pump.due', () => undefined);
const entries: readonly Entry[] = [{ kind: 'reading', id: 'b', on: '2026-02-01', meters: { engine: 60 } }];
const day = dayOf('2026-02-01');
if (graph !== null && day !== null) {
  const assessment: Assessment = assess(graph, entries, { day, minute: null });
  for (const task of assessment.tasks) if (task.due?.on === 'meter') task.due.ticks.toFixed();
}
`,
    });
    expect(run(folder, process.execPath, join(packed.folder, 'node_modules/typescript/bin/tsc'), '-p', '.')).toBe('');
  });

  test('in strict TypeScript, for a fleet over worker threads', () => {
    const options = {
      strict: true,
      module: 'NodeNext',
      moduleResolution: 'NodeNext',
      target: 'ES2023',
      types: ['node'],
      outDir: 'out',
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
    };
    const folder = packed.project('typed-fleet', {
      'package.json': '{ "type": "module" }',
      'tsconfig.json': JSON.stringify({ compilerOptions: options, include: ['*.ts'] }),
      'worker.ts': `import 'duewright/fleet-worker';\n`,
      'main.ts': `import { compile, dayOf } from 'duewright';
import { assessFleet, Fleet, planColumns, STATES, type BlockAnswer, type FleetOptions, type LineNote, type MachineLine } from 'duewright/fleet';
const text = 'schedule pump "Pump"\\n  language 1\\nmeter engine "Hours" counts h\\ntask oil "Change the oil"\\n  every 50 h of engine\\n';
const { graph } = compile('pump.due', (path) => (path === 'pump.due' ? text : undefined));
const today = dayOf('2026-02-01');
if (graph === null || today === null) throw new Error('the schedule does not compile');
const line: MachineLine = { machine: 'a', on: '2026-02-01', meters: { engine: 60 }, done: { oil: { on: '2026-01-01', meters: { engine: 10 } } } };
const said = (answer: BlockAnswer): readonly string[] => answer.machines.map((name, m) => name + ' ' + STATES[answer.state[m] ?? 0]);
const noted = (note: LineNote): string => note.line + ': ' + note.what;
// By its name, and as a module of our own that imports it, which is what a bundler takes along.
for (const script of [new URL(import.meta.resolve('duewright/fleet-worker')), new URL('./worker.js', import.meta.url)]) {
  const options: FleetOptions = { today, workers: 1, script };
  for await (const answer of assessFleet(graph, [JSON.stringify(line) + '\\n[]'], options)) console.log(...said(answer), ...answer.notes.map(noted));
}
const fleet = new Fleet(planColumns(graph), 1);
fleet.add(JSON.stringify(line));
console.log(STATES[fleet.assess(today).state[0] ?? 0]);
`,
    });
    expect(run(folder, process.execPath, join(packed.folder, 'node_modules/typescript/bin/tsc'), '-p', '.')).toBe('');
    const told = 'a due 2: it is not one JSON object';
    expect(run(folder, process.execPath, 'out/main.js')).toBe(`${told}\n${told}\ndue\n`);
  });

  test.each([
    ['duewright/engine', 'assess', false],
    ['duewright/reading', 'graphReaderWith', false],
    ['duewright', 'assess', false],
    ['duewright', 'compile', true],
    ['duewright/compiler', 'compilerWith', true],
  ] as const)('in a page built by Vite: `%s` for `%s`, with a parser: %s', (from, name, parser) => {
    const folder = packed.project(`vite-${from.replace('/', '-')}-${name}`, {
      'package.json': '{ "type": "module" }',
      'index.html': '<!doctype html><script type="module" src="/main.js"></script>',
      'main.js': `import { ${name} } from '${from}';\nglobalThis.taken = ${name};\n`,
    });
    run(folder, process.execPath, join(packed.folder, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'error');
    const built = readdirSync(join(folder, 'dist/assets')).map((file) => readFileSync(join(folder, 'dist/assets', file), 'utf8'));
    // The rules of the grammar are read by it.
    expect(built.join('').includes('AT_LEAST_ONE_SEP')).toBe(parser);
  });
});

describe('the manifest', () => {
  test('publint finds nothing to say', () => {
    const out = execFileSync(
      process.execPath,
      [
        join(root, 'node_modules/publint/src/cli.js'),
        'run',
        join(packed.folder, 'node_modules/duewright'),
        '--strict',
        '--level',
        'suggestion',
      ],
      { encoding: 'utf8', env: { PATH: process.env['PATH'], NO_COLOR: '1' } },
    );
    expect(out).toContain('All good!');
  });

  test('every entry has types that resolve as Node does for ES modules', () => {
    const attw = join(root, 'node_modules/@arethetypeswrong/cli/dist/index.js');
    const out = execFileSync(
      process.execPath,
      [attw, packed.tarball, '--profile', 'esm-only', '--exclude-entrypoints', 'schemas', '--format', 'json'],
      { encoding: 'utf8', env: { PATH: process.env['PATH'], HOME: packed.folder } },
    );
    const { analysis } = JSON.parse(out) as {
      readonly analysis: {
        readonly types: unknown;
        readonly problems: readonly { readonly kind: string; readonly resolutionKind?: string }[];
      };
    };
    expect(analysis.types).not.toBe(false);
    const problems = analysis.problems.filter(
      ({ resolutionKind }) => resolutionKind === undefined || resolutionKind === 'node16-esm' || resolutionKind === 'bundler',
    );
    expect(problems).toEqual([]);
  });
});
