// The one schema of the plan: every key with type, description and example. The reader validates from it;
// completion, hover and the reference page are made from it.

import { criterionNames } from './criteria.ts';

export type SchemaType =
  | 'text' | 'number' | 'quantity' | 'size' | 'duration' | 'instant' | 'window' | 'sampling' | 'choice' | 'yes-no'
  | 'formula' | 'unit' | 'zone' | 'measure' | 'language' | 'tank' | 'place-of-use' | 'quantity-id' | 'tank-key' | 'problem-code'
  | 'seal' | 'map' | 'named';

/** One key of the plan. */
export interface SchemaKey {
  /** As written; for the entries of a `named` map the placeholder of the name, e.g. `TANK`. */
  readonly key: string;
  /** What the value is. `map`: fixed `keys`. `named`: names of the author's own, each holding `entry`. */
  readonly type: SchemaType;
  /** `many`: a list of such values. `one-or-many`: a single value stands for a list of one. */
  readonly list?: 'many' | 'one-or-many';
  /** One or two sentences for completion, hover and the reference. */
  readonly description: string;
  /** As it would be written behind the key; several lines where the value needs them. */
  readonly example: string;
  /** True where the plan cannot be followed without it. */
  readonly required?: boolean;
  /** For `choice` and `yes-no`: the words allowed. */
  readonly values?: readonly string[];
  /** For `map`. */
  readonly keys?: readonly SchemaKey[];
  /** For `named`. */
  readonly entry?: SchemaKey;
}

const text = (key: string, description: string, example: string): SchemaKey => ({ key, type: 'text', description, example });

const place: SchemaKey = {
  key: 'place', type: 'map', description: 'Where the tanks stand. Coordinates give sunrise, sunset and twilight; the time zone gives every clock time its meaning.',
  example: '{name: Zwolle, latitude: 52.51, longitude: 6.09, elevation: 4 m, time zone: Europe/Amsterdam}',
  keys: [
    text('name', 'The place as the post names it.', 'Zwolle'),
    { key: 'latitude', type: 'number', description: 'Degrees north of the equator; south is negative, or ends with S.', example: '52.51' },
    { key: 'longitude', type: 'number', description: 'Degrees east of Greenwich; west is negative, or ends with W.', example: '6.09' },
    { key: 'elevation', type: 'quantity', description: 'Height above sea level, for the pressure over the water.', example: '4 m' },
    { key: 'time zone', type: 'zone', description: 'IANA name of the zone in which every clock time of the note is read.', example: 'Europe/Amsterdam' },
    {
      key: 'daylight', type: 'yes-no', values: ['yes', 'no'], example: 'no',
      description: 'Write `no` where no daylight reaches the tanks: then only the lamps end the night.',
    },
  ],
};

const tank: SchemaKey = {
  key: 'TANK', type: 'map', description: 'One tank, under the short name that heads and formulas use.', example: '\n  role: treatment\n  size: 50 x 30 x 32 cm',
  keys: [
    { key: 'role', type: 'choice', values: ['treatment', 'control'], description: 'Whether the tank gets the treatment or stands beside it as control.', example: 'treatment' },
    text('group', 'A name for tanks that are treated alike; `GROUP.DO` is their mean.', 'mats'),
    text('label', 'What the prose calls the tank; its short name where nothing is given.', 'floating-mat tank'),
    { key: 'size', type: 'size', description: 'Inner length x width x height of the glass.', example: '50 x 30 x 32 cm' },
    { key: 'water depth', type: 'quantity', description: 'Height of the water column, for the volume and for the exchange through the surface.', example: '28 cm' },
    { key: 'volume', type: 'quantity', description: 'Volume of water, where size and water depth do not give it.', example: '42 L' },
    text('running since', 'Since when the tank has been running, as a date or in words.', '2025-11-02'),
    text('plants', 'The plants in the tank.', 'water lettuce, 80 % cover'),
    text('animals', 'The animals in the tank.', 'none'),
    text('equipment', 'Filter, heater, lamp and what else runs on the tank.', 'sponge filter, 25 W heater'),
    { key: 'salinity', type: 'quantity', description: 'Salinity of the water, for oxygen solubility.', example: '0.2 g/kg' },
    {
      key: 'facts', type: 'named', description: 'Further quantities of the tank, usable in formulas as `TANK.NAME`.', example: '{plant-mass: 120 g}',
      entry: { key: 'FACT', type: 'quantity', description: 'A quantity of the tank with its unit.', example: '120 g' },
    },
    { key: 'like', type: 'tank', description: 'Another tank whose keys this one takes over, all but role, group and label. Keys written here come before those taken over.', example: 'mat' },
  ],
};

