/** How much is told of a schedule that is wrong in very many places, and how long names are looked for. */
import { describe, expect, test } from 'vitest';
import { nearNames } from '../../src/base/near-name.js';
import { check } from '../../src/check/check.js';
import { LiveCheck } from '../../src/check/live-check.js';

const head = 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\n';
const tasks = (count: number, covered: (index: number) => string): string =>
  head + Array.from({ length: count }, (_, index) => `task task-${index} "T" every 1 month covers ${covered(index)}\n`).join('');

describe('very many mistakes', () => {
  test('a hundred are told as they are', () => {
    const { diagnostics } = check('a.due', () => tasks(100, (index) => `nothing-${index}`));
    expect(diagnostics).toHaveLength(100);
    expect(diagnostics.every(({ code }) => code === 'DW220')).toBe(true);
  });

  test('of more the first hundred in reading order, and that there are more', () => {
    const text = tasks(150, (index) => `nothing-${index}`);
    const { diagnostics } = check('a.due', () => text);
    expect(diagnostics).toHaveLength(101);
    expect(diagnostics.filter(({ code }) => code === 'DW220').map(({ at }) => text.slice(at.start, at.end))).toEqual(
      Array.from({ length: 100 }, (_, index) => `nothing-${index}`),
    );
    expect(diagnostics.filter(({ code }) => code === 'DW204').map(({ at }) => text.slice(at.start, at.end))).toEqual(['nothing-99']);
  });

  test('the host may set another number', () => {
    const { diagnostics } = check('a.due', () => tasks(30, () => 'nothing'), { limits: { mistakes: 10 } });
    expect(diagnostics).toHaveLength(11);
  });

  test('a schedule that is edited is told of as one that is read anew', () => {
    const live = new LiveCheck();
    for (const [count, wrong] of [
      [300, 150],
      [300, 151],
      [300, 20],
      [300, 299],
      [90, 0],
    ] as const) {
      const text = tasks(count, (index) => (index >= wrong ? `task-${(index + 1) % count}x` : `task-${(index + 1) % count}`));
      expect(live.check('a.due', () => text).diagnostics).toEqual(check('a.due', () => text).diagnostics);
    }
  });

  test('past the limit on rules nothing else is looked for', () => {
    const { diagnostics, model } = check('a.due', () => tasks(6, () => 'nothing'), { limits: { rules: 5 } });
    expect(diagnostics.map(({ code }) => code)).toEqual(['DW204']);
    expect(model?.declarations).toHaveLength(5);
  });
});

describe('patience', () => {
  const names = Array.from({ length: 10 }, (_, index) => `engine-oil-${index}`);

  test('is spent by comparing', () => {
    const patience = { left: 25 };
    expect(nearNames('engine-oil-x', names, patience)).toHaveLength(10);
    expect(patience.left).toBe(15);
  });

  test('at its end no name is offered, not even those that were looked at', () => {
    expect(nearNames('engine-oil-x', names, { left: 9 })).toEqual([]);
    expect(nearNames('engine-oil-x', names, { left: 10 })).toHaveLength(10);
  });

  test('names of quite another length cost nothing', () => {
    const patience = { left: 1 };
    expect(nearNames('oil', [...names, 'oils'], patience)).toEqual(['oils']);
  });
});
