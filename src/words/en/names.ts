// How English prose names what a plan holds: tanks and places, quantities, moments.
import { dateWords, listedText, theThing } from './grammar.ts';

/** A tank as the plan names it; `label` is its id where the plan gives no label. */
export interface TankLabel { readonly id: string; readonly label: string }
/** A place of readings: a tank, the room, or a name that the plan does not know. */
export type Place = TankLabel | 'room' | { readonly name: string };
/** `all` when the places are all tanks of the plan, which then are more than one. */
export interface Places { readonly all: boolean; readonly places: readonly Place[] }

function tank({ id, label }: TankLabel): string {
  return theThing(label === id && !/tank|pond|jar|bowl|vat/i.test(id) ? `tank ${id}` : label).replace(/^the tank (?=\S+$)/, 'tank ');
}

function place(where: Place): string {
  return where === 'room' ? 'the room' : 'name' in where ? where.name : tank(where);
}

function places({ all, places: each }: Places): string {
  if (!all) return listedText(each.map(place));
  return each.length === 2 ? 'both tanks' : 'all tanks';
}

export const nameWords = {
  /** `the floating-mat tank`, `the room`. */
  place,
  /** `both tanks`, `tank A and tank C`. */
  places,
  /** `in the floating-mat tank`. */
  inPlace: (where: Place): string => `in ${place(where)}`,
  /** `in both tanks`, `in both tanks and the room`; empty for no place. */
  inPlaces: (groups: readonly Places[]): string => (groups.length === 0 ? '' : `in ${groups.map(places).join(' and ')}`),
  /** `dissolved oxygen`. `known` is its name in the closed list, null for one that is not there; `print` its English name. */
  quantity: (args: { known: string | null; print: string }): string => args.print,
  /** `dissolved oxygen by probe-2 in the floating-mat tank`. */
  series: (args: { what: string; instrument: string | null; where: Place }): string => `${args.what}${args.instrument === null ? '' : ` by ${args.instrument}`} in ${place(args.where)}`,
  /** `plants`: a key of a tank in the plan. */
  tankKey: (key: string): string => key,
  date: dateWords,
  /** `06:30`, `06:30 on 15 March`. */
  moment: (clock: string, date: string | null): string => (date === null ? clock : `${clock} on ${date}`),
  /** `11 April 2026 at 18:00`. */
  dateAndClock: (date: string, clock: string): string => `${date} at ${clock}`,
  span: (from: string, to: string): string => `${from} to ${to}`,
};
