// What each slip of the search for formulas is called, in a keeper's words.
const table = {
  'wrong-base': 'the percentage was taken of the last reading instead of the first',
  swapped: 'start and end are swapped',
  'other-tank': 'this is the other tank',
  'factor-ten': 'the decimal point has slipped',
  'other-scale': 'these are degrees of the other scale',
  'sea-level': 'reckoned with the pressure of the sea level instead of that of the place',
  'digits-swapped': 'two digits have changed places',
  sign: 'the sign is turned round',
} as const;

export type SlipCode = keyof typeof table;
export const slipWords: Readonly<Record<SlipCode, string>> = table;
