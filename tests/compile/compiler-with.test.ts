/** A compiler of some parts only gives what the whole one gives, byte for byte, or refuses by name; it never compiles what the whole one refuses. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { refusals } from '../../src/check/rules/index.js';
import { wholeExamination } from '../../src/check/whole-examination.js';
import { compile } from '../../src/compile/compile.js';
import { compilerWith, type Compilation, type Compiler, type CompilerPartName } from '../../src/compile/compiler-with.js';
import type { CompilerPart } from '../../src/compile/compiler-part.js';
import { everyMaker } from '../../src/compile/every-maker.js';
import type { Compiled } from '../../src/compile/graph-of.js';
import * as all from '../../src/compile/parts.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import type { ConformanceFile } from '../conformance/conformance-case.js';
import { readCases } from '../syntax/case-file.js';
import { bent, edit, files, names } from './bent-texts.js';

type PartName = keyof typeof all;
const partNames = Object.keys(all) as PartName[];

/** Compilers are kept: making one takes some milliseconds. */
const made = new Map<string, Compiler>();
function compilerOf(parts: readonly PartName[]): Compiler {
  const key = parts.join(' ');
  const compiler = made.get(key) ?? compilerWith(parts.map((name): CompilerPart => all[name]));
  made.set(key, compiler);
  return compiler;
}

/** None, each by itself, all but one, all. */
const choices: readonly (readonly PartName[])[] = [
  [],
  ...partNames.map((name) => [name]),
  ...partNames.map((name) => partNames.filter((each) => each !== name)),
  partNames,
];

type Texts = ReadonlyMap<string, string>;

/** What a text's mistakes begin with; warnings and notes aside. */
const firstMistake = ({ diagnostics }: Compiled): Diagnostic | undefined => diagnostics.find(({ severity }) => severity === 'error');

/** Whether `advice` has told it by what was meant, at the place of that. */
const isGuess = ({ code, message }: Diagnostic): boolean =>
  ['DW111', 'DW112', 'DW115'].includes(code) ||
  (['DW113', 'DW114'].includes(code) && !/^Expected|begins no clause|opens a clause/.test(message));

/** Holds what some parts give to what the whole gives. */
function hold(parts: readonly PartName[], path: string, texts: Texts, whole = compile(path, (each) => texts.get(each))): Compilation {
  const answer = compilerOf(parts).compile(path, (each) => texts.get(each));
  if (answer.kind === 'refused') {
    for (const { part } of answer.lacks) expect(parts).not.toContain(part);
    return answer;
  }
  expect(JSON.stringify(answer.graph), parts.join(' ')).toBe(JSON.stringify(whole.graph));
  holdDiagnostics(parts, answer, whole);
  return answer;
}

function holdDiagnostics(parts: readonly PartName[], answer: Compiled, whole: Compiled): void {
  const said = (diagnostics: readonly Diagnostic[]) =>
    parts.includes('remarks') ? diagnostics : diagnostics.filter(({ severity, code }) => severity === 'error' || /^DW4/.test(code));
  // A word of a part that is not there cannot be what was meant.
  const isMissed = whole.diagnostics.some((each) => isGuess(each) && !answer.diagnostics.some(({ message }) => message === each.message));
  if (parts.includes('advice') && !(isMissed && parts.length < partNames.length)) {
    expect(said(answer.diagnostics)).toEqual(said(whole.diagnostics));
    return;
  }
  const [first, theirs] = [firstMistake(answer), firstMistake(whole)];
  expect(first === undefined).toBe(theirs === undefined);
  if (first === undefined || theirs === undefined || whole.diagnostics.some(isGuess)) return;
  expect([first.code, first.at], parts.join(' ')).toEqual([theirs.code, theirs.at]);
}

/** Golden cases of folders: each a set of files, the first of which is compiled. */
function goldenFiles(folder: string): readonly (readonly [name: string, texts: Texts])[] {
  const url = new URL(`../cases/${folder}/`, import.meta.url);
  return readdirSync(url).flatMap((name) => {
    if (!name.endsWith('.txt')) return [];
    const [head = ''] = readFileSync(new URL(name, url), 'utf8').split(/^==>\n/m);
    const parts = head.split(/^--- /m).slice(1);
    const texts = new Map(parts.map((part) => [part.slice(0, part.indexOf('\n')), part.slice(part.indexOf('\n') + 1)]));
    return texts.size === 0 ? [] : [[`${folder}/${name}`, texts] as const];
  });
}

