// English words of charts: captions, text alternatives, labels. Amounts, clock times and dates arrive as text.
import { dateWords, listedText, numberWord } from './grammar.ts';

export interface PlaceFacts {
  /** A tank's label, or the id of a place that is none. */
  readonly label: string;
  readonly kind: 'tank' | 'room' | 'other';
}

/** What the text alternative tells of one series. Times are `20:00`, or `20:00 on 14 March` in a long run. */
export interface CourseFacts {
  readonly name: string; readonly first: string; readonly firstTime: string; readonly lowest: string; readonly lowestTime: string;
  readonly highest: string; readonly highestTime: string; readonly last: string; readonly lastTime: string; readonly count: number;
  readonly doubtful: number; readonly leftOut: number; readonly outside: number;
  /** Widest half of the 95 % interval, where a band of it is drawn. */
  readonly within: string | null;
}

export const chartWords = {
  /** Of Vega's axis labels: months are those of the dates above. */
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  /** How Vega writes a day below an axis. */
  dayFormat: '%-d %b',
  list: (parts: readonly string[]): string => listedText(parts),
  date: dateWords,
  clock: (clock: string): string => clock,
  moment: (clock: string, date: string): string => `${clock} on ${date}`,
  /** `14 to 15 March 2026`: what the first date shares with the second is left out of it. */
  datesTo: (first: string, last: string): string => `${first} to ${last}`,
  /** A panel's title inside a sentence. */
  titleInside: (title: string): string => title.charAt(0).toLowerCase() + title.slice(1),
  room: 'room',
  /** Many tanks by their number; the room is none of them. */
  inPlaces: (places: readonly PlaceFacts[]): string => {
    const tanks = places.filter(({ kind }) => kind === 'tank');
    const named = (each: readonly PlaceFacts[]): string[] => each.map(({ label }) => (label.startsWith('the ') ? label : `the ${label}`));
    return `in ${listedText(tanks.length > 3 ? [`${numberWord(tanks.length)} tanks`, ...named(places.filter(({ kind }) => kind !== 'tank'))] : named(places))}`;
  },
  seriesName: (label: string, quantity: string | null): string => (quantity === null ? label : `${label}, ${quantity}`),
  noReading: (name: string): string => `${name}: no reading that counts.`,
  oneReading: (name: string, amount: string, time: string): string => `${name}: one reading, ${amount} at ${time}.`,
  course: (facts: CourseFacts): string => {
    const notes = [
      ...(facts.doubtful > 0 ? [`${facts.doubtful} doubtful`] : []), ...(facts.leftOut > 0 ? [`${facts.leftOut} left out`] : []),
      ...(facts.outside > 0 ? [`${facts.outside} outside the instrument's range`] : []),
    ];
    return `${facts.name}: starts at ${facts.first} (${facts.firstTime}), lowest ${facts.lowest} at ${facts.lowestTime}, `
      + `highest ${facts.highest} at ${facts.highestTime}, ends at ${facts.last} (${facts.lastTime}); `
      + `${facts.count} readings${notes.length > 0 ? `, ${listedText(notes)}` : ''}${facts.within === null ? '' : `, each within ± ${facts.within} or less (95 %)`}.`;
  },
  lineChart: (args: { what: string; from: string; to: string; zone: string }): string => `Line chart of ${args.what} from ${args.from} to ${args.to} (${args.zone}).`,
  dark: (spans: readonly (readonly [string, string])[]): string => `Dark: ${nights(spans)}.`,
  twilight: (spans: readonly (readonly [string, string])[]): string => `Civil twilight without lamps: ${nights(spans)}.`,
  events: (events: readonly { readonly label: string; readonly time: string }[]): string => `${events.length === 1 ? 'Event' : 'Events'}: ${events.map((event) => `${event.label} at ${event.time}`).join('; ')}.`,
  limitDrawn: (label: string): string => `Limit drawn: ${label}.`,
  caption: (args: { quantities: string; places: string; dates: string }): string => `${args.quantities} ${args.places}, ${args.dates}.`,
  /** Words of a formula without the article before them. */
  bare: (text: string): string => text.replace(/^the /, ''),
  differenceIn: (quantity: string): string => `difference in ${quantity}`,
  minus: (a: string, b: string): string => `${a} minus ${b}`,
  band: 'band: 95 % interval from the accuracy and resolution of the instruments',
  facets: { tanks: 'One panel for each tank, with one scale for each quantity.', quantities: 'One panel for each quantity.' },
  /** The readings behind a drawing by its author's own specification. */
  shownReadings: (args: { what: string; from: string; to: string; zone: string }): string => `The readings: ${args.what} from ${args.from} to ${args.to} (${args.zone}).`,
  /** Titles of axes and legends by the field of the data set. */
  fields: {
    time: 'Time', hours: 'Hours since the start', series: 'Series', tank: 'Tank', label: 'Tank', quantity: 'Quantity', unit: 'Unit', phase: 'Phase', doubtful: 'Doubtful',
    value: 'Value', low: 'Lower bound (95 %)', high: 'Upper bound (95 %)',
  },
  /** What a channel makes of its field. */
  aggregates: {
    count: 'Readings', mean: 'Mean', median: 'Median', min: 'Lowest', max: 'Highest', sum: 'Sum', stdev: 'Standard deviation', q1: 'First quartile', q3: 'Third quartile',
    distinct: 'Different values',
  },
  /** Of a drawing by its author's own specification: its marks, which field each channel shows, how many rows. */
  ownChart: (args: { readonly marks: readonly string[]; readonly channels: readonly (readonly [string, string])[]; readonly rows: string }): string =>
    `Drawing of ${args.rows} readings with ${listedText(args.marks.length > 0 ? args.marks : ['marks'])}${args.channels.length > 0 ? `, ${listedText(args.channels.map(([channel, field]) => `${channel} shows ${field}`))}` : ''}.`,
  ownRows: (rows: number, without: number): string => `Drawn from ${rows} ${rows === 1 ? 'reading' : 'readings'}${without > 0 ? `; ${without} left out or outside the instrument's range ${without === 1 ? 'is' : 'are'} not among them` : ''}.`,
  shadedDark: 'shaded: dark',
  phases: (phases: readonly { readonly id: string; readonly from: string; readonly to: string }[]): string => `${phases.length === 1 ? 'Phase' : 'Phases'} of the plan: ${phases.map((phase) => `${phase.id} from ${phase.from} to ${phase.to}`).join('; ')}.`,
  framedPhases: (ids: readonly string[]): string => `framed: ${ids.length === 1 ? 'the phase' : 'the phases'} ${listedText(ids)}`,
  shadedTwilight: 'lighter shade: civil twilight, lamps off',
  dashedLimits: 'dashed across: limits stated in the protocol',
  hollow: (count: number): string => `hollow: ${count === 1 ? 'a doubtful reading' : 'doubtful readings'}`,
  crosses: (count: number): string => `${count === 1 ? 'cross: a reading' : 'crosses: readings'} left out of every calculation`,
  arrows: (count: number): string => `${count === 1 ? 'arrow: a value' : 'arrows: values'} outside the instrument's range`,
  brokenLine: 'a line is not drawn over missing readings',
  lightsOff: 'lights off',
  lightsOn: 'lights on',
  sides: { 'at least': 'at least', 'at most': 'at most' },
  limitFor: (bound: string, whom: string): string => `${bound} for ${whom}`,
  inTanks: (what: string, labels: readonly string[]): string => `${what} (${labels.join(', ')})`,
  /** Behind the value in the box beside the pointer. */
  kinds: { plain: '', doubtful: ' (doubtful)', 'left-out': ' (left out)', below: ' or less', above: ' or more' },
  timesIn: (zone: { readonly name: string; readonly offset: string; readonly changed: boolean } | null): string => (zone === null ? 'times in UTC'
    : `times in ${zone.name} (UTC${zone.offset}${zone.changed ? ' throughout; clocks changed' : ''})`),
};

function nights(spans: readonly (readonly [string, string])[]): string {
  const parts = spans.map(([from, to]) => `${from} to ${to}`);
  return parts.length <= 3 ? listedText(parts) : `${parts[0]!} and ${parts.length - 1} later nights`;
}

export type ChartWords = typeof chartWords;
