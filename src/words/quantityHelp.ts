// What quantities and units are, by language. The lists of src/quantities hold the English.
import { quantityHelp } from './de/quantityHelp.ts';
import { unitKinds, unitRemarks } from './de/unitHelp.ts';
import type { Language } from './languages.ts';

const inGerman = (table: Readonly<Record<string, string>>, key: string): string | undefined => (Object.hasOwn(table, key) ? table[key] : undefined);

/** One sentence on a quantity of the closed list. */
export const quantityMeans = (language: Language, entry: { readonly name: string; readonly means: string }): string => (
  language === 'de' ? inGerman(quantityHelp, entry.name) : undefined) ?? entry.means;

/** What a unit measures. */
export const unitMeasures = (language: Language, entry: { readonly of: string }): string => (language === 'de' ? inGerman(unitKinds, entry.of) : undefined) ?? entry.of;

/** What is worth knowing of a unit; null where nothing is. */
export const unitRemark = (language: Language, entry: { readonly symbol: string; readonly remark: string | null }): string | null => (
  language === 'de' ? inGerman(unitRemarks, entry.symbol) : undefined) ?? entry.remark;
