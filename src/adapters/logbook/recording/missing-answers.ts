import { assertNever } from '../../../base/assert-never.js';
import { notedEvents, type Node, type RuleGraph, type Task } from '../../../engine.js';
import type { LooseDraft } from './loose-draft.js';
import type { Question } from './question.js';

/**
 * What an entry of this kind still lacks, in the order in which to ask. Questions that are not `needed` are those whose answer the
 * schedule will want: the meters that a task's limits count on, the instruments that a check reads.
 */
export function missingAnswers(graph: RuleGraph, draft: LooseDraft): readonly Question[] {
  switch (draft.kind) {
    case 'done':
      return draft.tasks === undefined || draft.tasks.length === 0
        ? [pick('task', 'tasks', 'Which task was done?', graph.tasks)]
        : [...meterQuestions(graph, draft), ...readingQuestions(graph, draft)];
    case 'reading':
      return draft.meters === undefined && draft.readings === undefined ? mainMeter(graph) : [];
    case 'finding':
      return draft.text === undefined ? [wanted('text', 'What was found?', 'text')] : [];
    case 'defect-opened':
      return [...ifNot(draft.defect, pick('defect', 'defect', 'Which defect?', graph.defects)), ...classQuestion(graph, draft)];
    case 'defect-closed':
      return ifNot(draft.defect, pick('defect', 'defect', 'Which defect was mended?', graph.defects));
    case 'event':
      return ifNot(draft.event, pick('event', 'event', 'What happened?', notedEvents(graph)));
    case 'attached':
    case 'detached':
      return ifNot(draft.attachment, pick('attachment', 'attachment', 'Which attachment?', graph.attachments));
    case 'topped-up':
      return topUpQuestions(graph, draft);
    case 'meter-replaced':
      return replacedQuestions(graph, draft);
    case 'stated':
      return ifNot(draft.task, pick('task', 'task', 'Of which task do you know something?', graph.tasks));
    case 'void':
      return ifNot(draft.entry, wanted('entry', 'Which entry is wrong (its id)?', 'text'));
    case 'confirm':
      return ifNot(draft.entry, wanted('entry', 'Which reading is right (its id)?', 'text'));
    case 'storage':
      return ifNot(draft.phase, {
        ...wanted('phase', 'Does the storage begin or end?', 'choice'),
        choices: [
          { value: 'begins', title: 'put away' },
          { value: 'ends', title: 'back in use' },
        ],
      });
    case 'machine':
    case 'outing':
    case 'stands':
    case 'refuelled':
      return [];
    default:
      return assertNever(draft.kind);
  }
}

function wanted(slot: string, ask: string, wants: Question['wants']): Question {
  return { slot, ask, wants, choices: [], needed: true };
}

function pick(kind: string, slot: string, ask: string, from: readonly { readonly id: string; readonly title: string }[]): Question {
  if (from.length === 0) return wanted(slot, `${ask} (The schedule names no ${kind}.)`, 'text');
  return { ...wanted(slot, ask, 'choice'), choices: from.map(({ id, title }) => ({ value: id, title })) };
}

function ifNot(value: unknown, question: Question): readonly Question[] {
  return value === undefined ? [question] : [];
}

function meterQuestion(graph: RuleGraph, id: string, needed: boolean): readonly Question[] {
  const meter = graph.meters.find((each) => each.id === id && !each.fromOutings);
  return meter === undefined
    ? []
    : [{ slot: `meters.${id}`, ask: `What does it show: ${meter.title}?`, wants: 'number', unit: meter.unit, choices: [], needed }];
}

function mainMeter(graph: RuleGraph): readonly Question[] {
  return graph.meters
    .filter(({ fromOutings }) => !fromOutings)
    .slice(0, 1)
    .flatMap(({ id }) => meterQuestion(graph, id, true));
}

