import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { objections } from '../../support/objections.js';
import { buildCommand, type BuiltCommand, root } from './built-command.js';

const files = `${root}tests/cases/cli/files/`;
let built: BuiltCommand;
beforeAll(async () => {
  built = await buildCommand();
});
afterAll(() => built.remove());

function answer(args: readonly string[]): unknown {
  return JSON.parse(built.run(args).out);
}

describe('tidy', () => {
  test('writes the layout, names the file, and has nothing to do the second time', () => {
    const file = join(built.scratch, 'untidy.due');
    copyFileSync(`${files}untidy.due`, file);
    expect(built.run(['tidy', file])).toEqual({ code: 0, out: `${file}\n`, err: '' });
    expect(readFileSync(file, 'utf8')).toBe(
      'schedule pump "Irrigation pump"\n  language 1\n  fits model "P 1"\n\nmeter engine "Hours" counts h  # read it at the fuel stop\n\ntask oil "Change the oil"\n  every 100 h of engine\n',
    );
    expect(built.run(['tidy', file])).toEqual({ code: 0, out: '', err: '' });
    expect(built.run(['tidy', '--check', file])).toEqual({ code: 0, out: '', err: '' });
  });

  test('leaves a file with a mistake as it is', () => {
    const file = join(built.scratch, 'unreadable.due');
    copyFileSync(`${files}unreadable.due`, file);
    expect(built.run(['tidy', file]).code).toBe(1);
    expect(readFileSync(file, 'utf8')).toBe(readFileSync(`${files}unreadable.due`, 'utf8'));
  });

  test('lays the standard input out to the standard output', () => {
    const { code, out } = built.run(['tidy', '-'], { input: 'schedule a "A" language 1' });
    expect({ code, out }).toEqual({ code: 0, out: 'schedule a "A"\n  language 1\n' });
  });
});

describe('--json answers by the published schemas', () => {
  test('prove', () => {
    expect(objections('examples', answer(['prove', 'tests/cases/examples/pump.due', '--json', '--coverage']))).toEqual([]);
  });

  test('changes', () => {
    const editions = ['tests/cases/examples/pump.due', 'tests/cases/cli/files/pump-2.due'] as const;
    expect(
      objections('comparison', answer(['changes', ...editions, 'tests/cases/cli/files/pump.jsonl', '--on', '2026-05-03', '--json'])),
    ).toEqual([]);
  });
});

describe('check --sarif', () => {
  test('writes a log with paths from the current folder', () => {
    const file = join(built.scratch, 'check.sarif');
    expect(built.run(['check', 'tests/cases/cli/files/water-pump-wrong.due', '--sarif', file]).code).toBe(1);
    const log = readFileSync(file, 'utf8');
    expect(log).toContain('"uri": "tests/cases/cli/files/water-pump-wrong.due"');
    expect(log).not.toContain(root);
  });

  test('names a file that lies elsewhere by its whole URI', () => {
    const file = join(built.scratch, 'wrong.due');
    writeFileSync(file, 'schedule a "A"');
    const { out } = built.run(['check', file, '--json', '--sarif', join(built.scratch, 'elsewhere.sarif')]);
    expect(out).toContain('DW207');
    expect(readFileSync(join(built.scratch, 'elsewhere.sarif'), 'utf8')).toContain('"uri": "file:///');
  });
});
