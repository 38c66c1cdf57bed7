import type { RuleGraph } from '../../graph/rule-graph.js';
import type { TaskAhead } from '../../outlook/year-ahead.js';
import type { Titles } from '../amounts-in-words.js';
import { nodeInWords } from '../rule-in-words.js';

/** Below this share a rule is not worth a word: it decides in hardly any course of use. */
const WORTH_SAYING = 0.05;

/** Which rule will decide, and where it is open which else: `every 50 h of engine (in 7 of 10 courses of use), every 3 months (3 of 10)`. */
export function decidesInWords({ decides }: Pick<TaskAhead, 'decides'>, graph: RuleGraph, names: Titles): string {
  const said = decides.filter(({ share }) => share >= WORTH_SAYING);
  const words = said.map(({ node }) => ruleWords(node, graph, names));
  if (said.length < 2) return words[0] ?? '';
  return said.map(({ share }, index) => `${words[index] ?? ''} (${tenths(share)} in 10)`).join(', or ');
}

function ruleWords(id: number, graph: RuleGraph, names: Titles): string {
  const node = graph.nodes[id];
  return node === undefined ? '' : nodeInWords(node, (other) => graph.nodes[other], names);
}

/** At least one, at most nine: what is open is not said to be certain. */
function tenths(share: number): number {
  return Math.min(9, Math.max(1, Math.round(share * 10)));
}
