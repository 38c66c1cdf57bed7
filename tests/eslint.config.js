import tseslint from 'typescript-eslint';

/** Rules that catch mistakes, and the few that keep the house style; layout is prettier's. */
const houseRules = {
  '@typescript-eslint/no-explicit-any': 'error',
  '@typescript-eslint/no-non-null-assertion': 'error',
  '@typescript-eslint/consistent-type-imports': 'error',
  '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
  // A branded number in a message reads as a number; that is what it is for.
  '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
  // Plain ifs that the types prove needless are mostly `noUncheckedIndexedAccess` at its edges.
  '@typescript-eslint/no-unnecessary-condition': 'off',
  '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
  '@typescript-eslint/no-confusing-void-expression': 'off',
  '@typescript-eslint/unified-signatures': 'off',
  '@typescript-eslint/prefer-for-of': 'off',
  'no-restricted-syntax': [
    'error',
    { selector: 'ExportDefaultDeclaration', message: 'Export by name, so that a thing has one name everywhere.' },
  ],
  'no-eval': 'error',
  'no-new-func': 'error',
  // `== null` asks for null and undefined at once; anything else is `===`.
  eqeqeq: ['error', 'always', { null: 'ignore' }],
  // Code points are what the spread is used for.
  '@typescript-eslint/no-misused-spread': 'off',
  'max-lines': ['warn', { max: 300, skipBlankLines: true, skipComments: true }],
};

/** What the core may not know: the time, the place, the dice. */
const coreRules = {
  'no-restricted-globals': ['error', 'process', 'globalThis', 'window', 'document', 'localStorage', 'fetch', 'setTimeout', 'setInterval'],
  'no-restricted-properties': [
    'error',
    { object: 'Date', property: 'now', message: 'Now is an argument.' },
    { object: 'Math', property: 'random', message: 'The same inputs give the same bytes.' },
  ],
  'no-restricted-syntax': [
    'error',
    { selector: 'ExportDefaultDeclaration', message: 'Export by name, so that a thing has one name everywhere.' },
    { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Now is an argument.' },
    {
      selector: 'CallExpression[callee.property.name=/^toLocale/]',
      message: 'The same inputs give the same bytes, wherever they are run.',
    },
    { selector: 'CallExpression[callee.property.name="localeCompare"]', message: 'Compare by code unit: locales differ.' },
  ],
};

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'src/graph/rule-graph.ts', 'tests/**/consumers/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'off' } },
  {
    files: ['src/**/*.ts', 'tests/**/*.ts'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: new URL('..', import.meta.url).pathname } },
    rules: houseRules,
  },
  { files: ['src/**/*.ts'], ignores: ['src/adapters/**'], rules: coreRules },
  {
    // dagre publishes types that Node's resolution cannot follow; what comes out of it is stated by hand.
    files: ['src/render/rule-graph-layout.ts', 'src/render/walk-round/stance-picture.ts'],
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: ['tests/**/*.ts'],
    rules: { 'max-lines': 'off', '@typescript-eslint/no-unsafe-assignment': 'off', '@typescript-eslint/no-unsafe-member-access': 'off' },
  },
  // Vitest and playwright read their settings from a default export.
  { files: ['tests/*.config.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['.scripts/**/*.mjs', '.ci/**/*.mjs', 'tests/**/*.mjs', 'tests/*.js'], extends: [tseslint.configs.disableTypeChecked] },
);
