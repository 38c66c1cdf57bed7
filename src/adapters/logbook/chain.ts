import { sha256 } from '../../base/sha256.js';

/**
 * The hash that a chained line carries.
 *
 * It covers the hash of the chained line before it (nothing for the first), the plain lines since then, each with a line feed,
 * and the line itself as it stands without its `hash` member. Anybody can check it with a shell and `sha256sum`: docs/logbook.md.
 */
export function link(previous: string, between: readonly string[], body: string): string {
  return sha256(`${previous}\n${between.map((line) => `${line}\n`).join('')}${body}`);
}

const SEAL = /,"hash":"([0-9a-f]{64})"\}$/;

/** A chained line taken apart, or `null` for a line without a hash at its end. */
export function unseal(line: string): { readonly body: string; readonly hash: string } | null {
  const match = SEAL.exec(line);
  return match?.[1] === undefined ? null : { body: `${line.slice(0, match.index)}}`, hash: match[1] };
}

/** Puts the hash into a line; the inverse of {@link unseal}. */
export function seal(body: string, hash: string): string {
  return `${body.slice(0, -1)},"hash":"${hash}"}`;
}
