/** Which house may import from which: shared by the test of imports and by nothing else. The picture is in DEVELOPERS.md. */

/** House → houses that it may import from, besides itself. */
export const arrows: Readonly<Record<string, readonly string[]>> = {
  base: [],
  values: ['base'],
  diagnostics: ['base'],
  graph: ['base', 'values'],
  syntax: ['base', 'values', 'diagnostics'],
  // Amounts, margins and ranges are worked out while they are checked, in the graph's own shapes.
  check: ['base', 'values', 'diagnostics', 'syntax', 'graph'],
  // The walk over all stances is part of compiling: a schedule that leads into a dead end does not compile.
  compile: ['base', 'values', 'diagnostics', 'syntax', 'check', 'graph', 'access'],
  // A timeline is laid out for one machine model: which meters it has and which names are strays, the graph says.
  history: ['base', 'values', 'graph'],
  assess: ['base', 'values', 'graph', 'history'],
  explain: ['base', 'values', 'graph', 'history', 'assess'],
  access: ['base', 'values', 'graph'],
  outlook: ['base', 'values', 'graph', 'history', 'assess'],
  // The reason that an example gives is compiled like any rule, so that it can be compared with the part that decided.
  examples: ['base', 'values', 'diagnostics', 'syntax', 'check', 'compile', 'graph', 'history', 'assess', 'explain'],
  format: ['base', 'values', 'diagnostics', 'syntax'],
  compare: ['base', 'values', 'graph', 'history', 'assess'],
  render: ['base', 'values', 'diagnostics', 'graph', 'history', 'assess', 'explain', 'access', 'outlook', 'compare', 'examples'],
  // What an editor asks of a schedule under the cursor, for the language server and the playground alike.
  editor: [
    'base',
    'values',
    'diagnostics',
    'syntax',
    'check',
    'compile',
    'graph',
    'history',
    'assess',
    'explain',
    'examples',
    'format',
    'render',
  ],
  fleet: ['base', 'values', 'graph', 'history', 'assess'],
  sql: ['base', 'values', 'graph', 'fleet'],
  watch: ['base', 'values', 'graph', 'history', 'assess'],
  ahead: ['base', 'values', 'graph', 'history', 'assess', 'outlook'],
  engine: ['base', 'values', 'graph', 'history', 'assess', 'explain', 'access', 'outlook'],
  index: [
    'base',
    'values',
    'diagnostics',
    'graph',
    'syntax',
    'check',
    'compile',
    'history',
    'assess',
    'explain',
    'access',
    'outlook',
    'format',
    'compare',
    'examples',
    'render',
    'engine',
    'ahead',
    'editor',
    'fleet',
    'sql',
    'watch',
  ],
  // Values for words and dates; everything else comes through the public entries.
  adapters: ['base', 'values', 'index', 'engine', 'ahead', 'render', 'format', 'editor', 'fleet', 'sql', 'watch'],
};

/** House → packages that it may import. */
export const packages: Readonly<Record<string, readonly string[]>> = {
  render: ['@dagrejs/dagre'],
  adapters: [
    'commander',
    'picocolors',
    'saxes',
    '@observablehq/plot',
    '@codemirror/autocomplete',
    '@codemirror/commands',
    '@codemirror/language',
    '@codemirror/lint',
    '@codemirror/state',
    '@codemirror/view',
    '@lezer/highlight',
    'vscode-languageserver/node',
    'vscode-languageserver',
    'vscode-languageserver-textdocument',
    'linkedom/worker',
  ],
};
