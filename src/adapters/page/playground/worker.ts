/// <reference lib="dom" />
/**
 * The workbench on a thread of its own, so that typing and sliding never wait for it.
 */
import type { Ask, Told } from './told.js';
import { Workbench } from './workbench.js';

/** The little of a worker's scope that is used here. */
interface Scope {
  onmessage: ((event: MessageEvent<Ask>) => void) | null;
  postMessage: (told: Told) => void;
}

function run(scope: Scope): void {
  const bench = new Workbench(() => performance.now());
  let busy = false;
  // Between two steps newer messages are let in.
  const { port1, port2 } = new MessageChannel();
  const next = (): void => {
    const done = bench.work();
    busy = done !== null;
    if (done?.told != null) scope.postMessage(done.told);
    if (busy) port2.postMessage(null);
  };
  port1.onmessage = next;
  scope.onmessage = ({ data }) => {
    bench.take(data);
    if (busy) return;
    busy = true;
    port2.postMessage(null);
  };
}

run(globalThis);