function goldenTexts(): readonly (readonly [name: string, texts: Texts])[] {
  const url = new URL('../cases/syntax/', import.meta.url);
  return readdirSync(url).flatMap((file) =>
    readCases(new URL(file, url).pathname).map(({ name, input }) => [`${file} ${name}`, new Map([['case.due', input]])] as const),
  );
}

function conformanceSchedules(): readonly (readonly [name: string, texts: Texts])[] {
  const url = new URL('../conformance/cases/', import.meta.url);
  return readdirSync(url).flatMap((file) => {
    const { schedules } = JSON.parse(readFileSync(new URL(file, url), 'utf8')) as ConformanceFile;
    return Object.entries(schedules).map(([name, texts]) => [`${file} ${name}`, new Map(Object.entries(texts))] as const);
  });
}

describe('the parts', () => {
  const parts: readonly CompilerPart[] = Object.values(all);

  test('have between them every rule that not every compiler has', () => {
    const rules = [...refusals, ...parts.flatMap((part) => part.rules ?? [])];
    expect(new Set(rules)).toEqual(new Set(wholeExamination.rules));
    expect(rules).toHaveLength(wholeExamination.rules.length);
  });

  test('have between them all that makes a graph', () => {
    expect(Object.assign({}, ...parts.map(({ makers }) => makers))).toEqual(everyMaker);
  });
});

describe('the same graph or none', () => {
  test('of every schedule here', () => {
    const got = [...files.keys()].map((path) => {
      const whole = compile(path, (each) => files.get(each));
      return choices.map((parts) => hold(parts, path, files, whole).kind);
    });
    // What asks for nothing is compiled by every choice, and all that there is by all parts.
    expect(got.map((kinds) => kinds.at(-1))).not.toContain('refused');
    expect(got.flat()).toContain('compiled');
  });

  test('of every schedule of the conformance suite', { timeout: 60_000 }, () => {
    const kinds = conformanceSchedules().map(([, texts], index) => {
      const whole = compile('main.due', (each) => texts.get(each));
      return [[], choices[index % choices.length] ?? [], partNames].map((parts) => hold(parts, 'main.due', texts, whole).kind);
    });
    expect(kinds.length).toBeGreaterThan(100);
    expect(kinds.filter(([none]) => none === 'compiled').length).toBeGreaterThan(20);
  });

  test.each([...goldenFiles('compile'), ...goldenFiles('check'), ...goldenFiles('access'), ...goldenTexts()])('of %s', (_name, texts) => {
    const [path = ''] = texts.keys();
    const whole = compile(path, (each) => texts.get(each));
    for (const parts of choices) hold(parts, path, texts, whole);
  });

  test('of schedules with some of their words changed', { timeout: 60_000 }, () => {
    const counts = { refused: 0, graphs: 0, mistakes: 0 };
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.array(edit, { minLength: 1, maxLength: 3 }),
        // All of the short schedules have examples.
        fc.subarray(
          partNames.filter((part) => part !== 'examples'),
          { minLength: 2 },
        ),
        (name, edits, parts) => {
          const answer = hold(['examples', ...parts], name, new Map([...files, [name, bent(files.get(name) ?? '', edits)]]));
          if (answer.kind === 'refused') counts.refused += 1;
          else counts[answer.graph === null ? 'mistakes' : 'graphs'] += 1;
        },
      ),
      { numRuns: 500 },
    );
    expect(Math.min(...Object.values(counts))).toBeGreaterThan(5);
  });
});

