import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

test('what is made from something else is what `npm run generate` makes', () => {
  const { status, stderr } = spawnSync(process.execPath, ['.scripts/generate.mjs', '--check'], { cwd: root, encoding: 'utf8', env: {} });
  expect(stderr).toBe('');
  expect(status).toBe(0);
});
