// English words of summary tables: heads, rows, captions. Amounts, clock times and names of tanks arrive as text.
import { listedText } from './grammar.ts';

/** A stretch of time that the rows of a table are about. */
export interface StretchFacts {
  /** `baseline`, `before`; empty where the stretch has no name of its own. */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Fewest and most readings of a column in it. */
  readonly readings: { readonly least: number; readonly most: number } | null;
}

/** What the figures of a column are, by function. */
const functions: Readonly<Record<string, string>> = {
  at: 'reading', interpolate: 'interpolated', first: 'first', last: 'last', count: 'readings', missing: 'missed', min: 'lowest', max: 'highest', mean: 'mean', median: 'median',
  sd: 'standard deviation', range: 'range', 'time-of-min': 'time of lowest', 'time-of-max': 'time of highest', change: 'change', rise: 'rise', fall: 'fall',
  'percent-change': 'change in per cent', 'percent-rise': 'rise in per cent', 'percent-fall': 'fall in per cent', rate: 'rate, end to end', slope: 'slope', 'robust-slope': 'robust slope',
  'steepest-fall': 'steepest fall', 'steepest-rise': 'steepest rise', 'turning-point': 'turning point', respiration: 'respiration', reaeration: 'reaeration',
  'balance-point': 'balance point', 'predicted-min': 'predicted lowest',
};

const readingsText = ({ least, most }: { readonly least: number; readonly most: number }): string => (least === most ? `${most} ${most === 1 ? 'reading' : 'readings'}` : `${least} to ${most} readings`);

const countText = ({ least, most }: { readonly least: number; readonly most: number }): string => (least === most ? String(most) : `${least} to ${most}`);

export const summaryWords = {
  function: (name: string): string => functions[name] ?? name,
  list: listedText,
  gap: 'treatment − control',
  /** Where several tanks stand on a side. */
  gapOfMeans: 'treatment − control (means of the tanks)',
  time: 'Time',
  tank: 'Tank',
  stretch: 'Stretch of time',
  phaseHead: 'Phase',
  phase: (id: string): string => id.replace(/^dark(?=$|-)/, 'dark').replaceAll('-', ' '),
  before: (moment: string): string => `before ${moment}`,
  after: (moment: string): string => `after ${moment}`,
  change: 'after minus before',
  moments: { 'light-off': 'lights-off', 'light-on': 'lights-on', start: 'the start', end: 'the end', sunrise: 'sunrise', sunset: 'sunset', dawn: 'dawn', dusk: 'dusk' } as Readonly<Record<string, string>>,
  event: (what: string): string => `“${what}”`,
  span: (from: string, to: string): string => `${from} to ${to}`,
  whole: 'all readings',
  nothing: 'There is nothing to sum up yet.',
  noValue: 'no value',
  of: (series: string, head: string): string => `${series}, ${head}`,
  caption: (args: { readonly quantities: string; readonly rows: 'phases' | 'windows' | 'tanks' | 'times' | 'before-after'; readonly moment: string | null }): string => {
    const by = { phases: 'by phase', windows: 'by stretch of time', tanks: 'by tank', times: 'at chosen times', 'before-after': `before and after ${args.moment ?? ''}` }[args.rows];
    return `${args.quantities} ${by}.`;
  },
  stretches: (stretches: readonly StretchFacts[]): string => {
    const counts = stretches.every((each) => each.readings !== null);
    return `${stretches.map((each, index) => {
      const said = `${each.name === '' ? '' : `${each.name}: `}${each.from} to ${each.to}`;
      if (!counts) return said;
      return `${said}, ${index === 0 ? `${readingsText(each.readings!)} a column` : countText(each.readings!)}`;
    }).join('; ').replace(/^./u, (letter) => letter.toUpperCase())}.`;
  },
  readings: (count: { readonly least: number; readonly most: number }): string => `Each column counts ${readingsText(count)}.`,
  percentBase: 'Percentages are of the first reading of the same stretch of time.',
  lightsOff: 'The reading at lights-off serves both sides for changes, lowest and highest, and counts to the time before in means and counts.',
  sharedMoment: (moment: string): string => `A reading at ${moment} itself counts to both sides.`,
  uncertainty: 'Figures after ± are half of a 95 % interval, from the stated accuracy and resolution of the instruments.',
  uncertaintyOfFits: 'Figures after ± are half of a 95 % interval: of fitted values from the scatter about the fit, of others from the stated accuracy and resolution of the instruments.',
  contrast: 'The change of treatment minus control is a contrast paired in time; its ± counts the scatter of the readings and how far each follows the one before.',
  contrastOfTanks: 'The change of treatment minus control is a contrast in which each tank counts once.',
};

export type SummaryWords = typeof summaryWords;
