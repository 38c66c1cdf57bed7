import { compileAccess } from './access.js';
import { compileByWeek } from './by-week.js';
import type { GraphMakers } from './graph-of.js';
import { compileDefects, compileDipsticks, compileGauges } from './machine.js';

/** Makes all there is. */
export const everyMaker: Required<GraphMakers> = {
  gauges: compileGauges,
  dipsticks: compileDipsticks,
  defects: compileDefects,
  access: compileAccess,
  byWeek: compileByWeek,
};
