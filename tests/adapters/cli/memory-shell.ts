import { dayNumber } from '../../../src/values/civil.js';
import type { Shell } from '../../../src/adapters/cli/shell.js';

/** A shell that remembers what was said; its clock stands at 2026-06-15 07:30. */
export function memoryShell(
  changes: Partial<Pick<Shell, 'env' | 'columns'>> = {},
): Shell & { readonly said: { out: string; err: string } } {
  const said = { out: '', err: '' };
  return {
    env: changes.env ?? { LANG: 'en_GB.UTF-8' },
    columns: changes.columns,
    now: () => ({ day: dayNumber({ year: 2026, month: 6, day: 15 }), minute: 450 }),
    out: (text) => void (said.out += text),
    err: (text) => void (said.err += text),
    said,
  };
}
