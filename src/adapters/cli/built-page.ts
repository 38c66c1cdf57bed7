import { fileURLToPath } from 'node:url';
import { readText } from './read-text.js';
import { type Parsed, refused } from './parsed.js';

/** A file that is built beside the command: where it is. @param path from the folder that holds `cli/`. */
export function builtPath(path: string): string {
  return fileURLToPath(new URL(`../${path}`, import.meta.url));
}

/** Its text. Refused where it is not there: the pages are built with everything else. */
export function builtPage(path: string): Parsed<string> {
  const read = readText(builtPath(path));
  return read.ok ? read : refused(`${read.problem} The pages belong to the build: \`npm run build\` makes them.`);
}