const schedule: SchemaKey = {
  key: 'schedule', type: 'map', required: true, description: 'When the run starts and ends, how often is measured, and when the lights go off and on.',
  example: '{start: 2026-03-14 20:00, light off: 22:00, light on: 09:30, end: 2026-03-15 10:00, every: 30 min}',
  keys: [
    { key: 'start', type: 'instant', required: true, description: 'Date and time of the planned first reading.', example: '2026-03-14 20:00' },
    { key: 'end', type: 'instant', description: 'When the run ends. A clock time alone is the first after the start; `start + 14 h` counts from the start.', example: '2026-03-15 10:00' },
    {
      key: 'every', type: 'sampling', list: 'one-or-many', example: '[30 min, 10 min from light-off to light-off + 1 h]',
      description: 'Time between planned readings. A list adds denser stretches: `10 min from light-off to light-off + 1 h`. Whole days keep their clock time when clocks change.',
    },
    {
      key: 'light off', type: 'instant', list: 'one-or-many', example: '22:00',
      description: 'When the lamps go off. A clock time alone repeats daily over the run; with a date it stands once. No `light off`, no dark phase.',
    },
    { key: 'light on', type: 'instant', list: 'one-or-many', example: '09:30', description: 'When the lamps come on. A clock time alone repeats daily over the run; with a date it stands once.' },
  ],
};

const measure: SchemaKey = {
  key: 'measure', type: 'named', required: true, description: 'What is measured, under the short names that heads and formulas use.',
  example: '\n  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}',
  entry: {
    key: 'QUANTITY', type: 'map', description: 'One measured quantity with its instrument. `DO@titration` is a second instrument for DO.',
    example: '{what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L}',
    keys: [
      { key: 'what', type: 'measure', required: true, description: 'The quantity, from the closed list of quantities.', example: 'dissolved oxygen' },
      { key: 'unit', type: 'unit', required: true, description: 'Unit of the readings where the head of a column names no other.', example: 'mg/L' },
      text('with', 'The instrument, in words.', 'optical probe'),
      { key: 'in', type: 'place-of-use', list: 'one-or-many', description: 'The tanks the instrument is used in, or `room`; all tanks where nothing is given.', example: 'room' },
      { key: 'accuracy', type: 'quantity', description: 'Accuracy as the maker states it (95 %), in the unit, or in `%` of the reading; of pH and specific gravity a plain number.', example: '0.1 mg/L' },
      { key: 'resolution', type: 'quantity', description: 'The smallest step that the display shows; of pH and specific gravity a plain number.', example: '0.01 mg/L' },
      text('calibrated', 'When and how the instrument was calibrated.', '2026-03-14 in air-saturated water'),
      { key: 'level', type: 'choice', values: ['station', 'sea'], description: 'For air pressure: as it is at the tanks (`station`), or reduced to sea level (`sea`).', example: 'station' },
      { key: 'reference temperature', type: 'quantity', description: 'For a hydrometer: the temperature printed on it (15, 20 or 25 degC, 60 degF), to whose pure water it compares. Salinity is computed with it.', example: '25 degC' },
      {
        key: 'corrected by', type: 'choice', values: ['side by side'], example: 'side by side',
        description: 'For a second instrument such as `DO@spare`: takes the offset and drift against the plain one, from readings of both in one place at the start and the end, out of its readings in formulas. Without it they are only stated.',
      },
      { key: 'scale', type: 'text', list: 'many', description: 'For what is judged by eye: its words, from least to most.', example: '[calm, restless, surface, gasping]' },
    ],
  },
};

