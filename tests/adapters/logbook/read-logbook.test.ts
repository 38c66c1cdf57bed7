import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memoryLogbook } from '../../../src/adapters/logbook/memory-logbook.js';
import { readLogbook, readLogbookBytes } from '../../../src/adapters/logbook/read-logbook.js';
import { verifyLogbook } from '../../../src/adapters/logbook/verify-logbook.js';
import { PLAIN, reading, steadyChance } from './support/fixtures.js';

async function written(count: number, start = ''): Promise<string> {
  const logbook = memoryLogbook(steadyChance(), start);
  for (let number = 0; number < count; number += 1) await logbook.append([reading(number)]);
  return logbook.text();
}

describe('reading a logbook', () => {
  it('loads lines written by hand, without number, hash or id', () => {
    const logbook = readLogbook(PLAIN);
    expect(logbook.problems).toEqual([]);
    expect(logbook.lines.map((line) => line.kind)).toEqual(['plain', 'plain']);
    expect(logbook.entries.map((entry) => entry.kind)).toEqual(['machine', 'reading']);
    expect(logbook.entries[1]?.id).toMatch(/^plain-[0-9a-f]{12}$/);
    expect(logbook.head).toBeNull();
  });

  it('uses nothing of a logbook that is longer than it was told to read, and all of one that is not', () => {
    const { length } = readLogbook(PLAIN).entries;
    expect(readLogbook(PLAIN, { lines: length }).entries).toHaveLength(length);
    for (const limits of [{ lines: length - 1 }, { characters: PLAIN.length - 1 }]) {
      const { entries, problems } = readLogbook(PLAIN, limits);
      expect(entries).toEqual([]);
      expect(problems).toMatchObject([{ kind: 'unreadable', line: 1, what: expect.stringContaining('past the limit of') as string }]);
    }
  });

  it('gives two equal hand-written lines two ids: doing a thing twice is two entries', () => {
    const line = '{"on":"2026-05-12","kind":"refuelled","litres":40}';
    expect(new Set(readLogbook(`${line}\n${line}\n`).entries.map((entry) => entry.id)).size).toBe(2);
  });

  it('tells of a member that no entry of the kind has, once a name, with the name that is near; uses the rest', () => {
    const line = '{"on":"2026-05-12","kind":"reading","meter":{"engine":1300},"tyres":"soft"}';
    const { entries, problems } = readLogbook(`${line}\n${line}\n`);
    expect(entries).toHaveLength(2);
    expect(problems).toEqual([
      { kind: 'strange-member', line: 1, name: 'meter', meant: 'meters' },
      { kind: 'strange-member', line: 1, name: 'tyres', meant: null },
    ]);
  });

  it('keeps such a member of an entry that is recorded', async () => {
    const logbook = memoryLogbook(steadyChance());
    await logbook.append([{ ...reading(1), tyres: 'soft', hash: 'made up' } as never]);
    const text = logbook.text();
    expect(JSON.parse(text)).toMatchObject({ tyres: 'soft', seq: 1 });
    expect(text).not.toContain('made up');
    expect(verifyLogbook(readLogbook(text)).verdict).toBe('intact');
  });

  it('chains by a hash that anybody can work out: SHA-256 by node:crypto', async () => {
    const lines = (await written(2, PLAIN)).trimEnd().split('\n');
    const sha = (text: string): string => createHash('sha256').update(text).digest('hex');
    const hashOf = (line = ''): string => /"hash":"(\w+)"/.exec(line)?.[1] ?? '';
    const bare = (line = ''): string => line.replace(/,"hash":"\w+"/, '');
    expect(hashOf(lines[2])).toBe(sha(`\n${lines[0]}\n${lines[1]}\n${bare(lines[2])}`));
    expect(hashOf(lines[3])).toBe(sha(`${hashOf(lines[2])}\n${bare(lines[3])}`));
  });

  it('numbers chained lines on from the plain ones before them', async () => {
    const { lines, head } = readLogbook(await written(2, PLAIN));
    expect(lines.map((line) => (line.kind === 'chained' ? line.seq : 0))).toEqual([0, 0, 3, 4]);
    expect(head?.seq).toBe(4);
  });

  it('shows a change of any character of any covered line', async () => {
    const text = await written(2, PLAIN);
    const plain = text.slice(0, PLAIN.length);
    for (let at = 0; at < text.length - 1; at += 1) {
      if (text[at] === '\n') continue;
      const changed = `${text.slice(0, at)}${text[at] === '7' ? '8' : '7'}${text.slice(at + 1)}`;
      const verification = verifyLogbook(readLogbook(changed), readLogbook(text).head ?? undefined);
      expect(verification.verdict, `character ${at} of ${plain.length}+`).not.toBe('intact');
    }
  });

  it('shows a line taken out, put in, or swapped', async () => {
    const lines = (await written(4)).trimEnd().split('\n');
    const verdict = (changed: readonly (string | undefined)[]): string => verifyLogbook(readLogbook(`${changed.join('\n')}\n`)).verdict;
    expect(verdict(lines)).toBe('intact');
    expect(verdict([lines[0], lines[2], lines[3]])).toBe('changed');
    expect(verdict([lines[0], PLAIN.split('\n')[1], ...lines.slice(1)])).toBe('changed');
    expect(verdict([lines[0], lines[2], lines[1], lines[3]])).toBe('changed');
  });

  it('shows an end cut off, if the head was noted', async () => {
    const text = await written(3);
    const head = readLogbook(text).head ?? undefined;
    const cut = text.split('\n').slice(0, 2).join('\n');
    expect(verifyLogbook(readLogbook(cut)).verdict).toBe('intact');
    expect(verifyLogbook(readLogbook(cut), head).verdict).toBe('cut-short');
    expect(verifyLogbook(readLogbook(text), head).verdict).toBe('intact');
  });

  it('names the line that was changed, and only that one', async () => {
    const lines = (await written(3)).split('\n');
    lines[1] = (lines[1] ?? '').replace('1300.1', '1200.1');
    const { problems, entries } = readLogbook(lines.join('\n'));
    expect(problems).toEqual([{ kind: 'changed', line: 2, acceptedAt: null }]);
    expect(entries).toHaveLength(3);
  });

  it('tells two copies laid together from a change', async () => {
    const base = await written(1);
    const one = memoryLogbook(steadyChance(1), base);
    const two = memoryLogbook(steadyChance(2), base);
    await one.append([reading(10)]);
    await two.append([reading(20)]);
    await two.append([reading(21)]);
    const { problems, entries } = readLogbook(one.text() + two.text().slice(base.length));
    expect(problems).toEqual([{ kind: 'fork', line: 3, from: 1 }]);
    expect(entries).toHaveLength(4);
  });

  it('reads the same through carriage returns, blank lines at the end and a byte order mark', async () => {
    const text = await written(3, PLAIN);
    expect(readLogbook(`\uFEFF${text.replaceAll('\n', '\r\n')}\r\n\r\n`)).toMatchObject({
      entries: readLogbook(text).entries,
      problems: [],
    });
  });

  it('keeps and reports what is no entry', () => {
    const { problems, entries } = readLogbook(`<<<<<<< ours\n{"kind":"sung","on":"2026-05-12","id":"x"}\n${PLAIN}`);
    expect(problems.map((problem) => [problem.kind, problem.line])).toEqual([
      ['unreadable', 1],
      ['unreadable', 2],
    ]);
    expect(entries).toHaveLength(2);
  });

  it('keeps both of two entries under one id', () => {
    const { problems, entries } = readLogbook(
      '{"on":"2026-05-12","kind":"reading","id":"a","meters":{"engine":1}}\n{"on":"2026-05-12","kind":"reading","id":"a","meters":{"engine":2}}',
    );
    expect(entries.map((entry) => entry.meters?.['engine'])).toEqual([1, 2]);
    expect(new Set(entries.map((entry) => entry.id)).size).toBe(2);
    expect(problems[0]).toMatchObject({ kind: 'same-id', line: 2, id: 'a', kept: entries[1]?.id });
  });

  it('reads any bytes whatever without throwing', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => void readLogbookBytes(bytes)));
    fc.assert(fc.property(fc.array(fc.json()), (lines) => void readLogbook(lines.join('\n'))));
  });
});
