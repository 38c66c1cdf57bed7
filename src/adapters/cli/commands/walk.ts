import type { Command } from 'commander';
import {
  type Assessment,
  assessTimeline,
  namesOf,
  readTimeline,
  type RuleGraph,
  type Stance,
  stanceOnRecord,
  type TasksForWalk,
  tasksForWalk,
  type Timeline,
  type WalkRound,
  walkRound,
} from '../../../engine.js';
import { apartWords, heldWords } from '../../../render/walk-round/sheet-words.js';
import { renderWalkRound } from '../../../render/walk-round/sheet-text.js';
import { renderWalkRoundHtml } from '../../../render/walk-round/sheet-html.js';
import { renderStancePicture } from '../../../render/walk-round/stance-picture.js';
import { addAnswerOptions, type AnswerOptions } from '../answer-options.js';
import type { CommandHost } from '../command-host.js';
import { complain, noSuch } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { addIntentOptions, type IntentOptions } from '../intent-options.js';
import { jsonText } from '../json-text.js';
import { openQuestion, type Question } from '../open-question.js';
import { openSchedule } from '../open-schedule.js';
import { openTask } from '../open-task.js';
import { workExample } from '../parse-work.js';
import { type Parsed, refused, understood } from '../parsed.js';
import { styleFor } from '../style-for.js';
import { writeFile } from '../write-file.js';

interface WalkOptions extends AnswerOptions, IntentOptions {
  readonly stands?: string;
  readonly from?: string;
  readonly end?: string;
  readonly html?: string;
  readonly all?: boolean;
}

const examples = `
Examples:
  duewright walk tractor.due tractor.jsonl --work "${workExample}" --html walk-round.html
  duewright walk tractor.due tractor.jsonl change-engine-oil grease-loader
  duewright walk tractor.due tractor.jsonl --stands "loader blocked, guard open" --from seat --end work

Ends with 1 if something that is due cannot be done from where the machine stands.`;

/** `duewright walk`: in which order to do what is due, or the tasks that are named. */
export function addWalk(host: CommandHost): void {
  const command = host.program
    .command('walk')
    .summary('say in which order to do what is due, step by step, and back again')
    .description('Plans the shortest safe walk-round for what is due by its SCHEDULE and its LOGBOOK, or for the tasks named.')
    .argument('<schedule>', 'the schedule of the machine model')
    .argument('<logbook>', 'the logbook of the machine')
    .argument('[tasks...]', 'these tasks instead of what is due')
    .addHelpText('after', examples);
  withWalkOptions(addAnswerOptions(addIntentOptions(command), 'walk-round.schema.json')).action(
    (schedule: string, logbook: string, tasks: readonly string[], options: WalkOptions) => runWalk(host, schedule, logbook, tasks, options),
  );
}

/** `duewright stances`: the author's drawing of the machine's stances and steps. */
export function addStances(host: CommandHost): void {
  host.program
    .command('stances')
    .summary('draw the stances of a machine and the steps between them, as SVG')
    .argument('<schedule>', 'the schedule of the machine model')
    .option('--svg <file>', 'write the drawing to a file instead of the standard output')
    .action(async (schedule: string, options: { readonly svg?: string }) => {
      const graph = await openSchedule(host, styleFor(host.shell), schedule);
      const picture = graph === undefined ? undefined : renderStancePicture(graph);
      if (picture === undefined) return;
      if (picture === null) {
        complain(host.shell, 'The machine has more stances than a drawing can show.');
        host.end(exitCode.no);
      } else give(host, picture, options.svg);
    });
}

function withWalkOptions(command: Command): Command {
  return command
    .option('--stands <positions>', 'how the parts stand, such as "loader blocked, guard open", instead of what the logbook says')
    .option('--from <place>', 'where you stand')
    .option('--end <stance>', 'leave the machine at `rest` or ready to `work`; work if an outing is intended, else rest')
    .option('--all', 'also what is due for a qualified mechanic, and what has no record that it was ever done')
    .option('--html <file>', 'write a sheet to print instead');
}

