// Units as people write them in prose: `mg/l`, `°C`, `degrees Celsius`, `milligrams per litre per hour`, `per cent`.
// The words themselves stand in the table of atoms.ts; here is only how they go together.
import type { Unit } from './types.ts';
import { atoms } from './atoms.ts';
import { isTimeOnly } from './dimension.ts';
import { languages, type Language } from '../words/languages.ts';
import { unitGrammar, unitWordForms } from '../words/units.ts';
import type { UnitGrammar } from '../words/en/unitWords.ts';
import { buildUnit, parseTerms, type Basis, type UnitTerm } from './unitTerms.ts';

/** What a language writes for units: words longest first, in lower case, and how they go together. */
interface Tongue { readonly words: readonly { readonly word: string; readonly term: UnitTerm }[]; readonly grammar: UnitGrammar }

function tongueOf(language: Language): Tongue {
  const forms = unitWordForms(language);
  const words = atoms.flatMap((atom) => (forms === null ? atom.words : forms[atom.symbol] ?? []).map((word) => ({ word: word.toLowerCase(), term: { atom, basis: null, exponent: 1 } })));
  return { words: words.sort((a, b) => b.word.length - a.word.length), grammar: unitGrammar(language) };
}

const tongues = new Map<Language, Tongue>(languages.map((language) => [language, tongueOf(language)]));

/** Symbols that are ordinary words or marks of prose and are never read as units there. */
const notInProse: ReadonlySet<string> = new Set(['in', '1', '"', 'C', 'F', 'ph', 'PH', 'SP', 'M', 'gr', 'foot', 'celsius', 'fahrenheit', 'mgl']);

const space = /^[\s\u00a0\u2009\u202f]*/u;
const afterUnit = /^(?![\p{L}\p{N}_])/u;

interface Part { readonly terms: readonly UnitTerm[]; readonly end: number }

/**
 * The unit that starts at `offset` (spaces before it are skipped and counted), the longest reading there, with how many
 * characters it takes; null where no unit stands. `8 in the morning` is no inch.
 */
export function matchPrintedUnit(text: string, offset: number, language: Language = 'en'): { unit: Unit; length: number } | null {
  const tongue = tongues.get(language)!;
  const start = offset + (space.exec(text.slice(offset, offset + 20))?.[0].length ?? 0);
  const first = readFirst(text, start, tongue);
  if (!first) return null;
  let best: Part = first;
  for (;;) {
    const next = readRate(text, best, tongue);
    if (!next || !buildUnit(next.terms)) break;
    best = next;
  }
  best = readBasis(text, best, tongue);
  for (let rate = readRate(text, best, tongue); rate && buildUnit(rate.terms); rate = readRate(text, best, tongue)) best = rate;
  const unit = buildUnit(best.terms);
  return unit ? { unit, length: best.end - offset } : null;
}

function readFirst(text: string, start: number, tongue: Tongue): Part | null {
  const rest = text.slice(start, start + 60);
  const reciprocal = tongue.grammar.reciprocal.exec(rest);
  if (reciprocal) {
    const below = readWord(text, start + reciprocal[0].length, tongue);
    if (below && isTime(below)) return { terms: below.terms.map((term) => ({ ...term, exponent: -term.exponent })), end: below.end };
  }
  const things = tongue.grammar.counted.exec(rest);
  if (things) {
    const rate = readRate(text, { terms: [], end: start + things[0].length }, tongue);
    if (rate) return rate;
  }
  return longer(readSymbol(text, start), readWord(text, start, tongue));
}

function longer(a: Part | null, b: Part | null): Part | null {
  if (!a || !b) return a ?? b;
  return b.end > a.end ? b : a;
}

/** `mg L⁻¹`: a factor behind a space is one of the unit where it bears an exponent. */
const written = /^[^\s,;:!?{}=<>|\u00a0\u2009\u202f]{1,24}(?:[ \u00a0\u2009\u202f][A-Za-zµμ]{1,3}(?:[⁻⁺][¹²³]|[-−][1-3]))*/u;
/** `mg O₂/L` is mg/L: the note says what is measured. */
const oxygenNamed = /^([mµμu]?(?:g|mol|L|l))[ \u00a0\u2009\u202f]?O[2₂](?=[/ \u00a0\u2009\u202f])/u;

