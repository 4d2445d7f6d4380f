// Facts that follow from the plan and are never typed twice: water volume, named instants, undeclared differences.
import type { NumberValue } from '../quantities/types.ts';
import { parseUnit } from '../quantities/units.ts';
import type { Instant } from '../time/instant.ts';
import { timesByName } from './readSchedule.ts';
import { quantityOf } from './values.ts';
import type { Phase, Protocol, Tank } from './types.ts';

/**
 * Volume of the water in litres: length x width x water depth; the typed volume where these are not all given.
 * Null when neither is known. Sizes carry no stated accuracy, so neither does the volume.
 */
export function waterVolume(tank: Pick<Tank, 'size' | 'waterDepth' | 'volume'>): NumberValue | null {
  const litre = parseUnit('L');
  if (!litre) return null;
  if (tank.size && tank.waterDepth) {
    const { length, width } = tank.size;
    // Factors lead to metres, so the product is in cubic metres.
    const cubicMetres = [length, width, tank.waterDepth].reduce((product, side) => product * side.value * side.unit.factor, 1);
    return quantityOf(tidy(cubicMetres / litre.factor), litre);
  }
  return tank.volume && quantityOf(tidy(tank.volume.value * tank.volume.unit.factor / litre.factor), litre);
}

/** Takes away the last digits that binary fractions leave behind: 42.00000000000001 is 42. */
function tidy(value: number): number {
  return Number(value.toPrecision(14));
}

/** A key in which tanks differ, with each tank's text in the protocol's order; null where the tank says nothing. */
export interface TankDifference { readonly key: string; readonly texts: readonly { readonly tank: string; readonly text: string | null }[] }

const neverADifference = ['role', 'group', 'label', 'like'];

/** Every key (and fact) in which at least two tanks differ, in the order in which the protocol writes them. */
export function allDifferences(protocol: Pick<Protocol, 'tanks'>): TankDifference[] {
  const keys = new Set(protocol.tanks.flatMap((tank) => [...tank.written.keys()]).filter((key) => !neverADifference.includes(key)));
  const differences: TankDifference[] = [];
  for (const key of keys) {
    const texts = protocol.tanks.map((tank) => ({ tank: tank.id, text: tank.written.get(key)?.value ?? null }));
    if (texts.some((each) => each.text !== texts[0]?.text)) differences.push({ key, texts });
  }
  return differences;
}

/** Differences between tanks that `differs` does not name. */
export function undeclaredDifferences(protocol: Pick<Protocol, 'tanks' | 'differs'>): TankDifference[] {
  const declared = new Set(protocol.differs.map((each) => each.value));
  return allDifferences(protocol).filter((each) => !declared.has(each.key));
}

/**
 * All instants of a name within the run, in order: `light-off` of a run over three nights has three, `light-off-2` is the second.
 * Names: start, end, light-off, light-on, sunrise, sunset, dawn, dusk, and the ids of events. Empty where there is none.
 */
export function namedInstants(protocol: Pick<Protocol, 'schedule' | 'sun' | 'events'>, name: string): Instant[] {
  const event = protocol.events.filter((each) => each.id === name).map((each) => each.at);
  if (event.length || !protocol.schedule) return event;
  const times: Readonly<Record<string, readonly Instant[]>> = timesByName(protocol.schedule, protocol.sun);
  if (Object.hasOwn(times, name)) return [...times[name]!];
  const numbered = /^(light-off|light-on|sunrise|sunset|dawn|dusk)-(\d+)$/.exec(name);
  const one = numbered ? times[numbered[1]!]?.[Number(numbered[2]) - 1] : undefined;
  return one === undefined ? [] : [one];
}

/** The instant of the name when there is exactly one. */
export function namedInstant(protocol: Pick<Protocol, 'schedule' | 'sun' | 'events'>, name: string): Instant | null {
  const all = namedInstants(protocol, name);
  return all.length === 1 ? all[0]! : null;
}

/** Phases that a name means: one, or over several nights all of `dark-1`, `dark-2`… for the bare `dark`. */
export function namedPhases(protocol: Pick<Protocol, 'phases'>, name: string): Phase[] {
  const exact = protocol.phases.filter((phase) => phase.id === name);
  if (exact.length) return exact;
  return name === 'dark' || name === 'recovery' ? protocol.phases.filter((phase) => phase.typed === null && phase.id.startsWith(`${name}-`)) : [];
}
