/** Stands in for Node's own module in the command's bundle, which starts no programs. */
export function spawn() {
  throw new Error('this command starts no other programs');
}
