/** `fast-check` for mutants: what so many random cases do not find is left to the tests themselves, and the first that fails is enough. */
import * as fastCheck from 'fast-check';

const MOST_RUNS = 40;

const assert = (property, parameters = {}) =>
  fastCheck.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters.numRuns ?? fastCheck.readConfigureGlobal().numRuns ?? 100, MOST_RUNS),
    endOnFailure: true,
  });

export const fewRuns = { ...fastCheck, assert, default: { ...fastCheck.default, assert } };