function meterQuestions(graph: RuleGraph, { tasks = [], meters = {} }: LooseDraft): readonly Question[] {
  const wantedMeters = new Set(chosen(graph, tasks).flatMap((task) => metersOf(graph, task)));
  return [...wantedMeters].filter((id) => meters[id] === undefined).flatMap((id) => meterQuestion(graph, id, false));
}

function readingQuestions(graph: RuleGraph, { tasks = [], readings = {} }: LooseDraft): readonly Question[] {
  const instruments = new Map([...graph.gauges, ...graph.dipsticks].map((each) => [each.id, each]));
  const ids = new Set(chosen(graph, tasks).flatMap((task) => task.reads.map(({ instrument }) => instrument.id)));
  return [...ids]
    .filter((id) => readings[id] === undefined && instruments.has(id))
    .map((id) => {
      const found = instruments.get(id);
      const unit = found !== undefined && 'unit' in found ? { unit: found.unit } : {};
      return {
        slot: `readings.${id}`,
        ask: `What did it read: ${found?.title ?? id}?`,
        wants: 'reading',
        ...unit,
        choices: [],
        needed: false,
      };
    });
}

function chosen(graph: RuleGraph, tasks: readonly string[]): readonly Task[] {
  return graph.tasks.filter(({ id }) => tasks.includes(id));
}

/** The meters that a task's limits count on, found by walking its trigger. */
export function metersOf(graph: RuleGraph, task: Task): readonly string[] {
  const found = new Set<string>();
  const seen = new Set<number>();
  const open = task.trigger === undefined ? [] : [task.trigger];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const node = graph.nodes[id];
    if (node === undefined || seen.has(id)) continue;
    seen.add(id);
    for (const meter of ownMeters(node)) found.add(meter);
    open.push(...parts(node));
  }
  return graph.meters.map(({ id }) => id).filter((id) => found.has(id));
}

function ownMeters(node: Node): readonly string[] {
  if (node.kind === 'duty-mix') return [node.meter];
  if (node.kind === 'interval' || node.kind === 'marks') return node.amount.on === 'meter' ? [node.amount.meter] : [];
  return node.kind === 'stages' ? node.amounts.flatMap((amount) => (amount.on === 'meter' ? [amount.meter] : [])) : [];
}

function parts(node: Node): readonly number[] {
  if (node.kind === 'whichever' || node.kind === 'any') return node.parts;
  if (node.kind === 'first') return node.then === undefined ? [node.first] : [node.first, node.then];
  return node.kind === 'while' ? [node.then] : [];
}

function classQuestion(graph: RuleGraph, { defect, class: known }: LooseDraft): readonly Question[] {
  const classes = graph.defects.find(({ id }) => id === defect)?.classes ?? [];
  if (known !== undefined || classes.length === 0) return [];
  const choices = classes.map(({ name, title }) => ({ value: name, title: title ?? name }));
  return [{ slot: 'class', ask: 'How bad is it?', wants: 'choice', choices, needed: false }];
}

function topUpQuestions(graph: RuleGraph, { dipstick, supply, litres }: LooseDraft): readonly Question[] {
  const where =
    dipstick === undefined && supply === undefined ? [pick('dipstick', 'dipstick', 'What was topped up?', graph.dipsticks)] : [];
  return [...where, ...ifNot(litres, { ...wanted('litres', 'How much was put in?', 'number'), unit: 'L' })];
}

function replacedQuestions(graph: RuleGraph, { meter, final, initial }: LooseDraft): readonly Question[] {
  const unit = graph.meters.find(({ id }) => id === meter)?.unit ?? 'h';
  return [
    ...ifNot(meter, pick('meter', 'meter', 'Which meter was replaced?', graph.meters)),
    ...ifNot(final, { ...wanted('final', 'What did the old one last show?', 'number'), unit }),
    ...ifNot(initial, { ...wanted('initial', 'What did the new one show when it was fitted?', 'number'), unit }),
  ];
}
