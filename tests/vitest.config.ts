import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/**/consumers/**'],
    testTimeout: 30_000,
  },
});
