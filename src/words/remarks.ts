// Remarks in the working of a formula: their shape, so that words need not know formulas, and their sentences in a language.
import { remarkSentences as german } from './de/remarks.ts';
import { remarkSentences as english, type RemarkCode } from './en/remarks.ts';
import type { Language } from './languages.ts';

export interface WorkingRemark { readonly code: string; readonly args: Readonly<Record<string, string | number>> }

const tables: Readonly<Record<Language, Readonly<Record<RemarkCode, (args: WorkingRemark['args']) => string>>>> = { en: english, de: german };

/** One sentence for a remark; an unknown code gives its code. */
export function remarkSentence(remark: WorkingRemark, language: Language = 'en'): string {
  return Object.hasOwn(tables[language], remark.code) ? tables[language][remark.code as RemarkCode](remark.args) : remark.code;
}

interface Step { readonly remarks: readonly WorkingRemark[] }

/** Every remark on the way to a value, each once, in the order of the working. */
export function remarksBehind(steps: readonly Step[], language: Language = 'en'): string[] {
  return [...new Set(steps.flatMap((step) => step.remarks).map((remark) => remarkSentence(remark, language)))];
}

/** Remarks without which a reader would take a value for more than it is: they stand beside it, not only in its working. */
const cautions: ReadonlySet<string> = new Set<RemarkCode>([
  'nearest-reading', 'gap', 'scatter-follows', 'scatter-alone', 'time-open', 'balance-open', 'what-if', 'beyond-fit', 'extrapolated', 'one-tank-a-side', 'tanks-as-units',
  'tanks-as-units-p', 'nearly-random-walk', 'few-for-serial', 'pressure-from-sea-level', 'saturation-given-pressure', 'ammonia-saline', 'carbon-dioxide-rule',
  'gap-parts',
]);

export function cautionsBehind(steps: readonly Step[], language: Language = 'en'): string[] {
  return remarksBehind(steps.map((step) => ({ remarks: step.remarks.filter((remark) => cautions.has(remark.code)) })), language);
}
