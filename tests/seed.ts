/**
 * The suite tries the same random cases each time, so that it is red only for what changed; `DUEWRIGHT_SEED` tries others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['DUEWRIGHT_SEED'] ?? 20_260_511) });
