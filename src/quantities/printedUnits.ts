// Units as people write them in prose: `mg/l`, `°C`, `degrees Celsius`, `milligrams per litre per hour`, `per cent`.
// The words themselves stand in the table of atoms.ts; here is only how they go together.
import type { Unit } from './types.ts';
import { atoms } from './atoms.ts';
import { isTimeOnly } from './dimension.ts';
import { buildUnit, parseTerms, type Basis, type UnitTerm } from './unitTerms.ts';

/** Words of prose, longest first, in lower case. */
const words: readonly { readonly word: string; readonly term: UnitTerm }[] = atoms
  .flatMap((atom) => atom.words.map((word) => ({ word: word.toLowerCase(), term: { atom, basis: null, exponent: 1 } })))
  .sort((a, b) => b.word.length - a.word.length);

/** Counted things that are no unit of their own: 82 beats per minute. */
const counted = /^(?:gill[ -]beats?|beats?|times|drops?)(?![\p{L}\d])/iu;

/** Symbols that are ordinary words or marks of prose and are never read as units there. */
const notInProse: ReadonlySet<string> = new Set(['in', '1', '"', 'C', 'F', 'ph', 'PH', 'SP', 'M', 'gr', 'foot', 'celsius', 'fahrenheit', 'mgl']);

const space = /^[\s\u00a0\u2009\u202f]*/u;
const afterUnit = /^(?![\p{L}\p{N}_])/u;

interface Part { readonly terms: readonly UnitTerm[]; readonly end: number }

/**
 * The unit that starts at `offset` (spaces before it are skipped and counted), the longest reading there, with how many
 * characters it takes; null where no unit stands. `8 in the morning` is no inch.
 */
export function matchPrintedUnit(text: string, offset: number): { unit: Unit; length: number } | null {
  const start = offset + (space.exec(text.slice(offset, offset + 20))?.[0].length ?? 0);
  const first = readFirst(text, start);
  if (!first) return null;
  let best: Part = first;
  for (;;) {
    const next = readRate(text, best);
    if (!next || !buildUnit(next.terms)) break;
    best = next;
  }
  best = readBasis(text, best);
  for (let rate = readRate(text, best); rate && buildUnit(rate.terms); rate = readRate(text, best)) best = rate;
  const unit = buildUnit(best.terms);
  return unit ? { unit, length: best.end - offset } : null;
}

function readFirst(text: string, start: number): Part | null {
  const rest = text.slice(start, start + 60);
  const reciprocal = /^(?:per|an?|each)\s+/iu.exec(rest);
  if (reciprocal) {
    const below = readWord(text, start + reciprocal[0].length);
    if (below && isTime(below)) return { terms: below.terms.map((term) => ({ ...term, exponent: -term.exponent })), end: below.end };
  }
  const things = counted.exec(rest);
  if (things) {
    const rate = readRate(text, { terms: [], end: start + things[0].length });
    if (rate) return rate;
  }
  return longer(readSymbol(text, start), readWord(text, start));
}

function longer(a: Part | null, b: Part | null): Part | null {
  if (!a || !b) return a ?? b;
  return b.end > a.end ? b : a;
}

/** The longest stretch without spaces that is a written unit. */
function readSymbol(text: string, start: number): Part | null {
  const run = /^[^\s,;:!?{}=<>|\u00a0\u2009\u202f]{1,24}/u.exec(text.slice(start, start + 24))?.[0] ?? '';
  for (let length = run.length; length > 0; length -= 1) {
    const written = run.slice(0, length);
    if (notInProse.has(written) || !/[\p{L}%‰°"″)\d²³]$/u.test(written) || !afterUnit.test(text.slice(start + length))) continue;
    const terms = parseTerms(written);
    if (terms && buildUnit(terms)) return { terms, end: start + length };
  }
  // `° C`, `degrees` handled by words; a degree sign and its letter may stand apart
  const apart = /^°[\s\u00a0\u2009\u202f]([CF])(?![\p{L}\d])/u.exec(text.slice(start, start + 4));
  const terms = apart ? parseTerms(`°${apart[1]}`) : null;
  return apart && terms ? { terms, end: start + apart[0].length } : null;
}

/** A unit in words, `square centimetres` and `cubic metres` among them. */
function readWord(text: string, start: number): Part | null {
  const rest = text.slice(start, start + 60).replace(/[\u00a0\u2009\u202f\n\t]/gu, ' ').toLowerCase();
  const power = /^(square|cubic) /u.exec(rest);
  const shift = power?.[0].length ?? 0;
  const found = words.find(({ word }) => rest.startsWith(word, shift) && afterUnit.test(rest.slice(shift + word.length)));
  if (!found) return null;
  const exponent = power ? (power[1] === 'square' ? 2 : 3) : 1;
  return { terms: [{ ...found.term, exponent }], end: start + shift + found.word.length };
}

function isTime(part: Part): boolean {
  return part.terms.every((term) => isTimeOnly(term.atom.dimension) && term.atom.dimension.time !== 0);
}

/** `per hour`, `a day`, `each week`, ` / h` after a unit. */
function readRate(text: string, before: Part): Part | null {
  const rest = text.slice(before.end, before.end + 40);
  const per = /^(?:\s+(per|an?|each|every)\s+|\s?\/\s?)/iu.exec(rest);
  if (!per) return null;
  const start = before.end + per[0].length;
  const below = text[start] === '/' ? null : longer(readSymbol(text, start), readWord(text, start));
  if (!below) return null;
  const any = per[1] === undefined || per[1].toLowerCase() === 'per';
  if (!any && !isTime(below)) return null;
  // `24.5 °C an hour after the failure` is no rate.
  if (!any && /^\s+(?:after|before|later|earlier|into|ago|past|from)(?![\p{L}])/iu.test(text.slice(below.end, below.end + 12))) return null;
  return { terms: [...before.terms, ...below.terms.map((term) => ({ ...term, exponent: -term.exponent }))], end: below.end };
}

/** `as nitrogen`, `as N`, `of nitrate-nitrogen`, `NO3-N`, `as CaCO₃` after a concentration. */
function readBasis(text: string, before: Part): Part {
  if (before.terms.some((term) => term.basis)) return before;
  const mark = /^\s+(?:as\s+(?:(?:nitrate|nitrite|ammonia|ammonium|phosphate)[- ])?(nitrogen|N|phosphorus|P|calcium carbonate|CaCO3|CaCO₃)|of\s+(?:nitrate|nitrite|ammonia|ammonium)[- ](nitrogen|N)|(?:NO[23]|NH[34]|PO4)-(N|P)|(CaCO3|CaCO₃))(?![\p{L}\d])/iu
    .exec(text.slice(before.end, before.end + 40));
  if (!mark) return before;
  const word = (mark[1] ?? mark[2] ?? mark[3] ?? mark[4] ?? '').toLowerCase();
  const basis: Basis = word.startsWith('n') ? 'N' : word.startsWith('p') ? 'P' : 'CaCO3';
  const mass = before.terms.findIndex((term) => term.exponent === 1 && term.atom.dimension.mass === 1 && term.atom.dimension.length === 0 && term.atom.dimension.time === 0);
  if (mass < 0) return before;
  return { terms: before.terms.map((term, index) => (index === mass ? { ...term, basis } : term)), end: before.end + mark[0].length };
}
