/**
 * A syntax tree as one line per declaration, places left out, for golden cases.
 */
import type { FileNode } from '../../src/syntax/tree.js';

const plain = new Set(['name', 'number', 'date', 'time', 'unit']);

/** Header, declarations and comments, one line each. */
export function outline(file: FileNode): readonly string[] {
  const { role, name, title, clauses } = file.header;
  return [
    `${role} ${name.text} ${JSON.stringify(title.text)} ${clauses.map(show).join(' ')}`.trimEnd(),
    ...file.declarations.map(show),
    ...file.comments.map((each) => `comment ${each.text}`),
  ];
}

function show(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(show).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return String(value);
  const { kind, at: _at, ...rest } = value as Record<string, unknown>;
  if (kind === 'text') return JSON.stringify(rest['text']);
  if (typeof kind === 'string' && plain.has(kind)) return String(rest['text']);
  if (kind === 'quantity') return `${show(rest['number'])} ${show(rest['unit'])}`;
  if (kind === 'percent') return `${show(rest['number'])} %`;
  const fields = Object.entries(rest)
    .filter(([, each]) => each !== false && !(Array.isArray(each) && each.length === 0))
    .map(([key, each]) => (each === true ? key : typeof each === 'string' ? each : `${key}:${show(each)}`));
  return `${typeof kind === 'string' ? kind : ''}(${fields.join(' ')})`;
}
