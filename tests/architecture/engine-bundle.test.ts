import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { bundleEngine } from '../support/bundle-engine.js';

test('a bundle of the engine runs in a browser and holds no parser', async () => {
  const { text, inputs } = await bundleEngine();
  expect(inputs).toContain('src/assess/assess.ts');
  expect(inputs.filter((path) => /chevrotain|^src\/(syntax|check|compile|format|adapters)\//.test(path))).toEqual([]);
  expect(gzipSync(text).length, 'gzip bytes of the engine').toBeLessThan(66_000);
});
