import type { BuildOptions } from 'esbuild';

/** The command: everything in it, the compiler in chunks of its own. */
export const command: BuildOptions;
/** The library entries: our code, with packages left to whoever installs us. */
export const library: BuildOptions;
