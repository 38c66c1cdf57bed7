/**
 * Closes a `switch` over a closed union: the compiler proves that it cannot be reached.
 *
 * @throws Error at run time when a value from outside the types gets here, which is a bug of ours or of the embedder.
 */
export function assertNever(value: never): never {
  throw new Error(`unexpected value: ${JSON.stringify(value)}`);
}
