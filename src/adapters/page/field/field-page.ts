/**
 * One HTML file for a phone: a compiled schedule, a logbook and the engine, complete in itself.
 */
import { canonicalJson, type Entry, type RuleGraph } from '../../../engine.js';
import { DEFERENCE } from '../../../render/cautions.js';
import { escapeHtml } from '../../../render/escape-html.js';
import { FIELD_CSS } from './field-css.js';
import { jsonBlock } from '../view/json-block.js';
import { pageHead, sourceHash } from '../view/page-head.js';
import { linesOf } from './kept-entries.js';

export interface FieldPageParts {
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  /** The bundled script of the page: `main.ts` with the engine, and no parser. */
  readonly script: string;
}

/**
 * The page. Nothing in it is fetched, and it may fetch nothing: its policy allows exactly the script and the style that are in it.
 *
 * Everything from the schedule and the logbook is data, never markup: it goes in as JSON whose signs cannot end the block, and comes
 * out as text.
 *
 * @example writeFileSync('tractor.html', fieldPage({ graph, entries, script }))
 */
export function fieldPage({ graph, entries, script }: FieldPageParts): string {
  const { title, edition } = graph.schedule;
  const allows = [`script-src ${sourceHash(script)}`, `style-src ${sourceHash(FIELD_CSS)}`];
  const made = edition === undefined ? '' : `, edition ${edition.number} of ${edition.date}`;
  const last = entries.reduce((latest, { on }) => (on > latest ? on : latest), '');
  return `${pageHead({ title, allows, css: FIELD_CSS })}
<body>
<div id="page" data-machine="${escapeHtml(machineKey(graph, entries))}">
<header id="page-head">
<h1>${escapeHtml(title)}</h1>
<p>${escapeHtml(`Schedule ${graph.schedule.name}${made}. ${last === '' ? 'The logbook was empty when this page was made.' : `Logbook to ${last}.`}`)}</p>
</header>
<main id="screens"><p>${escapeHtml(DEFERENCE)}</p><noscript><p>This page needs JavaScript to say what is due.</p></noscript></main>
<nav id="tabs" aria-label="Screens"></nav>
</div>
<script type="application/json" id="schedule">${jsonBlock(canonicalJson(graph))}</script>
<script type="application/x-ndjson" id="logbook">${jsonBlock(linesOf(entries))}</script>
<script>${script}</script>
</body>
</html>
`;
}

/** What tells one machine's entries from another's on the same device. */
function machineKey({ schedule }: RuleGraph, entries: readonly Entry[]): string {
  const machine = entries.find((entry) => entry.kind === 'machine');
  return [schedule.name, machine?.serial ?? machine?.id ?? entries[0]?.id ?? 'new'].join('-');
}