const events: SchemaKey = {
  key: 'events', type: 'map', list: 'many', description: 'What is done during the run besides measuring.', example: '\n  - {at: 06:00, what: fed 0.2 g of flakes, tanks: [mat, open], id: feeding}',
  keys: [
    { key: 'at', type: 'instant', required: true, description: 'When it happens. A clock time alone is the first at or after the start.', example: '06:00' },
    { ...text('what', 'What happens, in words.', 'fed 0.2 g of flakes'), required: true },
    { key: 'tanks', type: 'tank', list: 'one-or-many', description: 'The tanks it happens in; all where nothing is given.', example: '[mat, open]' },
    text('id', 'A short name, so that formulas can use the event as an instant.', 'feeding'),
  ],
};

const equalise: SchemaKey = {
  key: 'equalise', type: 'map', list: 'many', description: 'Steps that make the tanks alike before the treatment counts.',
  example: '\n  - step: Bring both tanks to one temperature\n    accept: abs(mat.T - open.T) <= 0.5 degC',
  keys: [
    { ...text('step', 'What is done, as an instruction.', 'Bring both tanks to one temperature'), required: true },
    text('why', 'What difference it takes away.', 'equal nitrifier oxygen demand'),
    { key: 'accept', type: 'formula', description: 'A condition that must hold at every paired reading from the start to lights-off.', example: 'abs(mat.T - open.T) <= 0.5 degC' },
    text('done', 'When and how it was done.', '2026-03-13, filters swapped'),
  ],
};

const limits: SchemaKey = {
  key: 'limits', type: 'map', list: 'many', description: 'Levels that protect the animals, each with its source.',
  example: '\n  - {for: Corydoras, quantity: DO, at least: 4 mg/L, source: "invented for this example"}',
  keys: [
    { ...text('for', 'The species, or whom or what the limit protects.', 'Corydoras'), required: true },
    { key: 'quantity', type: 'quantity-id', required: true, description: 'A measured quantity of this plan.', example: 'DO' },
    { key: 'at least', type: 'quantity', description: 'The lowest level that is still good.', example: '4 mg/L' },
    { key: 'at most', type: 'quantity', description: 'The highest level that is still good.', example: '28 degC' },
    {
      key: 'criterion', type: 'choice', values: criterionNames, example: 'EPA 1986 warm water, other life stages',
      description: 'A published criterion for dissolved oxygen by its name. It brings whom it protects, its levels and its citation, so that `for`, `at least` and `source` are not needed.',
    },
    text('source', 'Where the limit comes from.', 'keeper\'s handbook, page 12'),
  ],
};

const stopIf: SchemaKey = {
  key: 'stop if', type: 'map', list: 'many', description: 'Conditions under which the run ends early, left-out and doubtful readings included.',
  example: '\n  - when: mat.DO < 3 mg/L\n    do: Switch the air pump on and end the run',
  keys: [
    { key: 'when', type: 'formula', required: true, description: 'The condition, looked at with every reading.', example: 'mat.DO < 3 mg/L' },
    text('do', 'What is then done.', 'Switch the air pump on and end the run'),
    text('outcome', 'What was done when the rule was crossed; the rule then counts as written up.', 'pump switched on at 06:35, run ended'),
  ],
};

