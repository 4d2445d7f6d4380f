// The names a formula may use: results, tanks, quantities, events, phases, built-in times, and which of them are taken twice.
import { nearestName } from '../problems/nearest.ts';
import type { Protocol } from '../protocol/types.ts';

export { nearestName };

export type NameKind = 'result' | 'tank' | 'quantity' | 'event' | 'phase' | 'group' | 'time' | 'constant';

/** Kinds in the order in which a bare name is looked up. */
const bareKinds: readonly NameKind[] = ['result', 'tank', 'quantity', 'event', 'phase'];

/** Times that every protocol knows by name. */
export const namedTimes = ['start', 'end', 'light-off', 'light-on', 'sunrise', 'sunset', 'dawn', 'dusk'] as const;
export type NamedTime = (typeof namedTimes)[number];

/** Names of the language that no tank, quantity, event, phase or result may take; the functions are reserved too. */
export const reservedNames: readonly string[] = [
  'room', 'treatment', 'control', ...namedTimes, 'baseline', 'dark', 'recovery', 'and', 'or', 'not', 'in', 'as', 'if', 'stated', 'now',
];

/** Phases that are derived from the lights: with several nights `dark` becomes `dark-1`, `dark-2`. */
export const derivedPhases = ['baseline', 'dark', 'recovery'] as const;

export interface NameTable {
  /** Every name with the kinds that have it. */
  readonly kinds: ReadonlyMap<string, readonly NameKind[]>;
}

export function collectNames(protocol: Protocol | null, resultNames: readonly string[]): NameTable {
  const kinds = new Map<string, NameKind[]>();
  const note = (name: string | null | undefined, kind: NameKind): void => {
    if (!name) return;
    const known = kinds.get(name);
    if (!known) kinds.set(name, [kind]);
    else if (!known.includes(kind)) known.push(kind);
  };
  for (const name of resultNames) note(name, 'result');
  if (protocol) {
    for (const tank of protocol.tanks) note(tank.id, 'tank');
    for (const quantity of protocol.measure) note(quantity.id, 'quantity');
    for (const event of protocol.events) note(event.id, 'event');
    for (const phase of protocol.phases) note(phase.id, 'phase');
    for (const tank of protocol.tanks) note(tank.group?.value, 'group');
  }
  note('room', 'group');
  note('treatment', 'group');
  note('control', 'group');
  for (const name of namedTimes) note(name, 'time');
  note('standard-pressure', 'constant');
  return { kinds };
}

/** The kinds that claim a bare name, first wins; more than one is an error of the note. */
export function bareNameKinds(table: NameTable, name: string): NameKind[] {
  const kinds = table.kinds.get(name) ?? [];
  return bareKinds.filter((kind) => kinds.includes(kind));
}
