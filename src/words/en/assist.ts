// Words of the editor's own help: what blocks and forms of claims are for, and why a name cannot be renamed.
export const blockHelp = {
  protocol: 'The plan: question, place, tanks, schedule, what is measured.',
  readings: 'A table of readings: `time`, then a column for each tank and quantity.',
  values: 'Named results, one `name = formula` on a line.',
  figure: 'A chart of readings, or of what is computed from them.',
  summary: 'A computed table: by phase, by tank, at chosen times, before and after.',
  limits: 'The limits of the plan held against the readings.',
  methods: 'The methods paragraph, written from plan and readings.',
  results: 'Factual sentences, written from the readings.',
} as const;

export const claimHelp = {
  fill: 'A number that is computed and filled in for you.',
  value: 'A number that must equal its formula.',
  condition: 'Words that stand while a condition is true.',
  stated: 'Something stated with its source, not computed.',
} as const;

export const keywordHelp = {
  in: 'The value in another unit. Of a known substance also from mass to amount or gas volume in a litre: `min(mat.DO) in umol/L`.',
  and: 'Both conditions are true.',
  or: 'At least one condition is true.',
  not: 'The condition is not true.',
  '..': 'A stretch of time from one moment to another.',
} as const;

export const timeHelp = {
  start: 'Start of the schedule.', end: 'End of the schedule.', 'light-off': 'The lamps go off.', 'light-on': 'The lamps come on.',
  sunrise: 'Sunrise at the place.', sunset: 'Sunset at the place.', dawn: 'Start of civil twilight in the morning.', dusk: 'End of civil twilight in the evening.',
} as const;

/** Options of blocks, by block and key. */
export const optionHelp = {
  'figure.show': 'What to draw: `mat.DO`, a quantity for all tanks, a tank, or a formula that is a series, such as `mat.DO - open.DO` or `saturation(mat.DO)`.',
  'figure.from': 'Where the chart starts.', 'figure.to': 'Where the chart ends.',
  'figure.facets': '`tanks`: a small panel for each tank, with one scale for each quantity. `quantities`: a panel for each quantity. There is no second axis.',
  'figure.uncertainty': '`yes` draws the 95 % interval that the instruments’ accuracy leaves, as a band.',
  'figure.title': 'Title of the chart.', 'figure.caption': 'Words before the generated caption.', 'figure.alt': 'Words before the generated text alternative.',
  'figure.spec': 'Your own Vega-Lite: `mark` and `encoding` (or `layer`) and `transform`, within a closed list, over the data set `readings`. Its rows are the readings that count; fields: `time`, `hours`, `series`, `tank`, `label`, `quantity`, `value`, `unit`, `low`, `high`, `phase`, `doubtful`.',
  'summary.of': 'What to sum up: `mat.DO`, a quantity for all tanks, a tank, or a formula that is a series. All readings without it.',
  'summary.rows': '`phases` (as without it), `tanks`, a list of moments `[22:00, 02:00]` or of stretches `[baseline, 22:00..02:00]`, or `before-after light-off` with any moment.',
  'summary.show': 'Functions that make the columns, such as `[min, mean, max]`; lowest and mean without it. For moments `at` or `interpolate`.',
  'summary.from': 'Where the rows of tanks, or the time before, start.', 'summary.to': 'Where the rows of tanks, or the time after, end.', 'summary.caption': 'Words before the generated caption.',
  'limits.for': 'Whose limits to show.',
  'methods.checklist': '`yes` adds the reporting checklist.',
} as const;

export const fileKeyHelp = {
  from: 'The data file, in the folder of the note or below it.', columns: 'What each column of the file holds.', 'time zone': 'The zone of the file’s clock times.',
  sha256: 'Pins the file: a changed file is then noticed.', delimiter: 'What stands between cells.', decimal: 'The decimal mark of the file.',
  'date order': 'The order of day, month and year.', 'header line': 'Line of the column names, from 1.', encoding: 'How the file’s letters are coded.',
} as const;

/** Words that several suggestions share. */
export const shared = {
  gives: 'Gives', source: 'Source', example: 'Example', meanOver: 'Mean over', sampled: 'a reading was taken', next: 'next planned reading', newName: 'a new entry',
} as const;

/** What stands at the places to type at, until something is typed. */
export const fillers = {
  question: 'What do you want to know?', place: 'place', instrument: 'instrument', series: 'tank.quantity', name: 'name', formula: 'formula', number: 'number',
  words: 'words', source: 'source', tank: 'tank', label: 'label', plants: 'water lettuce', plantless: 'none',
} as const;

export const severities = { error: 'error', warning: 'warning', information: 'information', hint: 'hint' } as const;

export type RenameRefusal = 'no-name' | 'built-in' | 'function' | 'sealed-readings' | 'sealed-plan' | 'not-a-name' | 'reserved' | 'taken';

export const renameRefusals: Readonly<Record<RenameRefusal, (args: { readonly name: string; readonly other?: NameKind }) => string>> = {
  'no-name': () => 'Only tanks, groups, quantities, facts, events, phases and named results can be renamed.',
  'built-in': ({ name }) => `“${name}” is a word of the note language and keeps its name.`,
  function: ({ name }) => `“${name}” is a function and keeps its name.`,
  'sealed-readings': ({ name }) => `“${name}” stands in a sealed readings table; a new name would break the seal.`,
  'sealed-plan': ({ name }) => `“${name}” stands in a sealed plan; a new name would count as a deviation.`,
  'not-a-name': ({ name }) => `“${name}” cannot be a name: a letter first, then letters, digits and hyphens.`,
  reserved: ({ name }) => `“${name}” is a word of the note language; choose another.`,
  taken: ({ name, other }) => `“${name}” is already the name of a ${other ? nameKinds[other] : 'thing'} in this note.`,
};

/** What kinds of names are called. */
export const nameKinds = {
  tank: 'tank', group: 'group of tanks', quantity: 'quantity', fact: 'fact of a tank', event: 'event', phase: 'phase', result: 'named result',
  time: 'moment', constant: 'constant',
} as const;
export type NameKind = keyof typeof nameKinds;

/** A quantity of the closed list, as running text calls it. */
export const quantityWord = (name: string): string => name;

export const seriesDetail = (quantity: string, tank: string): string => `${quantity}, ${tank}`;
