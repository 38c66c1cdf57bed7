/**
 * The parser with Chevrotain in the place of our own reader of rules, beside the parser as it is.
 */
import { vi } from 'vitest';
import type { machinery } from '../../src/syntax/whole-machinery.js';
import type { parse } from '../../src/syntax/parse.js';

/** The modules of the parser, as one of the two readers makes them. */
export interface Readings {
  readonly parse: typeof parse;
  readonly machinery: typeof machinery;
}

export async function ourReading(): Promise<Readings> {
  vi.resetModules();
  vi.doUnmock('../../src/syntax/rule-reader.js');
  return readings();
}

export async function readingOnChevrotain(): Promise<Readings> {
  vi.resetModules();
  vi.doMock('../../src/syntax/rule-reader.js', () => import('./chevrotain-reader.js'));
  return readings();
}

async function readings(): Promise<Readings> {
  const doors = [import('../../src/syntax/parse.js'), import('../../src/syntax/whole-machinery.js')] as const;
  const [{ parse }, { machinery }] = await Promise.all(doors);
  return { parse, machinery };
}
