import { SERVICE_DAYS } from '../../values/service-days.js';
import { findUnit } from '../../values/units.js';
import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';

const noted: readonly string[] = ['h', SERVICE_DAYS];

/** What counts from outings counts what outings note: hours, or the days on which there were some. */
export const notFromOutings: Rule = {
  codes: ['notFromOutings'],
  scope: 'declaration',
  check: ({ model }) =>
    placed(model, 'meter').flatMap(({ node: { fromOutings, unit } }) => {
      if (!fromOutings || noted.includes(findUnit(unit.text)?.symbol ?? '')) return [];
      const message = `No outing notes ${unit.text}.`;
      const help = `Write \`h\` or \`${SERVICE_DAYS}\`, or have the meter read.`;
      return [diagnostic('notFromOutings', { at: unit.at, message, help })];
    }),
};
