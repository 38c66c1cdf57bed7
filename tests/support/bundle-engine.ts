import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** `src/engine.ts` as an embedder bundles it for a browser: its text, and the files that went into it. */
export async function bundleEngine(): Promise<{ readonly text: string; readonly inputs: readonly string[] }> {
  const { outputFiles, metafile } = await build({
    absWorkingDir: fileURLToPath(new URL('../..', import.meta.url)),
    entryPoints: ['src/engine.ts'],
    bundle: true,
    minify: true,
    // With this platform esbuild fails on an import of Node's own modules.
    platform: 'browser',
    format: 'esm',
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  return { text: outputFiles[0]?.text ?? '', inputs: Object.keys(metafile.inputs) };
}