describe('what is refused', () => {
  const header = 'schedule s "S"\nlanguage 1\nfits model "M"\nmeter engine "Hours" counts h\n';
  const asking: readonly (readonly [CompilerPartName, string, string])[] = [
    ['conditions', 'task a "A"\n  when date from 1 April to 1 May\n', 'date'],
    ['findings', 'gauge coolant "Coolant" reads °C\n', 'gauge'],
    ['findings', 'dipstick oil "Oil" low to full is 1 L\n', 'dipstick'],
    ['findings', 'defect seep "Seep"\n', 'defect'],
    ['access', 'position guard closed, open\n', 'position'],
    ['access', 'place front "Front"\n', 'place'],
    ['examples', 'task a "A"\n  every 5 h of engine\nexample "E"\n  2026-03-02 engine 5 h\n', 'example'],
    ['weekdayMarks', 'task a "A"\n  every month on the first Monday\n', 'month'],
    ['weekdayMarks', 'task b "B"\n  every 2 weeks on Monday from 2026-03-02\n', '2'],
    ['files', 'attachment mower "Mower" follows "mower.due"\n', '"mower.due"'],
    ['files', 'change task a every 10 h of engine\n', 'change task a every 10 h of engine'],
  ];

  test.each(asking)('%s, with the place: %s', (part, body, words) => {
    const text = header + body;
    const answer = compilerWith([]).compile('s.due', () => text);
    if (answer.kind !== 'refused') throw new Error('compiled');
    const [lack] = answer.lacks;
    expect(answer.lacks).toHaveLength(1);
    expect(lack).toMatchObject({ code: 'part-not-carried', part, help: `Give \`compilerWith\` the part \`${part}\`, or use \`compile\`.` });
    expect(text.slice(lack?.at.start, lack?.at.end)).toBe(words);
    expect(lack?.message).toMatch(/^[A-Z].* read by `\w+`, which this compiler was not given\.$/);
  });

  test.each(asking)('%s, but not by a compiler that has that part: %s', (part, body) => {
    const mower = 'schedule m "M"\nlanguage 1\nfor attachment\ntask belt "Belt"\n  every 12 months\n';
    const load = (path: string) => (path === 's.due' ? header + body : mower);
    const { graph } = compile('s.due', load);
    expect(compilerWith([all[part]]).compile('s.due', load)).toMatchObject({ kind: 'compiled', graph });
  });

  test('of several files, wherever among others that part is named', () => {
    const whole = 'schedule s "S"\nlanguage 1\nfits model "M"\nuse "more"\n';
    const load = (path: string) => (path === 's.due' ? whole : 'part more "More"\ntask belt "Belt"\n  every 12 months\n');
    const { graph } = compile('s.due', load);
    expect(graph?.tasks).toHaveLength(1);
    for (const parts of [
      [all.files, all.conditions],
      [all.conditions, all.files],
    ]) {
      expect(compilerWith(parts).compile('s.due', load)).toMatchObject({ kind: 'compiled', graph });
    }
  });

  test('and what is wrong has no graph: by a rule that every compiler has, and by the proof that comes with access', () => {
    const allowed = `${header}task oil "Oil"\n  every 100 h of engine\n  allow 100 h late\n`;
    const shut = `${header}position guard closed, open\nat rest guard closed\ntask belt "Belt"\n  every 12 months\n  with guard open\n`;
    const told = (parts: readonly CompilerPart[], text: string) => {
      const answer = compilerWith(parts).compile('s.due', () => text);
      return answer.kind === 'compiled' && answer.graph === null && firstMistake(answer)?.code;
    };
    expect(told([], allowed)).toBe('DW265');
    expect(told([all.conditions, all.access], shut)).toMatch(/^DW4/);
  });

  test('and a name in an example that means nothing is found by a compiler that reads examples, wherever among others that part is named', () => {
    const text = `${header}task oil "Oil"\n  every 100 h of engine\nexample "E"\n  2026-03-02 done oyl\n  expect oil clear\n`;
    for (const parts of [[all.examples], [all.conditions, all.examples]]) {
      const answer = compilerWith(parts).compile('s.due', () => text);
      expect(answer.kind === 'compiled' && answer.diagnostics.map(({ code }) => code)).toContain('DW220');
    }
  });

  test('all of it at once', () => {
    const text = `${header}use "other"\n${asking.map(([, body]) => body).join('')}`;
    const answer = compilerWith([]).compile('s.due', () => text);
    if (answer.kind !== 'refused') throw new Error('compiled');
    expect(new Set(answer.lacks.map(({ part }) => part))).toEqual(
      new Set(['conditions', 'findings', 'access', 'examples', 'files', 'weekdayMarks']),
    );
  });

  test('what asks for nothing is compiled by a compiler of nothing', () => {
    const text = `${header}task oil "Oil"\n  every 100 h of engine or 12 months, whichever first\ntask tax "Tax"\n  every month on day 15\n`;
    const answer = compilerWith([]).compile('s.due', () => text);
    expect(answer).toEqual({ kind: 'compiled', ...compile('s.due', () => text) });
  });
});

describe('how mistakes are told', () => {
  const text = 'schedule s "S"\nlanguage 1\nfits model "M"\nmeter engine "Hours" counts h\ntask oil "Oil"\n  evry 100 h of engine\n';

  test('without advice by what was found', () => {
    const answer = compilerWith([]).compile('s.due', () => text);
    expect(answer).toMatchObject({ kind: 'compiled', graph: null });
    expect(answer.kind === 'compiled' && answer.diagnostics.map(({ message }) => message)).toEqual([
      '`evry` begins no clause or declaration and does not go on with the one before it.',
    ]);
  });

  test('with it by what was meant', () => {
    const answer = compilerWith([all.advice]).compile('s.due', () => text);
    expect(answer.kind === 'compiled' && answer.diagnostics[0]?.message).toBe('`evry` is not a word that fits here, but `every` is.');
  });
});
