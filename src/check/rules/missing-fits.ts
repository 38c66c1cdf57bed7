import type { Rule } from '../context.js';
import { clausesOf } from '../clauses-of.js';
import { diagnostic } from '../report.js';

/** The header of the file that was asked for should say which machines it fits. */
export const missingFits: Rule = {
  codes: ['missingFits'],
  scope: 'schedule',
  check: ({ headers }) => {
    const [header] = headers;
    if (header === undefined || header.role === 'part' || clausesOf(header.clauses, 'fits').length > 0) return [];
    return [
      diagnostic('missingFits', {
        at: header.name.at,
        message: `\`${header.name.text}\` does not say which machines it fits.`,
        help: 'Write `fits model "…"`, with `serial … to …` if not all of them.',
      }),
    ];
  },
};
