/**
 * The rules of a task as an indented tree in words, each with the place where it was written.
 */
import type { RuleGraph } from '../graph/rule-graph.js';
import { safeText } from './safe-text.js';
import type { Role, RuleTree } from './rule-tree.js';
import { ruleTree } from './rule-tree.js';
import type { Style } from './style.js';
import { wrap } from './wrap.js';

const ROLES: Readonly<Record<Role, string>> = { task: '', gate: 'only if: ', part: '', first: 'first: ', then: 'then: ', condition: '' };

/** The tree as lines parted by `\n`. @throws RangeError for a task that the schedule does not have. */
export function renderRuleGraphText(graph: RuleGraph, taskId: string, style: Style): string {
  return lines(ruleTree(graph, taskId), '', '', style).join('\n');
}

function lines(tree: RuleTree, lead: string, below: string, style: Style): readonly string[] {
  const { paint } = style;
  const words = safeText(`${ROLES[tree.role]}${tree.words}`);
  const [first = '', ...rest] = wrap(words, style.width - lead.length);
  const dressed = tree.kind === 'task' ? paint.strong : (text: string): string => text;
  const bar = tree.parts.length > 0 ? branches(style).through : '   ';
  const small = [...tree.details.map(safeText), tree.place].flatMap((detail) => wrap(detail, style.width - below.length - 3));
  return [
    lead + dressed(first),
    ...rest.map((line) => below + bar + dressed(line)),
    ...small.map((line) => below + bar + paint.quiet(line)),
    ...tree.parts.flatMap((part, index) => branch(part, index === tree.parts.length - 1, below, style)),
  ];
}

function branch(part: RuleTree, isLast: boolean, below: string, style: Style): readonly string[] {
  const { last, more, through } = branches(style);
  return lines(part, below + (isLast ? last : more), below + (isLast ? '   ' : through), style);
}

function branches({ unicode }: Style): { readonly last: string; readonly more: string; readonly through: string } {
  return unicode ? { last: '└─ ', more: '├─ ', through: '│  ' } : { last: '`- ', more: '|- ', through: '|  ' };
}
