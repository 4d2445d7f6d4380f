// Facts that follow from the plan and are never typed twice: water volume, named instants, undeclared differences.
import type { NumberValue } from '../quantities/types.ts';
import type { Instant } from '../time/instant.ts';
import type { Protocol, Tank } from './types.ts';

export function waterVolume(_tank: Tank): NumberValue | null { return null; }

/** A key in which tanks differ, with each tank's text in the protocol's order; null where the tank says nothing. */
export interface TankDifference { readonly key: string; readonly texts: readonly { readonly tank: string; readonly text: string | null }[] }

export function undeclaredDifferences(_protocol: Protocol): TankDifference[] { return []; }

/** All instants of the name, in order: `light-off` of a run over three nights has three. */
export function namedInstants(_protocol: Protocol, _name: string): Instant[] { return []; }

/** The instant of the name when there is exactly one. */
export function namedInstant(protocol: Protocol, name: string): Instant | null {
  const all = namedInstants(protocol, name);
  return all.length === 1 ? all[0]! : null;
}
