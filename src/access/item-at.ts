/**
 * What stands at an index that this house has worked out itself: of a step, a place, a task.
 *
 * Law: an index that the list does not have is a mistake of the program, never of whoever wrote a schedule or asks for a walk-round, whose
 * names are looked up before. It ends the program rather than passing for an answer. (Where the search runs through millions of numbers it
 * reads them from typed arrays as they are.)
 *
 * @throws RangeError where nothing stands there.
 * @example itemAt(machine.origins, move).step
 */
export function itemAt<Item>(list: ArrayLike<Item>, index: number): NonNullable<Item> {
  const item = list[index];
  if (item === undefined || item === null) throw new RangeError(`nothing stands at ${index} of ${list.length}`);
  return item;
}
