import { addAhead } from './commands/ahead.js';
import { addSupplies } from './commands/supplies.js';
import { addVisits } from './commands/visits.js';
import { addYear } from './commands/year.js';

/** The commands that look ahead, in the order in which help lists them. */
export const outlookCommands = [addAhead, addVisits, addSupplies, addYear] as const;
