/**
 * What is known of the word under the pointer, in words.
 */
import { explain } from '../explain/explain.js';
import { namesOf } from '../explain/names.js';
import { assess } from '../assess/assess.js';
import type { Span } from '../base/span.js';
import { classesOf, wordsOf } from '../check/words-of.js';
import { kindName } from '../check/words.js';
import type { Definition } from '../check/model.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { headline } from '../render/headline.js';
import { isCondition } from '../graph/node-references.js';
import { conditionInWords } from '../render/condition-in-words.js';
import { nodeInWords } from '../render/rule-in-words.js';
import { clauseExample } from '../syntax/clause-examples.js';
import { readTokens } from '../syntax/read-tokens.js';
import type { Moment } from '../values/moment.js';
import { occurrenceAt } from './occurrences.js';
import { textOf, type EditorView } from './view.js';

/** A machine whose logbook is at hand, and the moment at which it is asked about. */
export interface MachineNow {
  readonly entries: readonly Entry[];
  readonly now: Moment;
}

/** What is told of the word under the cursor. */
export interface Hover {
  readonly at: Span;
  /** One thing that is known a paragraph; the first says what it is. Plain text. */
  readonly paragraphs: readonly string[];
  /** A piece of schedule, to be shown as such. */
  readonly example?: string;
}

/**
 * What stands at an offset: a thing of the schedule with its meaning, or a word of the language with an example.
 *
 * @param graph the compiled schedule; without it (the schedule has errors) a task's meaning cannot be told.
 * @param machine with it, a task also says where it stands on that machine.
 */
export function hover(view: EditorView, offset: number, graph: RuleGraph | null, machine?: MachineNow): Hover | undefined {
  const named = occurrenceAt(view, offset);
  if (named !== undefined) return { at: named.at, paragraphs: describe(named.definition, graph, machine) };
  const token = readTokens(textOf(view)).find(({ start, end }) => start <= offset && offset <= end);
  const example = token === undefined ? undefined : clauseExample(token.text);
  if (token === undefined || example === undefined) return undefined;
  return { at: { file: view.file, start: token.start, end: token.end }, paragraphs: [`\`${token.text}\`, for example:`], example };
}

function describe(definition: Definition, graph: RuleGraph | null, machine: MachineNow | undefined): readonly string[] {
  const { kind, id, title } = definition;
  const opening = `${title.replace(/\.$/, '')}: ${kindName(kind)}${detail(definition)}.`;
  if (kind !== 'task') return [opening];
  if (graph === null) return [opening, 'What it means cannot be told until the errors in the schedule are put right.'];
  return [opening, ...meaning(graph, id), ...standing(graph, id, machine)];
}

function detail(definition: Definition): string {
  const { node } = definition;
  switch (node.kind) {
    case 'meter':
      return ` that counts ${node.unit.text}${node.fromOutings ? ', from the outings on record' : ''}`;
    case 'gauge':
      return ` that reads ${node.unit.text}${list(', with the bands ', wordsOf(definition))}`;
    case 'dipstick':
      return `, ${node.range.number.text} ${node.range.unit.text} from low to full`;
    case 'position':
      return list(' that can be ', wordsOf(definition));
    case 'defect':
      return list(', from slight to grave ', classesOf(definition));
    case 'supply':
      return node.unit === undefined ? ', counted by the piece' : ` in ${node.unit.text}`;
    default:
      return '';
  }
}

function list(lead: string, words: readonly string[] = []): string {
  return words.length === 0 ? '' : `${lead}${words.join(', ')}`;
}

/** When the task is due, and only under what condition. */
function meaning(graph: RuleGraph, id: string): readonly string[] {
  const task = graph.tasks.find((each) => each.id === id);
  if (task === undefined) return [];
  const names = namesOf(graph);
  const byId = (node: number): RuleGraph['nodes'][number] | undefined => graph.nodes[node];
  const trigger = task.trigger === undefined ? undefined : byId(task.trigger);
  const gate = task.gate === undefined ? undefined : byId(task.gate);
  return [
    trigger === undefined ? 'Due only when something else asks for it.' : `Due ${nodeInWords(trigger, byId, names)}.`,
    ...(gate !== undefined && isCondition(gate) ? [`Only if ${conditionInWords(gate, byId, names)}.`] : []),
  ];
}

/** Where it stands today, for a machine. */
function standing(graph: RuleGraph, id: string, machine: MachineNow | undefined): readonly string[] {
  if (machine === undefined) return [];
  const assessment = assess(graph, machine.entries, machine.now);
  return [`By the logbook beside it: ${headline(explain(graph, assessment, machine.entries, id))}`];
}
