import { SERVICE_DAYS } from '../../values/service-days.js';
import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';

/** What counts from outings counts what outings note: hours, or the days on which there were some. */
export const notFromOutings: Rule = {
  codes: ['notFromOutings'],
  scope: 'declaration',
  check: ({ model }) =>
    placed(model, 'meter').flatMap(({ node: { fromOutings, unit } }) => {
      if (!fromOutings || unit.text === 'h' || unit.text.startsWith(SERVICE_DAYS.slice(0, -1))) return [];
      const message = `Outings note hours, so that nothing that counts ${unit.text} can be added up from them.`;
      const help = `Write \`counts h from outings\` or \`counts ${SERVICE_DAYS} from outings\`, or have the meter read.`;
      return [diagnostic('notFromOutings', { at: unit.at, message, help })];
    }),
};
