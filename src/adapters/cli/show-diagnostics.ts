import type { Compiled } from '../../index.js';
import { positionOf } from '../../base/source-text.js';
import type { Style } from '../../render/style.js';

/** The diagnostics of a compilation as people read them; empty if there are none. */
export function showDiagnostics({ diagnostics, sources }: Compiled, _style: Style): string {
  return diagnostics.map((d) => { const s = sources[d.at.file]; const p = s === undefined ? undefined : positionOf(s, d.at.start); return `${s?.name}:${p?.line}:${p?.column}: ${d.severity} ${d.code}: ${d.message}\n`; }).join('');
}
