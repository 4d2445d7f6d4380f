// Molar masses used in conversions, in g/mol. Source: IUPAC standard atomic weights (N 14.0067, O 15.9994, H 1.00794,
// C 12.0107, P 30.973761, Ca 40.078, Mg 24.305).
const nitrogen = 14.0067;
const oxygen = 15.9994;
const hydrogen = 1.00794;
const phosphorus = 30.973761;

export const molarMass = {
  oxygen: 31.9988,
  carbonDioxide: 44.0095,
  bicarbonate: 61.0168,
  calcium: 40.078,
  magnesium: 24.305,
  calciumCarbonate: 100.0869,
  calciumOxide: 56.0774,
  nitrogen,
  phosphorus,
  nitrate: nitrogen + 3 * oxygen,
  nitrite: nitrogen + 2 * oxygen,
  ammonia: nitrogen + 3 * hydrogen,
  ammonium: nitrogen + 4 * hydrogen,
  phosphate: phosphorus + 4 * oxygen,
} as const;
