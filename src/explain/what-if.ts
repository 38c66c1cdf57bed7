/**
 * How the states of a task's rules make up the task's state, when some of them are not what they were in the run.
 *
 * Only the putting together is done here; what a single rule would come to is the caller's to say, from the recorded numbers.
 */
import type { Truth } from '../assess/assessment.js';
import type { Explanation, RuleFacts } from './explanation.js';
import { ANYTHING, between, bestOf, exactly, severity, worstOf } from './possible.js';
import type { Possible } from './possible.js';

/** What the rules would come to. `null` for a truth that cannot be told. */
export interface WhatIf {
  readonly leaf: (rule: RuleFacts) => Possible;
  readonly truth: (condition: RuleFacts) => Truth | null;
  /** Whether the doing that the change brings meets all of `first`; `null`: it cannot be told; left out: no doing. */
  readonly firstMet?: (rule: RuleFacts) => boolean | null;
}

/** The state of the whole task. */
export function taskStateIf(explanation: Pick<Explanation, 'rule' | 'gate' | 'state'>, whatIf: WhatIf): Possible {
  const trigger = explanation.rule === null ? exactly('clear') : ruleStateIf(explanation.rule, whatIf);
  if (explanation.gate === null) return trigger;
  const gate = whatIf.truth(explanation.gate);
  if (gate === 'true') return trigger;
  if (gate === 'false') return exactly('resting');
  return gate === 'unknown' ? underUnknownGate(trigger) : ANYTHING;
}

/** The state of one rule. */
function ruleStateIf(rule: RuleFacts, whatIf: WhatIf): Possible {
  switch (rule.node.kind) {
    case 'any':
      return worstOf(rule.parts.map((part) => ruleStateIf(part, whatIf)));
    case 'whichever': {
      const parts = rule.parts.map((part) => ruleStateIf(part, whatIf));
      return rule.node.mode === 'first' ? worstOf(parts) : bestOf(parts);
    }
    case 'first':
      return firstStateIf(rule, whatIf);
    default:
      return whatIf.leaf(rule);
  }
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

function firstStateIf(rule: RuleFacts, whatIf: WhatIf): Possible {
  const active = activePart(rule);
  if (active === null) return ANYTHING;
  const [first, then] = rule.parts;
  const doing = whatIf.firstMet;
  if (doing === undefined || active !== first) return ruleStateIf(active, whatIf);
  const met = doing(active);
  if (met === null) return ANYTHING;
  if (!met) return ruleStateIf(active, whatIf);
  return then === undefined ? exactly('clear') : ruleStateIf(then, whatIf);
}

function underUnknownGate(trigger: Possible): Possible {
  const reached = severity(trigger.worst) <= severity('unknown');
  if (!reached) return ANYTHING;
  return severity(trigger.best) <= severity('unknown') ? exactly('unknown') : between('overdue', 'resting');
}
