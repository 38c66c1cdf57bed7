import type { BuildOptions } from 'esbuild';

/** Bundles the command into a folder of its own, whose name ends with a slash: everything in it, the compiler in a file apart. */
export function buildCommand(folder: string): Promise<void>;
/** Lays down beside a command what V8 makes of it, in a folder `code`, for the Node that runs this. */
export function layDownCode(folder: string): void;
/** The library entries: our code, with packages left to whoever installs us. */
export const library: BuildOptions;
