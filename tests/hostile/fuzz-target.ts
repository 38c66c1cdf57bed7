/** What fuzzing runs: one input of one sort through everything; and how an input of that sort is bent. */
import { compile } from '../../src/compile/compile.js';
import { format } from '../../src/format/format.js';
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { entriesToCsv } from '../../src/adapters/exchange/entries-csv.js';
import { readLogbook } from '../../src/adapters/logbook/read-logbook.js';
import { meaningFingerprint } from '../../src/graph/meaning-fingerprint.js';
import { askEverything } from './ask-everything.js';
import { askDoor } from './doors.js';
import type { Ending } from './question.js';

/** A schedule's text, the lines of a logbook (for a schedule that stays), a compiled graph, a text to lay out, a table or a feed to bring in. */
export type Sort = 'schedule' | 'logbook' | 'graph' | 'layout' | 'table' | 'feed';

/** Signs that no output for a person may hold: they would steer a terminal. */
// eslint-disable-next-line no-control-regex -- control characters are what this is about
const STEERING = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

/** Runs one input. Throws where the program is at fault: by what it threw, or by a sign that may not come out. */
export function tryInput(sort: Sort, input: string, machine: string): void {
  const { shown, proof } = ended(sort, input, machine);
  proof?.();
  const steering = STEERING.exec(shown);
  if (steering !== null) throw new Error(`output holds U+${(shown.codePointAt(steering.index) ?? 0).toString(16)}`);
}

function ended(sort: Sort, input: string, machine: string): Ending {
  const files = { 'schedule.due': input };
  switch (sort) {
    case 'schedule':
      return askEverything({ files });
    case 'logbook':
      return askEverything({ graph: machine, logbook: input });
    case 'graph':
      return askEverything({ graph: resealed(input) });
    case 'layout':
      return laidOut(input);
    case 'table':
      return askDoor('csv', { files });
    case 'feed':
      return askDoor(input.trimStart().startsWith('<') ? 'xml' : 'json', { files });
  }
}

/** Laying out changes nothing of what a schedule means: the graph is the same but for its places. */
function laidOut(input: string): Ending {
  const ending = askDoor('format', { files: { 'schedule.due': input } });
  const layout = format(input);
  if (!('text' in layout)) return ending;
  const [before, after] = [input, layout.text].map((text) =>
    compile('schedule.due', (path) => (path === 'schedule.due' ? text : undefined)),
  );
  const codes = (of: typeof before): string => (of?.diagnostics ?? []).map(({ code }) => code).join(' ');
  if (codes(before) !== codes(after)) throw new Error('laid out, a schedule has other mistakes');
  const [was, is] = [before?.graph, after?.graph];
  if (was !== null && was !== undefined && is !== null && is !== undefined && meaningFingerprint(was) !== meaningFingerprint(is))
    throw new Error('laid out, a schedule means something else');
  return ending;
}

/** Entries as a table, to begin with. */
export function tableOf(logbook: string): string {
  return entriesToCsv(readLogbook(logbook).entries);
}

/** A compiled graph of a text, as JSON; empty where there is none. */
export function graphText(text: string): string {
  const { graph } = compile('schedule.due', (path) => (path === 'schedule.due' ? text : undefined));
  return graph === null ? '' : JSON.stringify(graph);
}

/** The fingerprint made to fit again, so that what comes behind it is tried too. */
function resealed(text: string): string {
  try {
    const graph = JSON.parse(text) as RuleGraph;
    return JSON.stringify({ ...graph, fingerprint: graphFingerprint(graph) });
  } catch {
    return text;
  }
}

/** Feeds to begin with: machines and numbers are invented, the elements are those of ISO/TS 15143-3 and its forerunner. */
export const feeds: readonly string[] = [
  `<?xml version="1.0" encoding="utf-8"?>
<Fleet xmlns="urn:example" version="1" snapshotTime="2026-05-12T06:31:00Z"><Equipment>
<EquipmentHeader><OEMName>Tarn</OEMName><Model>55</Model><EquipmentID>orchard 1</EquipmentID><SerialNumber>0001234</SerialNumber></EquipmentHeader>
<CumulativeOperatingHours datetime="2026-05-12T06:30:00Z"><Hour>8376.20</Hour></CumulativeOperatingHours>
<Distance datetime="2026-05-12T06:30:00Z"><OdometerUnits>mile</OdometerUnits><Odometer>100</Odometer></Distance></Equipment></Fleet>`,
  `<Fleet><Equipment><EquipmentHeader><SerialNumber>1</SerialNumber></EquipmentHeader>
<CumulativeOperatingHours datetime="2010-05-12T06:30:00Z"><Hour>PT8376H12M</Hour></CumulativeOperatingHours></Equipment></Fleet>`,
  '{"equipment":[{"equipmentHeader":{"serialNumber":"0001234"},"cumulativeOperatingHours":{"datetime":"2026-05-12T06:30:00Z","hour":8376.2}}]}',
];
