/**
 * Why a step stands where it does, as a mechanic would say it.
 */
import type { StepLine, WalkRound } from '../../access/walk-round.js';
import type { RuleGraph } from '../../graph/rule-graph.js';

/** One or two sentences, in plain text. */
export function whySentence(line: StepLine, walk: WalkRound, graph: RuleGraph): string {
  const titles = line.why.tasks.map((task) => graph.tasks.find((each) => each.id === task)?.title ?? task);
  const sentences = [
    linkSentence(line, walk),
    taskSentence(titles),
    line.why.putsBack && titles.length === 0 ? 'Puts the machine back.' : '',
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** What the step leads to first, and the rule that ties the two. Steps say more than tasks, which are listed anyway. */
function linkSentence(line: StepLine, walk: WalkRound): string {
  const linked = line.why.enables.map((link) => ({ ...link, then: walk.lines[link.line - 1] }));
  const step = linked.find((link) => link.then?.kind === 'step' && link.by !== 'next-move');
  const chosen = step ?? linked.find((link) => link.by !== 'next-move') ?? linked[0];
  if (chosen?.then === undefined) return '';
  const name = `Line ${chosen.line}, "${chosen.then.title}",`;
  switch (chosen.by) {
    case 'condition':
      return `${name} needs ${asStance(chosen.rule)}.`;
    case 'never':
      return `${name} would otherwise break the rule "${chosen.rule}".`;
    case 'next-move':
      return `${name} goes on from here.`;
  }
}

/** `while guard is open` as a stance: `guard open`. */
function asStance(rule: string): string {
  return rule.replace(/^(while|with) /, '').replace(/ is (?=[a-z])/g, ' ');
}

function taskSentence(titles: readonly string[]): string {
  if (titles.length === 0) return '';
  const shown = titles.slice(0, 3).join('; ');
  return `For: ${shown}${titles.length > 3 ? `; and ${titles.length - 3} more` : ''}.`;
}