/** The longest stretch that is a written unit. */
function readSymbol(text: string, start: number): Part | null {
  const named = oxygenNamed.exec(text.slice(start, start + 12));
  const left = named ? named[0].length - named[1]!.length : 0;
  const around = text.slice(start, start + 40);
  const run = written.exec(named ? named[1]! + around.slice(named[0].length) : around)?.[0] ?? '';
  for (let length = run.length; length > (named?.[1]?.length ?? 0); length -= 1) {
    const symbol = run.slice(0, length);
    if (notInProse.has(symbol) || !/[\p{L}%‰°℃℉"″)\d¹²³]$/u.test(symbol) || !afterUnit.test(text.slice(start + left + length))) continue;
    const terms = parseTerms(symbol);
    if (terms && buildUnit(terms)) return { terms, end: start + left + length };
  }
  // `° C`, `degrees` handled by words; a degree sign and its letter may stand apart
  const apart = /^°[\s\u00a0\u2009\u202f]([CF])(?![\p{L}\d])/u.exec(text.slice(start, start + 4));
  const terms = apart ? parseTerms(`°${apart[1]}`) : null;
  return apart && terms ? { terms, end: start + apart[0].length } : null;
}

/** A unit in words, `square centimetres` and `cubic metres` among them. */
function readWord(text: string, start: number, { words, grammar }: Tongue): Part | null {
  const rest = text.slice(start, start + 60).replace(/[\u00a0\u2009\u202f\n\t]/gu, ' ').toLowerCase();
  const power = grammar.powers.exec(rest);
  const shift = power?.[0].length ?? 0;
  const found = words.find(({ word }) => rest.startsWith(word, shift) && afterUnit.test(rest.slice(shift + word.length)));
  if (!found) return null;
  const exponent = power ? (power[1] === grammar.square ? 2 : 3) : 1;
  return { terms: [{ ...found.term, exponent }], end: start + shift + found.word.length };
}

function isTime(part: Part): boolean {
  return part.terms.every((term) => isTimeOnly(term.atom.dimension) && term.atom.dimension.time !== 0);
}

/** `per hour`, `a day`, `each week`, ` / h` after a unit. */
function readRate(text: string, before: Part, tongue: Tongue): Part | null {
  const rest = text.slice(before.end, before.end + 40);
  const per = tongue.grammar.per.exec(rest);
  if (!per) return null;
  const start = before.end + per[0].length;
  const below = text[start] === '/' ? null : longer(readSymbol(text, start), readWord(text, start, tongue));
  if (!below) return null;
  const word = per.slice(1).find((each) => each !== undefined);
  const any = word === undefined || tongue.grammar.perAny.test(word);
  if (!any && !isTime(below)) return null;
  // `24.5 °C an hour after the failure` is no rate.
  if (!any && tongue.grammar.notRate.test(text.slice(below.end, below.end + 12))) return null;
  return { terms: [...before.terms, ...below.terms.map((term) => ({ ...term, exponent: -term.exponent }))], end: below.end };
}

/** `as nitrogen`, `as N`, `of nitrate-nitrogen`, `NO3-N`, `as CaCO₃` after a concentration. */
function readBasis(text: string, before: Part, { grammar }: Tongue): Part {
  if (before.terms.some((term) => term.basis)) return before;
  const mark = grammar.basis.exec(text.slice(before.end, before.end + 40));
  if (!mark) return before;
  const word = mark[1] ?? mark[2] ?? mark[3] ?? mark[4] ?? '';
  const basis: Basis = grammar.nitrogen.test(word) ? 'N' : grammar.phosphorus.test(word) ? 'P' : 'CaCO3';
  const mass = before.terms.findIndex((term) => term.exponent === 1 && term.atom.dimension.mass === 1 && term.atom.dimension.length === 0 && term.atom.dimension.time === 0);
  if (mass < 0) return before;
  return { terms: before.terms.map((term, index) => (index === mass ? { ...term, basis } : term)), end: before.end + mark[0].length };
}
