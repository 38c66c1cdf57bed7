/** The host's own SHA-256 in the place of ours. */
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';

const text = 'schedule t "T — 2" language 1 edition 1 of 2026-01-01 by "B" fits model "M" task a "Ä 漢" every 1 month';

test('gives the same graph, and is asked for nothing but the graph and the sources', () => {
  const hashed: string[] = [];
  const sha256 = (of: string): string => {
    hashed.push(of);
    return createHash('sha256').update(of).digest('hex');
  };
  const { graph } = compile('t.due', () => text, { sha256 });
  expect(graph).not.toBeNull();
  expect(graph).toEqual(compile('t.due', () => text).graph);
  expect(hashed).toHaveLength(2);
});
