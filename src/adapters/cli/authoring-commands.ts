import { addChanges } from './commands/changes.js';
import { addExplain } from './commands/explain.js';
import { addInputs } from './commands/inputs.js';
import { addProve } from './commands/prove.js';
import { addTidy } from './commands/tidy.js';
import { addServeEditor } from '../lsp/add-serve-editor.js';

/** The commands of whoever writes schedules, in the order in which help lists them: loaded only when asked for. */
export const authoringCommands = [addTidy, addProve, addChanges, addExplain, addInputs, addServeEditor] as const;
