import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { misfits } from '../../base/misfits.js';
import { knownMembers } from '../../base/known-members.js';
import { object, text, type TypeOf, whole } from '../../base/typed-shape.js';
import { sha256 } from '../../base/sha256.js';

/** Who holds a lock: enough to tell a live program from a dead one whose number was given to another. */
const holderShape = object({
  pid: whole({ least: 1 }),
  host: text({}),
  /** Tells this computer from others of the same name; a digest, empty where the system does not say. */
  machine: text({}),
  /** One start of the computer; empty where the system does not say. */
  boot: text({}),
  /** When the process started, in the system's own count; empty where it does not say. */
  started: text({}),
  /** The space that the process number counts in (containers have their own); empty where there are none. */
  space: text({}),
  since: text({}),
  /** Tells one taking of the lock from every other. */
  nonce: text({ forms: [/^[0-9a-z-]{8,40}$/] }),
});

export type Holder = TypeOf<typeof holderShape>;

/** This process, as a holder. */
export function thisHolder(since: Date, nonce: string): Holder {
  return {
    pid: process.pid,
    host: hostname(),
    machine: machineId(),
    boot: bootId(),
    started: startOf(process.pid),
    space: pidSpace(),
    since: since.toISOString(),
    nonce,
  };
}

/** Reads a lock file; `null` if it does not say who holds it. */
export function readHolder(bytes: Uint8Array): Holder | null {
  try {
    const value: unknown = JSON.parse(new TextDecoder().decode(bytes));
    return misfits(value, holderShape).length === 0 ? (knownMembers(value, holderShape) as Holder) : null;
  } catch {
    return null;
  }
}

/**
 * Whether the holder is certainly gone. Everything that cannot be told (another computer, another container) counts as alive:
 * a lock is never taken from a live process.
 */
export function isGone(holder: Holder): boolean {
  const boot = bootId();
  if (holder.boot === '' || boot === '') return holder.host === hostname() && isGoneHere(holder);
  if (holder.boot === boot) return isGoneHere(holder);
  // The same computer, started anew since.
  return holder.host === hostname() && holder.machine !== '' && holder.machine === machineId();
}

function isGoneHere(holder: Holder): boolean {
  if (holder.space !== pidSpace()) return false;
  if (!runs(holder.pid)) return true;
  const started = startOf(holder.pid);
  return holder.started !== '' && started !== '' && started !== holder.started;
}

/** "process 4711 on barn, since 2026-05-12T08:30:00.000Z" */
export function holderWords(holder: Holder | null): string {
  return holder === null ? 'a program that did not say which' : `process ${holder.pid} on ${holder.host}, since ${holder.since}`;
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it runs, as another user.
    return !(error instanceof Error && 'code' in error && error.code === 'ESRCH');
  }
}

/** machine-id(5) asks that it is not shown as it is. */
function machineId(): string {
  const id = read('/etc/machine-id');
  return id === '' ? '' : sha256(`duewright ${id}`).slice(0, 16);
}

function bootId(): string {
  return read('/proc/sys/kernel/random/boot_id');
}

function pidSpace(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}

/** Field 22 of /proc/PID/stat, counted after the command's closing bracket, which may hold anything (proc(5)). */
function startOf(pid: number): string {
  const stat = read(`/proc/${pid}/stat`);
  return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return '';
  }
}
