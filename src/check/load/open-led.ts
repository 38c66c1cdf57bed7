/**
 * Opening the file that a clause names.
 */
import { sourceText } from '../../base/source-text.js';
import type { FileNode } from '../../syntax/tree.js';
import { diagnostic } from '../report.js';
import { localPath } from './local-path.js';
import { parseSource, type Lead, type OpenFile, type Shelf } from './shelf.js';

/** Opens the file that a clause names; says why where it cannot. */
export function openLed(shelf: Shelf, lead: Lead): OpenFile | undefined {
  const from = lead.trail.at(-1) ?? '';
  const found = localPath(from, lead.written);
  if ('refused' in found) return refuse(shelf, lead, found.refused);
  const { path } = found;
  if (lead.trail.includes(path)) return loop(shelf, lead, path);
  if (lead.trail.length > shelf.limits.depth) return tooMuch(shelf, lead, `files lead to one another more than ${shelf.limits.depth} deep`);
  const { files } = shelf.limits;
  if (shelf.opened >= 2 * files) return tooMuch(shelf, lead, `files may be opened at most ${2 * files} times, the same one again included`);
  shelf.opened += 1;
  const known = shelf.sources.findIndex((source) => source.name === path);
  const tree = known >= 0 ? parseSource(shelf, shelf.sources[known], known, false) : openNew(shelf, lead, path);
  return tree === undefined ? undefined : { path, tree };
}

function openNew(shelf: Shelf, lead: Lead, path: string): FileNode | undefined {
  const { files } = shelf.limits;
  if (shelf.sources.length >= files) return tooMuch(shelf, lead, `a schedule may be made of at most ${files} files`);
  const text = shelf.load(path);
  if (text === undefined) {
    const help = `The path is looked for in the folder of the file that names it: \`${path}\`. Names that it may declare are not looked up meanwhile.`;
    shelf.diagnostics.push(diagnostic('fileNotFound', { at: lead.at, message: `There is no file \`${lead.written}\`.`, help }));
    return undefined;
  }
  const source = sourceText(path, text);
  shelf.sources.push(source);
  return parseSource(shelf, source, shelf.sources.length - 1, true);
}

function refuse(shelf: Shelf, lead: Lead, why: string): undefined {
  const help = 'Name a file in the same folder or below it, with `/` between folders: "common/diesel.due".';
  shelf.diagnostics.push(diagnostic('pathOutside', { at: lead.at, message: `The path \`${lead.written}\` cannot be used: ${why}.`, help }));
  return undefined;
}

function loop(shelf: Shelf, lead: Lead, path: string): undefined {
  const round = [...lead.trail.slice(lead.trail.indexOf(path)), path].map((step) => `\`${step}\``).join(' leads to ');
  shelf.diagnostics.push(
    diagnostic('fileLoop', {
      at: lead.at,
      message: `The files go round in a loop: ${round}.`,
      help: 'Take out one of the clauses that lead back.',
    }),
  );
  return undefined;
}

function tooMuch(shelf: Shelf, lead: Lead, what: string): undefined {
  const message = `\`${lead.written}\` is not opened, for ${what}.`;
  shelf.diagnostics.push(diagnostic('limitReached', { at: lead.at, message, help: 'Put what belongs together into fewer files.' }));
  return undefined;
}
