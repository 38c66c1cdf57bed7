import { isAbsolute } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The path of a file's address. A text that is no file yet (`untitled:…`) goes by its address: it has no place among other files. */
export function pathOf(uri: string): string {
  try {
    return fileURLToPath(uri);
  } catch {
    return uri;
  }
}

/** The address of what {@link pathOf} gave. */
export function uriOf(path: string): string {
  return isAbsolute(path) ? pathToFileURL(path).href : path;
}
