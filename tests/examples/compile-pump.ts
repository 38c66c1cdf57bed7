import { readFileSync } from 'node:fs';
import { compile } from '../../src/compile/compile.js';
import type { Compiled } from '../../src/compile/graph-of.js';

const text = readFileSync(new URL('../cases/examples/pump.due', import.meta.url), 'utf8');

/** The pump of tests/cases/examples with these examples in the place of its own. */
export function pumpWith(examples: string): Compiled {
  const compiled = compile('pump.due', () => `${text.slice(0, text.indexOf('example "holds"'))}${examples}`);
  if (compiled.graph === null) throw new Error(compiled.diagnostics.map(({ message }) => message).join('\n'));
  return compiled;
}

/** The pump as it stands. */
export function pump(): Compiled {
  return compile('pump.due', () => text);
}
