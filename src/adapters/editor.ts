/**
 * What an editor asks of a schedule under the cursor, as plain functions with offsets in and plain data out: for an editor of your own in a page, where
 * the language server (`duewright serve-editor`) does not reach.
 *
 * The public entry `duewright/editor`; it knows no file, and runs in a browser.
 *
 * @example
 * const checked = check('pump.due', (path) => texts.get(path));
 * complete({ checked, file: 0 }, offset); // what can stand next
 */
export { complete } from '../editor/complete.js';
export { foldsOf } from '../editor/folding.js';
export { hover } from '../editor/hover.js';
export { lensesOf } from '../editor/lenses.js';
export { definitionAt, occurrenceAt } from '../editor/occurrences.js';
export { quickFixes, sureFixes } from '../editor/quick-fixes.js';
export { referencesTo } from '../editor/references-to.js';
export { renamableAt, rename } from '../editor/rename.js';
export { semanticTokens } from '../editor/semantic-tokens.js';
export { symbolsOf } from '../editor/symbols.js';

export type { Completion } from '../editor/complete.js';
export type { Fold } from '../editor/folding.js';
export type { Hover, MachineNow } from '../editor/hover.js';
export type { Lens } from '../editor/lenses.js';
export type { Occurrence } from '../editor/occurrences.js';
export type { QuickFix } from '../editor/quick-fixes.js';
export type { Renaming } from '../editor/rename.js';
export type { SemanticToken, TokenSort } from '../editor/semantic-tokens.js';
export type { EditorSymbol } from '../editor/symbols.js';
export type { EditorView } from '../editor/view.js';
