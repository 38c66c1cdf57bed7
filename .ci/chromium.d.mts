/** The path of a Chromium that can be started, or undefined. */
export function findChromium(): Promise<string | undefined>;
