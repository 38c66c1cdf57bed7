import { defineConfig } from 'vitest/config';

/** What takes too long, or needs too much of a machine, for every run: `npx vitest run --config tests/long.config.ts`. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.long.ts'],
    testTimeout: 1_800_000,
    env: { NO_COLOR: '', FORCE_COLOR: '' },
  },
});
