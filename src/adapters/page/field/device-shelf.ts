/// <reference lib="dom" />
/**
 * What this device keeps between openings of the page. A device that keeps nothing (private windows, full storage) is told of.
 */

/** A shelf for texts, by name. */
export interface DeviceShelf {
  readonly get: (name: string) => string | null;
  /** False where the device would not take it. */
  readonly set: (name: string, text: string | null) => boolean;
  /** Called when another window of this page has put something there. */
  readonly onChange: (act: () => void) => void;
}

/** The browser's own storage, under a name that belongs to one machine. */
export function deviceShelf(machine: string): DeviceShelf {
  const key = (name: string): string => `duewright-field/${machine}/${name}`;
  // Where storage is refused, this window at least remembers.
  const memory = new Map<string, string>();
  return {
    get: (name) => attempt(() => localStorage.getItem(key(name)), null) ?? memory.get(name) ?? null,
    set: (name, text) => {
      if (text === null) memory.delete(name);
      else memory.set(name, text);
      return attempt(() => {
        if (text === null) localStorage.removeItem(key(name));
        else localStorage.setItem(key(name), text);
        return true;
      }, false);
    },
    onChange: (act) =>
      addEventListener('storage', ({ key: changed }) => {
        if (changed === null || changed.startsWith(key(''))) act();
      }),
  };
}

function attempt<T>(act: () => T, otherwise: T): T {
  try {
    return act();
  } catch {
    return otherwise;
  }
}
