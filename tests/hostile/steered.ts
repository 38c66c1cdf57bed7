/**
 * A machine whose every title is made to reach a page or a terminal.
 */
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { compileFile } from '../support/compile-text.js';

const HEADER = 'language 1 edition 1 of 2026-01-01 by "B" fits model "M"';

/** Would run as a script, break out of a block of data or of an attribute, or load something. */
export const MARKUP = `<script>alert(1)</script></script><script>globalThis.hurt=1</script><img src=x onerror='globalThis.hurt=1'>&amp;" onload='globalThis.hurt=1' <!--<script>`;
/** Would steer a terminal, or turn the direction of what is read. */
export const STEER = '\u001b]0;title\u0007\u001b[2J\u009b31m\u202e\u2066';

/** A machine whose every title, and a logbook whose every word, is made to reach a page or a terminal. The graph is bent, for the parser refuses such signs. */
export function steered(): { readonly graph: RuleGraph; readonly entries: readonly Entry[] } {
  const graph = compileFile(`schedule t "XX" ${HEADER}
meter m "XX" counts h  gauge g "XX" reads °C  dipstick o "XX" low to full is 1 L  supply s "XX" each
position p "XX" a, b  at rest p a  place l "XX"  step f "XX" p a to b warning "XX" back "XX" takes 1 min at l
task t "XX" every 10 h of m or 1 month, whichever first with p b at l uses 1 s needs "XX" do "XX" warning "XX" reason "XX" source "XX" reads g below 5 °C hold "XX" from 5 °C fine
task u "XX" every 20 h of m sooner at half the time that o takes to fall to low`);
  const bent = JSON.parse(JSON.stringify(graph).replaceAll('XX', JSON.stringify(MARKUP + STEER).slice(1, -1))) as RuleGraph;
  const words = MARKUP + STEER;
  const entry = (id: string, on: string, more: object): Entry => ({ id, on, by: words, note: words, ...more }) as Entry;
  const entries = [
    entry(`a${words}`.slice(0, 100), '2026-01-01', { kind: 'machine', model: words, inService: '2025-01-01' }),
    entry('b', '2026-02-01', { kind: 'done', tasks: ['t'], meters: { m: 10 }, readings: { g: 3, o: 1 }, used: { s: 1 } }),
    entry('c', '2026-03-01', { kind: 'reading', meters: { m: 30 }, readings: { o: 0.5 } }),
    entry('d', '2026-03-02', { kind: 'finding', text: words }),
    entry('e', '2026-03-02', { kind: 'reading', meters: { [words.slice(0, 100)]: 30 } }),
  ];
  return { graph: { ...bent, fingerprint: graphFingerprint(bent) }, entries };
}
