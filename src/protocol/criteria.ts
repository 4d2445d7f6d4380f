// Published criteria for dissolved oxygen that a plan may name under `limits`, with their citation. Nothing is listed for a species
// without a published source; every figure is in mg/L as printed.

export type CriterionPart = 'minimum' | '7-day mean' | '7-day mean minimum' | '30-day mean';

export interface Criterion {
  /** As the plan names it. */
  readonly name: string;
  /** Whom it protects. */
  readonly for: string;
  /** In mg/L. `minimum` is to be kept at all times; the means are of daily means or daily minima. */
  readonly parts: readonly { readonly part: CriterionPart; readonly atLeast: number }[];
  readonly source: string;
}

const epa = 'US EPA (1986), Ambient Water Quality Criteria for Dissolved Oxygen, EPA 440/5-86-003, Table 1, as given in EPA fact sheet 841F21007B (2021)';
const ccme = 'Canadian Council of Ministers of the Environment (1999), Canadian water quality guidelines for the protection of aquatic life: dissolved oxygen (freshwater), Table 1';
const alabaster = 'Alabaster and Lloyd (1982), Water Quality Criteria for Freshwater Fish, as quoted in CCME (1999)';

export const criteria: readonly Criterion[] = [
  { name: 'EPA 1986 warm water, early life stages', for: 'early life stages of warm-water fish', source: epa, parts: [{ part: 'minimum', atLeast: 5 }, { part: '7-day mean', atLeast: 6 }] },
  { name: 'EPA 1986 warm water, other life stages', for: 'warm-water fish past their early life stages', source: epa, parts: [{ part: 'minimum', atLeast: 3 }, { part: '7-day mean minimum', atLeast: 4 }, { part: '30-day mean', atLeast: 5.5 }] },
  { name: 'EPA 1986 cold water, early life stages', for: 'early life stages of cold-water fish in the water column', source: epa, parts: [{ part: 'minimum', atLeast: 8 }, { part: '7-day mean', atLeast: 9.5 }] },
  { name: 'EPA 1986 cold water, other life stages', for: 'cold-water fish past their early life stages', source: epa, parts: [{ part: 'minimum', atLeast: 4 }, { part: '7-day mean minimum', atLeast: 5 }, { part: '30-day mean', atLeast: 6.5 }] },
  { name: 'CCME 1999 warm water, early life stages', for: 'early life stages of warm-water animals', source: ccme, parts: [{ part: 'minimum', atLeast: 6 }] },
  { name: 'CCME 1999 warm water, other life stages', for: 'warm-water animals past their early life stages', source: ccme, parts: [{ part: 'minimum', atLeast: 5.5 }] },
  { name: 'CCME 1999 cold water, early life stages', for: 'early life stages of cold-water animals', source: ccme, parts: [{ part: 'minimum', atLeast: 9.5 }] },
  { name: 'CCME 1999 cold water, other life stages', for: 'cold-water animals past their early life stages', source: ccme, parts: [{ part: 'minimum', atLeast: 6.5 }] },
  { name: 'Alabaster and Lloyd 1982', for: 'most stages and activities in the life cycle of fish', source: alabaster, parts: [{ part: 'minimum', atLeast: 5 }] },
];

export const criterionNames: readonly string[] = criteria.map((each) => each.name);

export function criterionByName(name: string): Criterion | null {
  const plain = (text: string): string => text.toLowerCase().replace(/[,\s]+/g, ' ').trim();
  return criteria.find((each) => plain(each.name) === plain(name)) ?? null;
}
