const folder = process.env.MUTATED ?? 'history';

export default {
  mutate: [`src/${folder}/**/*.ts`],
  testRunner: 'in-process',
  plugins: ['./tests/mutation/in-process-runner.mjs'],
  coverageAnalysis: 'perTest',
  concurrency: 1,
  incremental: true,
  incrementalFile: `.cache/mutation/${folder}.incremental.json`,
  tempDirName: '.cache/mutation/sandbox',
  reporters: ['json', 'clear-text', 'progress-append-only'],
  jsonReporter: { fileName: `.cache/mutation/${folder}.json` },
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  ignorePatterns: ['dist', 'docs', 'tests/adapters', '.cache'],
  // What runs on and on is stopped by what it does (see leash.mjs), the same on every machine: the clock is there only for what that misses.
  timeoutMS: 120_000,
  allowConsoleColors: false,
};
