// English words of the open data: what each table, column and file holds.
const apostrophe = 'Text that begins with =, +, - or @ is preceded by an apostrophe.';
const unitWritten = 'Unit as the note writes it.';
const quantityId = 'Short name of the quantity.';
const quantityInWords = 'The quantity in words.';

export const openDataWords = {
  long: {
    title: 'Readings, one a row',
    description: 'Every reading as it counts now, with its unit, its uncertainty, its flags and, where it was corrected, its first value. Nothing recorded is left away.',
    columns: {
      time: (zone: string): string => `Local time with offset (${zone}).`, time_utc: 'The same instant in UTC.', series: 'Place, quantity and instrument as formulas name them.', place: 'Short name of the tank, or room.',
      label: 'What the prose calls the tank.', role: 'treatment or control.', group: 'Group of tanks treated alike.', quantity: quantityId, what: quantityInWords, instrument: `The instrument in words. ${apostrophe}`,
      value: 'The reading in the unit of the same row; for below-range and above-range the limit of the instrument; empty where none was taken.', word: 'For quantities on a scale of words.',
      unit: unitWritten, unit_ucum: 'Unit as a UCUM code; empty where UCUM has none.',
      half_width_95: 'Half of the 95 % interval from stated accuracy, resolution and repeats, in the same unit; empty where no accuracy is stated.',
      flags: (names: string): string => `Any of ${names}, separated by spaces.`, used: 'yes where the reading takes part in calculations.', first_value: 'The value first written, where it was corrected.',
      corrections: `Every value written, the first at the start. ${apostrophe}`, repeats: 'The readings taken at once, whose mean is the value.', as_written: `The cell as it stands in the note. ${apostrophe}`,
      remark: `The remark on the row. ${apostrophe}`, earlier_times: 'Times first written for the row, where its time was corrected.', block: 'Name of the block of readings.', unit_written: 'Unit in which the value was written down.',
    },
  },
  wide: {
    title: 'Readings, one time a row',
    description: 'The readings that take part in calculations, a column a series; left-out, missing and out-of-range ones are empty and named in the flags.',
    series: (args: { what: string; where: string; unit: string | null }): string => `${args.what}, ${args.where}${args.unit === null ? '' : `, in ${args.unit}`}.`,
    flags: (series: string): string => `Flags of ${series}, separated by spaces.`,
  },
  instruments: {
    title: 'Quantities and instruments', description: 'What was measured, with what, how well.',
    columns: {
      quantity: quantityId, what: quantityInWords, unit: unitWritten, unit_ucum: 'UCUM code.', instrument: `In words. ${apostrophe}`, used_in: 'Tanks, or room; empty: all tanks.',
      accuracy: 'As the maker states it (95 %), in the unit of accuracy_unit.', accuracy_unit: 'Unit of the accuracy.', accuracy_ucum: 'UCUM code of that unit.', resolution: 'Smallest step of the display, in the unit of the readings.',
      calibrated: `When and how. ${apostrophe}`, level: 'For air pressure: station or sea.', scale: 'Words of a scale, least first.',
    },
  },
  results: {
    title: 'Named results and claims', description: 'Every result and claim of the note with its formula and its value as computed.',
    columns: {
      kind: 'result or claim.', name: 'Name of the result, or number of the claim in the post.', formula: `The formula. ${apostrophe}`, shown: `As the reader sees it. ${apostrophe}`,
      value: 'The computed value, unrounded to 12 digits, in the unit of the same row.', other_value: 'Instants, durations, words and truths. Durations in hours.', unit: unitWritten, unit_ucum: 'UCUM code.',
      half_width_95: 'Half of the 95 % interval in the same unit.', mark: 'computed, condition, stated or unchecked.', source: `Source of a stated claim. ${apostrophe}`,
    },
  },
  files: {
    post: { name: 'The post', description: 'The published page, with the note and its data inside.' },
    note: { name: 'The note', description: 'Plan, readings, formulas and text in one file.' },
    data: { name: (path: string): string => `Data file ${path}`, description: 'A data file that the note pins.' },
    plan: { name: 'The plan', description: 'The protocol of the note as JSON.' },
    schema: { name: 'JSON Schema of the plan', description: 'What each key of the plan holds.' },
    csv: { name: 'Metadata of the tables', description: 'Columns, types and units as CSV on the Web.' },
    package: { name: 'Descriptor of the tables', description: 'Columns, types and units as a Data Package.' },
  },
  crate: {
    publishing: 'Post and data made from the note',
    tool: 'Reads a note with its plan and readings, checks every number in its text and publishes it.',
    noLicence: { name: 'No licence', description: 'The author states no licence; ask before using text or data.' },
    licence: (title: string): string => `Text and data may be used under ${title}.`,
  },
  source: 'The note that the data stand in',
  keywords: ['aquarium', 'experiment'] as readonly string[],
};

export type OpenDataWords = typeof openDataWords;
