import type { Compiled } from '../../index.js';
import { renderDiagnostics } from '../../render/diagnostics.js';
import type { Style } from '../../render/style.js';

/** The diagnostics of a compilation as people read them; empty if there are none. */
export function showDiagnostics({ diagnostics, sources }: Compiled, style: Style): string {
  return diagnostics.length === 0 ? '' : renderDiagnostics(diagnostics, sources, style);
}
