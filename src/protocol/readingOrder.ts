// The order in which the tanks are read at one slot: as listed, alternating, or drawn from the plan's seed.
import { seededRandom } from '../statistics/random.ts';
import type { Protocol } from './types.ts';

/** Tanks in the order that the plan lists, tanks it does not list behind them. */
export function listedOrder(protocol: Pick<Protocol, 'order' | 'tanks'>): string[] {
  const listed = protocol.order.map((tank) => tank.value);
  return [...new Set([...listed, ...protocol.tanks.map((tank) => tank.id)])];
}

/** Ids of the tanks in the order of the slot at position `slot`, from 0. The same plan gives the same order on every machine. */
export function readingOrder(protocol: Pick<Protocol, 'order' | 'orderRule' | 'tanks' | 'seed'>, slot: number): string[] {
  const tanks = listedOrder(protocol);
  if (tanks.length < 2) return tanks;
  switch (protocol.orderRule?.value) {
    case 'alternate': {
      const first = ((slot % tanks.length) + tanks.length) % tanks.length;
      return [...tanks.slice(first), ...tanks.slice(0, first)];
    }
    case 'random': return seededRandom(`${protocol.seed?.value ?? ''} ${slot}`).shuffle(tanks);
    default: return tanks;
  }
}
