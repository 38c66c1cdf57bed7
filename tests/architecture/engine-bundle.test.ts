import { gzipSync } from 'node:zlib';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

test('a bundle of the engine runs in a browser and holds no parser', async () => {
  const result = await build({
    absWorkingDir: root,
    entryPoints: ['src/engine.ts'],
    bundle: true,
    minify: true,
    // With this platform esbuild fails on an import of Node's own modules.
    platform: 'browser',
    format: 'esm',
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  const inputs = Object.keys(result.metafile.inputs);
  expect(inputs).toContain('src/assess/assess.ts');
  expect(inputs.filter((path) => /chevrotain|^src\/(syntax|check|compile|format|adapters)\//.test(path))).toEqual([]);
  const size = gzipSync(result.outputFiles[0]?.contents ?? '').length;
  expect(size, 'gzip bytes of the engine').toBeLessThan(64_000);
});
