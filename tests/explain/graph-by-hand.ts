import type { Amount, Node, RuleGraph, Task } from '../../src/graph/rule-graph.js';

/** A rule before it has an id: parts are written inside it. */
export type Spec = { readonly kind: Node['kind'] } & Readonly<Record<string, unknown>>;

const PARTS = ['parts', 'first', 'then', 'condition', 'part'] as const;
const NO_MARGIN = { size: 0 };

export interface Declared {
  readonly meters?: readonly Partial<RuleGraph['meters'][number]>[];
  readonly gauges?: readonly Partial<RuleGraph['gauges'][number]>[];
  readonly dipsticks?: readonly Partial<RuleGraph['dipsticks'][number]>[];
  readonly duties?: readonly string[];
  readonly events?: readonly string[];
  readonly attachments?: readonly string[];
  readonly defects?: RuleGraph['defects'];
  readonly tasks: readonly (Partial<Omit<Task, 'trigger' | 'gate'>> & {
    readonly id: string;
    readonly trigger?: Spec;
    readonly gate?: Spec;
  })[];
}

/** A rule graph put together by hand, with the origin of node n on line n + 10. */
export function graphByHand(declared: Declared): RuleGraph {
  const nodes: Node[] = [];
  const origin = { source: 0, line: 1, column: 1, text: '' };
  const titled = (ids: readonly string[] | undefined) => (ids ?? []).map((id) => ({ id, title: titleFor(id), origin }));
  const tasks = declared.tasks.map(({ trigger, gate, ...task }): Task => ({
    title: titleFor(task.id),
    site: { seconds: 60, under: [], cautions: [], qualified: false, tools: [], procedure: [] },
    reads: [],
    uses: [],
    torques: [],
    covers: [],
    restarts: [],
    follows: [],
    metBy: [],
    mends: [],
    origin: { ...origin, line: 40, text: `task ${task.id}` },
    ...(trigger === undefined ? {} : { trigger: add(trigger, nodes) }),
    ...(gate === undefined ? {} : { gate: add(gate, nodes) }),
    ...task,
  }));
  return {
    format: 'duewright-rule-graph',
    version: 1,
    fingerprint: '0'.repeat(64),
    schedule: {
      name: 'bench',
      title: 'Bench machine',
      language: 1,
      edition: { number: 3, date: '2026-02-14', by: 'Test bench' },
      fits: [{ model: 'B' }],
      forAttachment: false,
    },
    sources: [{ path: 'bench.due', fingerprint: '0'.repeat(64) }],
    meters: (declared.meters ?? []).map((meter) => ({
      id: 'engine',
      title: 'Hour meter on the dash',
      unit: 'h',
      fromOutings: false,
      origin,
      ...meter,
    })),
    gauges: (declared.gauges ?? []).map((gauge) => ({
      id: 'coolant',
      title: 'Coolant temperature gauge',
      unit: '°C',
      bands: [],
      origin,
      ...gauge,
    })),
    dipsticks: (declared.dipsticks ?? []).map((dipstick) => ({
      id: 'oil',
      title: 'Engine oil dipstick',
      litres: 1.2,
      origin,
      ...dipstick,
    })),
    duties: titled(declared.duties),
    attachments: titled(declared.attachments),
    events: titled(declared.events),
    supplies: [],
    defects: declared.defects ?? [],
    stops: [],
    access: { parts: [], rest: {}, places: [], walks: [], steps: [], nevers: [] },
    nodes,
    tasks,
  };
}

function add(spec: Spec, nodes: Node[]): number {
  const own: Record<string, unknown> = { early: NO_MARGIN, late: NO_MARGIN, lead: NO_MARGIN, count: 'doing', strict: false, ...spec };
  for (const key of PARTS) {
    const value = own[key];
    if (Array.isArray(value)) own[key] = (value as Spec[]).map((part) => add(part, nodes));
    else if (typeof value === 'object' && value !== null) own[key] = add(value as Spec, nodes);
  }
  const id = nodes.length;
  nodes.push({
    ...own,
    id,
    origin: { source: 0, line: id + 10, column: 3, text: typeof spec['text'] === 'string' ? spec['text'] : spec.kind },
  } as unknown as Node);
  return id;
}

function titleFor(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Hours on the engine meter. */
export function hours(count: number, meter = 'engine'): Amount {
  return { on: 'meter', meter, ticks: Math.round(count * 36000) };
}

/** Calendar months. */
export function months(count: number): Amount {
  return { on: 'calendar', unit: 'months', count };
}

/** An interval rule with a lead of a tenth. */
export function every(amount: Amount, more: Readonly<Record<string, unknown>> = {}): Spec {
  const lead = amount.on === 'calendar' ? 14 : Math.min(amount.ticks / 10, 360000);
  return { kind: 'interval', amount, lead: { size: lead }, ...more };
}
