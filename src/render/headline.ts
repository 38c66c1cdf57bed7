/**
 * The first sentence of an answer: the task, its state, and what made it so.
 */
import type { Explanation } from '../explain/explanation.js';
import { findRule, nodesOf } from '../explain/find-rule.js';
import type { Condition } from '../graph/rule-graph.js';
import { conditionInWords } from './condition-in-words.js';
import { fullStop } from './count-in-words.js';
import { reasonSentence, evidenceOf } from './reason-sentence.js';
import { safeText } from './safe-text.js';
import { stateInWords } from './state-in-words.js';

/** `Change the engine oil and filter is due: the 100 h of engine since … are up.` */
export function headline(explanation: Explanation): string {
  return `${safeText(explanation.task.title)} ${verbOf(explanation)}: ${fullStop(reasonOf(explanation))}`;
}

function verbOf({ state }: Explanation): string {
  return state === 'resting' ? 'rests' : `is ${stateInWords(state)}`;
}

/** The reason without its full stop. */
function reasonOf(explanation: Explanation): string {
  if (explanation.resting !== null) return restingReason(explanation);
  const governing = findRule(explanation, explanation.governing);
  const reason = governing === null ? noRule(explanation) : reasonSentence(governing, explanation);
  return gateUnknown(explanation) ? `${reason}; but nobody can tell whether ${gateInWords(explanation)}` : reason;
}

function noRule({ rule }: Explanation): string {
  return rule === null ? 'it has no rule of its own, and nothing asks for it' : 'nothing asks for it now';
}

function restingReason(explanation: Explanation): string {
  switch (explanation.resting) {
    case 'attachment-off':
      return 'its attachment is off the machine';
    case 'serial':
      return "it is for other serial numbers than this machine's";
    case 'gate':
    case null: {
      const { gate } = explanation;
      const evidence = gate === null ? '' : evidenceOf(gate, explanation);
      return `it applies only if ${gateInWords(explanation)}, and that is not so now${evidence === '' ? '' : ` (${evidence})`}`;
    }
  }
}

function gateUnknown({ gate, state }: Explanation): boolean {
  return gate?.truth === 'unknown' && state === 'unknown';
}

function gateInWords(explanation: Explanation): string {
  const { gate, names } = explanation;
  return gate === null ? 'its condition holds' : conditionInWords(gate.node as Condition, nodesOf(explanation), names);
}
