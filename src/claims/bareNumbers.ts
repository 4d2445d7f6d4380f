// Bare numbers in prose whose unit stands elsewhere: in a table's head, as a degree sign or a letter, or in the name of what was measured.
import type { ProseRun } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { convertible, parseUnit } from '../quantities/units.ts';
import { matchPrintedUnit } from '../quantities/printedUnits.ts';
import type { Unit } from '../quantities/types.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { quantityName } from '../words/quantities.ts';
import type { NumberMention } from './mentions.ts';
import { literal } from '../words/literal.ts';

/** The unit that a number without one has from what stands around it; null where nothing gives one. */
export function unitFromAround(mention: NumberMention, run: ProseRun, context: FormulaContext): Unit | null {
  if (mention.unit !== null || mention.written !== 'digits') return null;
  const after = run.text.text.slice(mention.end, mention.end + 12);
  if (degrees.test(after)) return measuredTemperature(context);
  const language = languageOf(context.protocol?.language);
  for (const head of mention.nextWord === '' ? run.heads ?? [] : []) {
    const unit = unitOfHead(head, language, context);
    if (unit) return unit;
  }
  return mention.decimals > 0 ? unitOfSentence(run.text.text, mention, context) : null;
}

/** `24.3°`, `24.3 degrees`, `24.3 C`: which scale is meant is not asked here. */
const degrees = /^(?:[\s\u00a0\u2009\u202f]?[°º]|[\s\u00a0\u2009\u202f](?:degrees?|deg|Grad|[CF])(?![\p{L}\p{N}]))/u;

function measuredTemperature(context: FormulaContext): Unit | null {
  const unit = parseUnit('degC');
  return unit && [...context.dataset.series.values()].some((series) => convertible(series.unit, unit)) ? unit : null;
}

/** The unit in a head: `DO (mg/L)`, `Oxygen in mg/L`, `mg/L`; or that of the quantity whose name the head is. */
function unitOfHead(head: string, language: Language, context: FormulaContext): Unit | null {
  const written = [...head.matchAll(/[([]([^)\]]+)[)\]]/gu)].map((each) => each[1]!);
  const last = head.trim().split(/(?:\s+in\s+|[,/]\s+|\s+)/u).at(-1) ?? '';
  for (const text of [...written, head.trim(), last]) {
    const found = matchPrintedUnit(text, 0, language);
    if (found && text.slice(found.length).trim() === '') return found.unit;
  }
  const name = head.trim().toLowerCase();
  const series = [...context.dataset.series.values()].find((each) => [each.quantity.toLowerCase(), `${each.place}.${each.quantity}`.toLowerCase(), ...namesOf(each.quantity, context)].includes(name));
  return series?.unit ?? null;
}

/** A number with decimals, in a sentence that names what the note measures: `DO fell from 8.18 to 5.10`. */
function unitOfSentence(text: string, { start, end }: NumberMention, context: FormulaContext): Unit | null {
  const from = Math.max(...[...text.slice(0, start).matchAll(/[.!?;:]\s/gu)].map((each) => each.index + 1), 0);
  const stop = /[.!?;:](?:\s|$)/u.exec(text.slice(end));
  const words = text.slice(from, stop ? end + stop.index : text.length).replace(/\s+/gu, ' ');
  for (const series of context.dataset.series.values()) {
    const id = series.quantity.length > 1 ? [series.quantity] : [];
    if ([...id, ...namesOf(series.quantity, context)].some((name) => saysWord(words, name, name === series.quantity))) return series.unit;
  }
  return null;
}

function namesOf(quantity: string, context: FormulaContext): string[] {
  const what = context.protocol?.measure.find((each) => each.id.split('@')[0] === quantity)?.what?.value;
  return what === undefined ? [] : [...new Set([what, quantityName(what, languageOf(context.protocol?.language)).toLowerCase()])];
}

function saysWord(words: string, name: string, caseCounts: boolean): boolean {
  return new RegExp(`(?<![\\p{L}\\p{N}])${literal(name)}(?![\\p{L}\\p{N}])`, caseCounts ? 'u' : 'iu').test(words);
}
