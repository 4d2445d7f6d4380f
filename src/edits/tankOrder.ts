// The order in which the tanks are read at one planned time: as listed, moved on by one each time, or drawn from the seed.
import { sha256Of } from '../protocol/sha256.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Instant } from '../time/instant.ts';

/**
 * Ids of all tanks in reading order. `order: [open, mat]`: as listed, others behind. `alternate`: the first tank moves one
 * on at each slot. `random`: sorted by SHA-256 of `seed`, the slot's time and the tank's id, so that the draw can be
 * repeated by anyone. Without an order: as the plan lists the tanks. `slot` null counts as the first slot.
 */
export function tankOrder(protocol: Protocol, slot: Instant | null): string[] {
  const ids = protocol.tanks.map((tank) => tank.id);
  const rule = protocol.orderRule?.value ?? null;
  if (rule === 'alternate' && ids.length > 0) {
    const at = Math.max(0, slot === null ? 0 : protocol.schedule?.slots.indexOf(slot) ?? 0) % ids.length;
    return [...ids.slice(at), ...ids.slice(0, at)];
  }
  if (rule === 'random') {
    const when = new Date(slot ?? protocol.schedule?.start ?? 0).toISOString();
    const drawn = new Map(ids.map((id) => [id, sha256Of(`${protocol.seed?.value ?? ''}|${when}|${id}`)]));
    return [...ids].sort((a, b) => (drawn.get(a)! < drawn.get(b)! ? -1 : 1));
  }
  const listed = protocol.order.map((tank) => tank.value).filter((id) => ids.includes(id));
  return [...listed, ...ids.filter((id) => !listed.includes(id))];
}

/** True when the plan says anything about the order; else a table is typed as its columns stand. */
export function hasOrder(protocol: Protocol): boolean {
  return protocol.orderRule !== undefined || protocol.order.length > 0;
}
