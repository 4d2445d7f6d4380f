// How German prose names what a plan holds: tanks and places, quantities, moments.
import type { nameWords as english, Place, Places, TankLabel } from '../en/names.ts';
import { dateWords, listedText, theTank, withArticle } from './grammar.ts';
import { span } from './moments.ts';
import { quantityNouns } from './quantities.ts';

const tank = ({ label }: TankLabel): string => theTank(label, 'nominative');

function place(where: Place): string {
  return where === 'room' ? 'der Raum' : 'name' in where ? `„${where.name}“` : tank(where);
}

/** The dative of what `place` and `places` give: `dem offenen Becken`. */
export function dative(name: string): string {
  return name.replace(/^das (?:(\p{Ll}+)e (?=\p{L}*(?:[Bb]ecken|[Aa]quarium)))?/u, (_, adjective: string | undefined) => `dem ${adjective === undefined ? '' : `${adjective}en `}`)
    .replace(/^der /, 'dem ').replace(/^(beide|alle) /, '$1n ');
}

/** Where tanks are told one after another: `Becken A`, `offenes Becken`. */
export const withoutArticle = (name: string): string => name.replace(/^das (?:(\p{Ll}+e) (?=\p{L}*(?:[Bb]ecken|[Aa]quarium)))?/u, (_, adjective: string | undefined) => (adjective === undefined ? '' : `${adjective}s `));

/** `Becken A` is a name of its own and needs no article in an apposition; `das Mattenbecken` keeps it. */
export const apposed = (name: string): string => name.replace(/^(?:das|dem) (?=Becken [^„])/, '');

/** The accusative of a quantity: `den Sauerstoffgehalt`. */
export const accusative = (what: string): string => what.replace(/^der /, 'den ');

const inside = (name: string): string => `in ${dative(name)}`.replace(/^in dem /, 'im ');

function places({ all, places: each }: Places): string {
  if (!all) return listedText(each.map(place));
  return each.length === 2 ? 'beide Becken' : 'alle Becken';
}

const inEach = (group: Places): readonly string[] => (group.all ? [inside(places(group))] : group.places.map((each) => inside(place(each))));

const tankKeys: Readonly<Record<string, string>> = {
  plants: 'Pflanzen', animals: 'Tiere', equipment: 'Ausrüstung', salinity: 'Salzgehalt', 'running since': 'Betriebsbeginn', size: 'Maße', 'water depth': 'Wassertiefe', volume: 'Wasservolumen',
};

export const nameWords: typeof english = {
  place,
  places,
  inPlace: (where) => inside(place(where)),
  inPlaces: (groups) => listedText(groups.flatMap(inEach)),
  quantity: ({ known, print }) => {
    const found = known === null ? undefined : quantityNouns[known];
    return found ? withArticle(found, 'nominative') : `die Größe „${print}“`;
  },
  series: ({ what, instrument, where }) => `${what}${instrument === null ? '' : ` (Messgerät „${instrument}“)`} ${inside(place(where))}`,
  tankKey: (key) => tankKeys[key] ?? `„${key}“`,
  date: dateWords,
  moment: (clock, date) => `${date === null ? '' : `${date} um `}${clock} Uhr`,
  dateAndClock: (date, clock) => `${date} um ${clock} Uhr`,
  span,
};
