import { createHash } from 'node:crypto';
import { escapeHtml } from '../../../render/escape-html.js';

/** What the head of a page that stands alone is made of. */
export interface PageHead {
  readonly title: string;
  /** What the page may load or run, besides the nothing that every page starts from: `script-src 'sha256-…'`. */
  readonly allows: readonly string[];
  readonly css: string;
}

/**
 * A page from its first line to the end of its head. Its policy stands before all that it governs: whatever is not allowed by name may
 * not be fetched, run or sent.
 */
export function pageHead({ title, allows, css }: PageHead): string {
  const policy = ["default-src 'none'", ...allows, "base-uri 'none'", "form-action 'none'"].join('; ');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(title)}</title>
<style>${css}</style>
</head>`;
}

/** How a policy names a script or a style that stands in the page. */
export function sourceHash(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}