async function runWalk(
  host: CommandHost,
  schedule: string,
  logbook: string,
  named: readonly string[],
  options: WalkOptions,
): Promise<void> {
  const style = styleFor(host.shell, options);
  const question = await openQuestion(host, style, schedule, logbook, options);
  if (question === undefined) return;
  const { graph } = question;
  const tasks: string[] = [];
  for (const wanted of named) {
    const task = openTask(host, graph, wanted);
    if (task === undefined) return;
    tasks.push(task.id);
  }
  const timeline = readTimeline(question.entries, graph, question.now);
  const where = whereabouts(question, timeline, options);
  if (!where.ok) {
    complain(host.shell, where.problem);
    host.end(exitCode.usage);
    return;
  }
  const assessment = assessTimeline(graph, timeline, question.now, { intent: question.intent, withoutRecord: true });
  const chosen = named.length > 0 ? { tasks, mechanic: [], unrecorded: [] } : dueTasks(graph, assessment, options.all === true);
  const walk = walkRound(graph, chosen.tasks, where.value);
  const beside = { held: heldWords(assessment, namesOf(graph)), apart: apartWords(chosen, graph) };
  if (options.html !== undefined) give(host, renderWalkRoundHtml(walk, graph, beside), options.html);
  else host.shell.out(options.json === true ? jsonText(walk) : `${renderWalkRound(walk, graph, style, beside)}\n`);
  if (isShort(walk)) host.end(exitCode.no);
}

function isShort(walk: WalkRound): boolean {
  return walk.outcome !== 'found' || walk.leftOut.length > 0;
}

function dueTasks(graph: RuleGraph, assessment: Assessment, all: boolean): TasksForWalk {
  const chosen = tasksForWalk(graph, assessment);
  return all ? { tasks: [...chosen.tasks, ...chosen.mechanic, ...chosen.unrecorded], mechanic: [], unrecorded: [] } : chosen;
}

function whereabouts(
  { graph, intent }: Question,
  timeline: Timeline,
  options: WalkOptions,
): Parsed<{ stance: Stance; place?: string; end: 'rest' | 'work' }> {
  const told = options.stands === undefined ? understood({}) : parseStands(graph, options.stands);
  if (!told.ok) return told;
  const places = graph.access.places.map(({ id }) => id);
  if (options.from !== undefined && !places.includes(options.from)) return refused(noSuch('place', options.from, places));
  if (options.end !== undefined && options.end !== 'rest' && options.end !== 'work')
    return refused(`The end is \`rest\` or \`work\`, not \`${options.end}\`.`);
  const end = options.end ?? (intent.outing === undefined ? 'rest' : 'work');
  const onRecord = options.stands === undefined ? stanceOnRecord(timeline) : {};
  return understood({ stance: { ...onRecord, ...told.value }, ...(options.from === undefined ? {} : { place: options.from }), end });
}

function parseStands(graph: RuleGraph, text: string): Parsed<Stance> {
  const stance: Stance = {};
  for (const item of text.split(',').map((each) => each.trim().split(/\s+/))) {
    const [name = '', position = ''] = item.filter((word) => word !== 'is');
    const part = graph.access.parts.find(({ id }) => id === name);
    if (part === undefined)
      return refused(
        noSuch(
          'moving part',
          name,
          graph.access.parts.map(({ id }) => id),
        ),
      );
    const positions = part.positions.map((each) => each.name);
    if (!positions.includes(position)) return refused(noSuch(`position of \`${name}\``, position, positions));
    stance[name] = position;
  }
  return understood(stance);
}

function give(host: CommandHost, text: string, file: string | undefined): void {
  if (file === undefined) {
    host.shell.out(text);
    return;
  }
  const written = writeFile(file, text);
  if (written.ok) return;
  complain(host.shell, written.problem);
  host.end(exitCode.input);
}
