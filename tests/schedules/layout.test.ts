/** Our own schedules stand as `duewright tidy` lays them out. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { format } from '../../src/format/format.js';

const folder = fileURLToPath(new URL('../../schedules/', import.meta.url));
const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.due'));

test('there are schedules to look at', () => expect(paths.length).toBeGreaterThan(20));

test.each(paths)('%s', (path) => {
  const text = readFileSync(`${folder}${path}`, 'utf8');
  expect(format(text)).toMatchObject({ text });
});
