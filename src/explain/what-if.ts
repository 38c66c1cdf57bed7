/**
 * How the states of a task's rules make up the task's state, when some of them are not what they were in the run.
 *
 * Only the putting together is done here; what a single rule would come to is the caller's to say, from the recorded numbers.
 */
import type { Truth } from '../assess/assessment.js';
import type { RuleFacts } from './explanation.js';
import type { Ground } from './ground.js';
import { ANYTHING, between, betterOf, exactly, severity, worseOf } from './possible.js';
import type { Possible } from './possible.js';

/** What the rules would come to under a change. `null` for a truth that cannot be told. */
export interface WhatIf<Change> {
  readonly leaf: (rule: RuleFacts, ground: Ground, change: Change) => Possible;
  readonly truth: (condition: RuleFacts, change: Change) => Truth | null;
  /** Whether the doing that the change brings meets all of `first`; `null`: it cannot be told; left out: no doing. */
  readonly firstMet?: (rule: RuleFacts, ground: Ground) => boolean | null;
}

/** The state of the whole task under a change. */
export function taskStateIf<Change>(ground: Ground, whatIf: WhatIf<Change>, change: Change): Possible {
  const trigger = ground.rule === null ? exactly('clear') : ruleStateIf(ground.rule, ground, whatIf, change);
  if (ground.gate === null) return trigger;
  const gate = whatIf.truth(ground.gate, change);
  if (gate === 'true') return trigger;
  if (gate === 'false') return exactly('resting');
  return gate === 'unknown' ? underUnknownGate(trigger) : ANYTHING;
}

/** The state of one rule. */
function ruleStateIf<Change>(rule: RuleFacts, ground: Ground, whatIf: WhatIf<Change>, change: Change): Possible {
  switch (rule.node.kind) {
    case 'any':
      return ofParts(rule, ground, whatIf, change, worseOf);
    case 'whichever':
      return ofParts(rule, ground, whatIf, change, rule.node.mode === 'first' ? worseOf : betterOf);
    case 'first':
      return firstStateIf(rule, ground, whatIf, change);
    default:
      return whatIf.leaf(rule, ground, change);
  }
}

/** Nothing at all is clear. */
function ofParts<Change>(
  { parts }: RuleFacts,
  ground: Ground,
  whatIf: WhatIf<Change>,
  change: Change,
  join: (a: Possible, b: Possible) => Possible,
): Possible {
  let whole: Possible | null = null;
  for (const part of parts) {
    const state = ruleStateIf(part, ground, whatIf, change);
    whole = whole === null ? state : join(whole, state);
  }
  return whole ?? exactly('clear');
}

/** The part of a `first` rule that counts at present: its stages, or what comes after them; `null` if the record does not say. */
function activePart(rule: RuleFacts): RuleFacts | null {
  const looked = rule.parts.filter((part) => part.state !== undefined);
  if (rule.governing !== undefined) {
    const holder = looked.find((part) => holds(part, rule.governing));
    if (holder !== undefined) return holder;
  }
  return looked.length === 1 ? (looked[0] ?? null) : null;
}

function holds(rule: RuleFacts, id: number | undefined): boolean {
  return rule.node.id === id || rule.parts.some((part) => holds(part, id));
}

function firstStateIf<Change>(rule: RuleFacts, ground: Ground, whatIf: WhatIf<Change>, change: Change): Possible {
  const active = activePart(rule);
  if (active === null) return ANYTHING;
  const [first, then] = rule.parts;
  const doing = whatIf.firstMet;
  if (doing === undefined || active !== first) return ruleStateIf(active, ground, whatIf, change);
  const met = doing(active, ground);
  if (met === null) return ANYTHING;
  if (!met) return ruleStateIf(active, ground, whatIf, change);
  return then === undefined ? exactly('clear') : ruleStateIf(then, ground, whatIf, change);
}

function underUnknownGate(trigger: Possible): Possible {
  const reached = severity(trigger.worst) <= severity('unknown');
  if (!reached) return ANYTHING;
  return severity(trigger.best) <= severity('unknown') ? exactly('unknown') : between('overdue', 'resting');
}
