import { writeFileSync } from 'node:fs';
import { describeFileFailure } from './describe-file-failure.js';
import { type Parsed, refused, understood } from './parsed.js';

/** Writes a file whole. Refused, with one sentence, where that cannot be done. */
export function writeFile(path: string, text: string): Parsed<string> {
  try {
    writeFileSync(path, text);
    return understood(path);
  } catch (error) {
    return refused(describeFileFailure(path, 'written', error));
  }
}