/** The whole plan: the map that a `protocol` block holds. */
export const protocolSchema: SchemaKey = {
  key: 'protocol', type: 'map', description: 'The plan of an experiment: question, place, tanks, schedule and measurements.', example: '',
  keys: [
    text('title', 'Title of the post; the first heading where nothing is given.', 'Overnight oxygen under water lettuce'),
    text('question', 'The question that the run is to answer.', 'Does a floating mat lower the overnight oxygen minimum?'),
    text('hypothesis', 'What is expected, written before the first reading.', 'The mat tank falls lower.'),
    text('answer', 'The answer to the question in one sentence, for the summary card. Its numbers are written as claims and checked when the card is made.', 'The mat tank fell to {4.80 mg/L = min(mat.DO)}, the open tank stayed above 8 mg/L.'),
    text('by', 'Who ran it, as the post should say it.', 'the author'),
    { key: 'published', type: 'instant', description: 'When it is published, with date; the post prints it. Without it, and without the option of the command line, no time is printed.', example: '2026-04-13 10:00' },
    { key: 'language', type: 'language', description: 'Language of the prose, as a code; decimal marks in claims follow it.', example: 'en' },
    text('licence', 'Under which licence text and data may be used.', 'CC BY 4.0'),
    place,
    {
      key: 'tanks', type: 'named', required: true, entry: tank, description: 'The tanks, each under a short name.',
      example: '\n  mat:\n    role: treatment\n    size: 50 x 30 x 32 cm\n  open:\n    role: control\n    like: mat',
    },
    { key: 'differs', type: 'tank-key', list: 'one-or-many', description: 'The keys in which the tanks are meant to differ: the treatment.', example: '[plants]' },
    schedule,
    events,
    measure,
    equalise,
    {
      key: 'phases', type: 'named', description: 'Stretches of the run with names of your own, usable in formulas as windows.',
      example: '{settling: 20:00..21:00, late: light-off + 3 h..end}',
      entry: { key: 'PHASE', type: 'window', description: 'From..to: clock times, dates, or names such as light-off with + or - a duration.', example: 'light-off + 3 h..end' },
    },
    limits,
    stopIf,
    {
      key: 'expect', type: 'map', list: 'many', example: '\n  - {quantity: DO, effect: 0.5 mg/L, rate: 0.4 mg/L/h}',
      description: 'What is expected before the run: the design check holds interval and instruments against it.',
      keys: [
        { key: 'quantity', type: 'quantity-id', required: true, description: 'A measured quantity of this plan.', example: 'DO' },
        { key: 'effect', type: 'quantity', description: 'The smallest difference between treatment and control that the run is to show.', example: '0.5 mg/L' },
        { key: 'rate', type: 'quantity', description: 'How fast the quantity may change, as an amount per hour.', example: '0.4 mg/L/h' },
      ],
    },
    {
      key: 'order', type: 'tank', list: 'one-or-many', example: '[mat, open]',
      description: 'The order in which the tanks are read at each slot: a list, `alternate` (the first tank moves one on at each slot) or `random` (drawn for each slot from the seed).',
    },
    text('seed', 'Seed of the draw that gave treatment and order.', '20260314'),
    { key: 'pair within', type: 'duration', description: 'Readings of different tanks at most this far apart count as taken together. Without it, times must be equal.', example: '1 min' },
    text('repeats', 'The earlier run that this one repeats: its note, and the digest of its plan.', 'lettuce-1.tank.md'),
    { key: 'accepted', type: 'problem-code', list: 'one-or-many', description: 'Codes of warnings that the author has looked at and lets stand.', example: '[below-resolution]' },
    { key: 'sealed', type: 'seal', description: 'Time and digest of the plan when it was fixed; later changes are listed as deviations.', example: '2026-03-14T19:00+01:00 sha256:…' },
  ],
};

/** The entry for a key of a map, or null. */
export function schemaKey(map: SchemaKey, key: string): SchemaKey | null {
  return map.type === 'named' ? map.entry ?? null : map.keys?.find((each) => each.key === key) ?? null;
}

/** The entry at a path of keys from the top, list positions left out: `['tanks', 'mat', 'size']`. Null where there is none. */
export function schemaAt(path: readonly string[]): SchemaKey | null {
  let entry: SchemaKey | null = protocolSchema;
  for (const key of path) entry = entry && schemaKey(entry, key);
  return entry;
}
