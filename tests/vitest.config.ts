import { defineConfig } from 'vitest/config';
import { findChromium } from '../.ci/chromium.mjs';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/seed.ts'],
    exclude: ['**/node_modules/**', 'tests/**/consumers/**'],
    testTimeout: 30_000,
    // What a test spawns must look the same on every machine.
    env: { CHROMIUM: (await findChromium()) ?? '', NO_COLOR: '', FORCE_COLOR: '' },
  },
});
