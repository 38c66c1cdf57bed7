import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { compileFiles, triggerOf } from './compile-files.js';

const host = `schedule tractor "Tractor" language 1 fits model "Tarn 55"
use "common/diesel"
meter shaft "Shaft" counts h
attachment mower "Flail mower" follows "mower.due"
task joint "Grease the joint" every 10 h of shaft
task grease "Grease" every 50 h of engine`;
const diesel = 'part diesel "Diesel"\nmeter engine "Engine" counts h\ntask oil "Oil" every 100 h of engine';
const mower = `schedule mower "Flail mower" language 1 for attachment
meter rotor "Rotor" counts h from outings
duty tall "Tall growth"
task flails "Look at the flails" every 8 h of rotor in tall every 4 h of rotor follows oil
task belt "Look at the belt" every 50 h of engine`;

describe('files', () => {
  test("a part's declarations are the schedule's own", () => {
    const { graph, diagnostics } = compileFiles({ 'm/tractor.due': host, 'm/common/diesel.due': diesel, 'm/mower.due': mower });
    expect(diagnostics).toEqual([]);
    expect(graph?.tasks.map(({ id }) => id)).toEqual(['oil', 'joint', 'grease', 'mower.flails', 'mower.belt']);
    expect(graph?.sources.map(({ path }) => path)).toEqual(['m/tractor.due', 'm/common/diesel.due', 'm/mower.due']);
  });

  test("an attachment's schedule is mounted under its name, and finds on the machine what it lacks", () => {
    const { graph } = compileFiles({ 'tractor.due': host, 'common/diesel.due': diesel, 'mower.due': mower });
    if (graph === null) throw new Error('no graph');
    const flails = graph.tasks.find(({ id }) => id === 'mower.flails');
    expect(flails).toMatchObject({ attachment: 'mower', follows: ['oil'] });
    expect(graph.meters.map(({ id, attachment }) => [id, attachment])).toEqual([
      ['engine', undefined],
      ['shaft', undefined],
      ['mower.rotor', 'mower'],
    ]);
    expect(triggerOf(graph, 'mower.flails')).toMatchObject({ kind: 'duty-mix', meter: 'mower.rotor', duties: [{ duty: 'mower.tall' }] });
    expect(triggerOf(graph, 'mower.belt')).toMatchObject({ amount: { meter: 'engine' } });
  });

  test("the machine names an attachment's things with a dot", () => {
    const named = `${host}\ntask wash "Wash" every 20 h of mower.rotor`;
    const { graph, diagnostics } = compileFiles({ 'tractor.due': named, 'common/diesel.due': diesel, 'mower.due': mower });
    expect(diagnostics).toEqual([]);
    expect(graph && triggerOf(graph, 'wash')).toMatchObject({ amount: { meter: 'mower.rotor' } });
  });

  test('one schedule mounted twice gives two sets of names', () => {
    const two =
      'schedule t "T" language 1 fits model "x"\nmeter engine "E" counts h\nattachment left "L" follows "m"\nattachment right "R" follows "m"\ntask t "T" every 5 h of engine';
    const { graph } = compileFiles({
      't.due': two,
      'm.due': 'schedule m "M" language 1 for attachment\nmeter r "R" counts h\ntask a "A" every 5 h of r',
    });
    expect(graph?.tasks.map(({ id }) => id)).toEqual(['t', 'left.a', 'right.a']);
    expect(graph && triggerOf(graph, 'right.a')).toMatchObject({ amount: { meter: 'right.r' } });
  });

  test("an attachment's schedule that needs nothing of a machine compiles by itself", () => {
    const { graph } = compileFiles({
      'm.due': 'schedule m "M" language 1 fits model "Sedge" for attachment\nmeter r "R" counts h\ntask a "A" every 5 h of r',
    });
    expect(graph?.schedule.forAttachment).toBe(true);
    expect(graph?.tasks[0]).not.toHaveProperty('attachment');
  });

  test('a variant replaces clauses of the kinds it writes, removes, adds, and has its own header', () => {
    const variant = `variant narrow "Narrow" language 1 fits model "Tarn 55 N" varies "tractor"
      change task grease "Grease twice" every 25 h of engine
      remove task joint
      task hitch "Hitch" every 10 h of engine`;
    const { graph, diagnostics } = compileFiles({
      'narrow.due': variant,
      'tractor.due':
        'schedule tractor "Tractor" language 1 fits model "Tarn 55"\nmeter engine "E" counts h\ntask grease "Grease" every 50 h of engine takes 5 min\ntask joint "Joint" every 10 h of engine',
    });
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(graph?.schedule).toMatchObject({ name: 'narrow', fits: [{ model: 'Tarn 55 N' }] });
    expect(graph?.tasks.map(({ id, title, site }) => [id, title, site.seconds])).toEqual([
      ['grease', 'Grease twice', 300],
      ['hitch', 'Hitch', 0],
    ]);
    expect(graph && triggerOf(graph, 'grease')).toMatchObject({ amount: { ticks: 25 * 36000 } });
  });

  test("the host is asked for nothing outside the schedule's folder", () => {
    const asked: string[] = [];
    const bad = ['../x', '/x', 'a/../../x', 'file:x', 'C:\\x', 'a\\b', 'http://x/y', './x', 'a//b', '', '%2e%2e/x', '~/x'];
    for (const path of bad) {
      const text = `schedule t "T" language 1 use "${path.replace(/\\/g, '\\\\')}"`;
      const { diagnostics } = compile('f/t.due', (name) => (asked.push(name), name === 'f/t.due' ? text : undefined));
      expect(
        diagnostics.map(({ code }) => code),
        path,
      ).toContain('DW202');
    }
    expect(new Set(asked)).toEqual(new Set(['f/t.due']));
  });

  test('limits are bounded, and the diagnostic names the limit and the culprit', () => {
    const many =
      'schedule t "T" language 1 fits model "x" meter engine "E" counts h\n' +
      Array.from({ length: 30 }, (_, n) => `task t${n} "T" every 5 h of engine`).join('\n');
    const { graph, diagnostics } = compile('t.due', () => many, { limits: { rules: 20 } });
    expect(graph).toBeNull();
    expect(diagnostics[0]).toMatchObject({
      code: 'DW204',
      message: 'A schedule may hold at most 20 rules, and this task of `t.due`, line 21 goes past that.',
    });
    const wide = 'schedule t "T" language 1 use "a" use "b" use "c"';
    const files = compile('t.due', (path) => (path === 't.due' ? wide : `part ${path[0]} "P"`), { limits: { files: 3 } });
    expect(files.diagnostics.find(({ code }) => code === 'DW204')?.message).toContain('`c`');
  });

  test('a missing file is a diagnostic', () => {
    expect(compile('none.due', () => undefined)).toMatchObject({ graph: null, model: null, diagnostics: [{ code: 'DW201' }] });
  });
});
