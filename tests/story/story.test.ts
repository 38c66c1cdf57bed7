import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCommandLine } from '../../src/adapters/cli/run-command-line.js';
import type { Shell } from '../../src/adapters/cli/shell.js';
import { readLogbook } from '../../src/adapters/logbook/read-logbook.js';
import { root } from '../adapters/cli/built-command.js';
import { shown } from '../adapters/cli/case-file.js';
import type { Moment } from '../../src/values/moment.js';
import { moment } from '../support/history.js';
import { readStory, wordsOf } from './read-story.js';

const PATH = `${root}docs/story.md`;
const markdown = readFileSync(PATH, 'utf8');
const steps = readStory(markdown);
/** As for the golden cases: writes what the commands say now. */
const update = (process.env['UPDATE_CASES'] ?? '') !== '';

let folder = '';
let answers: ReadonlyMap<string, string> = new Map();
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'duewright-story-'));
  answers = await playThrough();
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the whole story on files of its own: place in the text → what the command said. */
async function playThrough(): Promise<ReadonlyMap<string, string>> {
  const said = new Map<string, string>();
  let now = moment('2024-03-02');
  for (const step of steps) {
    if (step.kind === 'today') now = moment(step.when);
    else if (step.kind === 'file') writeFileSync(join(folder, step.name), step.text);
    else said.set(String(step.from), await answerTo(step.command, now));
  }
  return said;
}

async function answerTo(command: string, now: Moment): Promise<string> {
  let [out, err] = ['', ''];
  const shell: Shell = {
    env: { LANG: 'en_GB.UTF-8' },
    now: () => now,
    columns: undefined,
    out: (text) => void (out += text),
    err: (text) => void (err += text),
  };
  const [program, ...args] = wordsOf(command);
  expect(program, command).toBe('duewright');
  const code = await runCommandLine(args.map(inFolder), shell);
  return timeless(shown({ code, out, err }));
}

/** The owner's own files stand in the test's folder, the schedule where it is published. */
function inFolder(word: string): string {
  if (word === 'meadow-tractor.due') return `${root}docs/story/meadow-tractor.due`;
  return /^[a-z0-9-]+\.(jsonl|csv|html|ics)$/.test(word) ? join(folder, word) : word;
}

/** Without what is different every time: ids, hashes, the folder. */
function timeless(text: string): string {
  return text
    .replaceAll(`${folder}/`, '')
    .replaceAll('\uFEFF', '')
    .replaceAll(/\b[0-9a-z]{9}-[0-9a-z]{7}\b/g, 'ID')
    .replaceAll(/\b[0-9a-f]{64}\b/g, 'HASH')
    .trimEnd();
}

test.skipIf(update)('every command of the story answers as the guide shows', () => {
  const commands = steps.filter((step) => step.kind === 'command');
  expect(commands.length).toBeGreaterThan(20);
  for (const { command, answer, from } of commands) expect(answer.trimEnd(), command).toBe(answers.get(String(from)));
});

test.runIf(update)('the guide is written', () => {
  let text = markdown;
  for (const step of steps.toReversed()) {
    if (step.kind !== 'command') continue;
    const said = answers.get(String(step.from)) ?? '';
    text = text.slice(0, step.from) + (said === '' ? '' : `${said}\n`) + text.slice(step.to);
  }
  writeFileSync(PATH, text);
});

describe('what the story must show', () => {
  const answersTo = (part: string): string =>
    steps
      .flatMap((step) => (step.kind === 'command' && step.command.includes(part) ? [answers.get(String(step.from)) ?? ''] : []))
      .join('\n');

  test('what nobody knows is unrecorded, never clear', () => {
    expect(answersTo('due meadow-tractor.due ours.jsonl')).toContain('Unrecorded');
  });

  test('a seep tightens what the schedule says, and mending it loosens that again', () => {
    const watched = answersTo('why meadow-tractor.due ours.jsonl hydraulic-oil-level');
    expect(watched).toContain('4 h of engine');
    expect(watched).toMatch(/is due[\s\S]*is clear/);
  });

  test('a late service is shown as late, to the owner and to the buyer', () => {
    expect(answersTo('due meadow-tractor.due ours.jsonl')).toContain('Overdue');
    expect(answersTo('export record-table')).toMatch(/late by \d+(\.\d+)? h/);
  });

  test('the logbook holds two years and stands as it was written', () => {
    const { entries, problems } = readLogbook(readFileSync(join(folder, 'ours.jsonl'), 'utf8'));
    expect(problems).toEqual([]);
    expect(entries.length).toBeGreaterThan(50);
    expect(new Set(entries.map(({ on }) => on.slice(0, 4)))).toEqual(new Set(['2024', '2025', '2026']));
    expect(answersTo('verify')).toContain('Every chained line stands as it was written.');
  });

  test('the pages are complete in themselves', () => {
    for (const name of ['service-record.html', 'year.html']) {
      const page = readFileSync(join(folder, name), 'utf8');
      expect(page).toContain("default-src 'none'");
      expect(page).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    }
  });
});
