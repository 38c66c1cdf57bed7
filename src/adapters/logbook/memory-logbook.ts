import type { Chance } from './entry-id.js';
import type { LogbookStore } from './logbook-store.js';
import { planAppend } from './plan-append.js';
import { readLogbook } from './read-logbook.js';

/** A logbook that lives as long as the program does, and can hand out its text to be kept elsewhere (a browser's storage, say). */
export interface MemoryLogbook extends LogbookStore {
  /** The logbook as a file would hold it. */
  text(): string;
}

/** Opens a logbook in memory, on the text of an existing one if given. Runs anywhere: no Node API. */
export function memoryLogbook(chance: Chance, text = ''): MemoryLogbook {
  let held = text === '' || text.endsWith('\n') ? text : `${text}\n`;
  return {
    text: () => held,
    read: () => Promise.resolve(readLogbook(held)),
    append: (drafts, options) =>
      // Inside a promise, so that a refusal rejects, as with a file.
      new Promise((resolve) => {
        const plan = planAppend('memory', readLogbook(held), drafts, chance, options);
        held += plan.text;
        resolve(plan.receipts);
      }),
  };
}
