// A unit as a product of symbols with exponents: reading the written form, building the unit, multiplying units.
// `mg/L-N/h` is mg (as nitrogen) · L^-1 · h^-1.
import type { Dimension, Kind, Unit } from './types.ts';
import { atoms, calciumCarbonatePerEquivalent, commonUnits, type Atom } from './atoms.ts';
import { dimensionless, isTimeOnly, multiplyDimensions, sameDimension } from './dimension.ts';

/** What a mass is counted as: nitrate as nitrogen, alkalinity as calcium carbonate. */
export type Basis = 'N' | 'P' | 'CaCO3';
export interface UnitTerm { readonly atom: Atom; readonly basis: Basis | null; readonly exponent: number }

const bySymbol: ReadonlyMap<string, Atom> = new Map(atoms.map((each) => [each.symbol, each]));

/** Every spelling of every symbol by its first letter, longest first. */
const spellings: ReadonlyMap<string, readonly (readonly [string, Atom])[]> = spellingsByLetter();

function spellingsByLetter(): Map<string, (readonly [string, Atom])[]> {
  const byLetter = new Map<string, (readonly [string, Atom])[]>();
  for (const each of atoms) {
    for (const spelling of [each.symbol, ...each.spellings].map(tidySymbol)) {
      const letter = spelling[0] ?? '';
      byLetter.set(letter, [...(byLetter.get(letter) ?? []), [spelling, each]]);
    }
  }
  for (const list of byLetter.values()) list.sort((a, b) => b[0].length - a[0].length);
  return byLetter;
}

/** Whole units that people write in a form of their own. */
const wholeSpellings: ReadonlyMap<string, string> = new Map([
  ['us/cm', 'uS/cm'], ['ms/cm', 'mS/cm'], ['uM', 'umol/L'], ['mM', 'mmol/L'], ['nM', 'nmol/L'], ['M', 'mol/L'],
  ['lpm', 'L/min'], ['lph', 'L/h'], ['bpm', '/min'], ['beats/min', '/min'], ['%-points', 'pp'], ['mgl', 'mg/L'],
]);
const ignoringCase: ReadonlyMap<string, string> = new Map(
  [...commonUnits, ...atoms.map((each) => each.symbol).filter((symbol) => symbol.length > 2)].map((symbol) => [symbol.toLowerCase(), symbol]),
);

/** One form for the signs that look alike: µ, ², °, ·, −, ‰. */
function tidySymbol(text: string): string {
  if (/^[!-)+-~]+$/u.test(text) && !text.includes("''")) return text;
  return text.replace(/[º˚]/gu, '°').replace(/″|''/gu, '"').normalize('NFKC')
    .replace(/[μµ]/gu, 'u').replace(/[−‐‑–]/gu, '-').replace(/[·⋅•×*]/gu, '.').trim()
    .replace(/\s*\/\s*/gu, '/').replace(/°\s+/gu, '°').replace(/\s+/gu, '.');
}

const basisMark = /(?:[-.](?:as[.-])?|(?<=^(?:mg|ug|g|kg))|\{)(?:(?:NO3|NO2|NH3|NH4|TAN|TA|PO4|SRP)-)?(N|P|CaCO3)\}?(?=$|[/.])/u;
const ionMark = /[-.](?:as[.-])?(?:NO3|NO2|NH3|NH4|PO4)(?=$|\/)/u;

/** Reads `mg/L-N`, `µmol m⁻² s⁻¹`, `mg·L-1`, `%/h`, `/min`; null where a part is no unit. */
export function parseTerms(written: string): readonly UnitTerm[] | null {
  let text = tidySymbol(written);
  text = wholeSpellings.get(text) ?? text;
  const read = parseTidy(text);
  if (read) return read;
  const other = text.length > 2 ? ignoringCase.get(text.toLowerCase()) : undefined;
  return other ? parseTidy(tidySymbol(other)) : null;
}

function parseTidy(written: string): readonly UnitTerm[] | null {
  let text = written;
  let basis: Basis | null = null;
  const mark = basisMark.exec(text);
  if (mark && mark.index > 0) {
    basis = mark[1] as Basis;
    text = text.slice(0, mark.index) + text.slice(mark.index + mark[0].length);
  } else text = text.replace(ionMark, '');
  if (text === '') return null;
  const terms: UnitTerm[] = [];
  let position = 0;
  let sign = 1;
  if (text.startsWith('/') && text.length > 1) { sign = -1; position = 1; }
  for (;;) {
    const found = spellings.get(text[position] ?? '')?.find(([spelling]) => text.startsWith(spelling, position) && /^(?:$|[/.^\d]|-\d)/u.test(text.slice(position + spelling.length)));
    if (!found) return null;
    position += found[0].length;
    const power = /^\^?(-?\d)(?!\d)/u.exec(text.slice(position));
    if (power) position += power[0].length;
    const exponent = sign * (power ? Number(power[1]) : 1);
    if (exponent === 0) return null;
    terms.push({ atom: found[1], basis: null, exponent });
    if (position === text.length) break;
    const separator = text[position];
    if (separator !== '/' && separator !== '.') return null;
    sign = separator === '/' ? -1 : 1;
    position += 1;
  }
  if (!basis) return terms;
  const mass = terms.findIndex((term) => term.exponent === 1 && isMass(term.atom));
  if (mass < 0) return null;
  const withBasis = basis;
  return terms.map((term, index) => (index === mass ? { ...term, basis: withBasis } : term));
}

const basisKind: Readonly<Record<Basis, Kind>> = { N: 'as-nitrogen', P: 'as-phosphorus', CaCO3: 'as-calcium-carbonate' };

/** The symbol whose unit measures the difference of two points on a scale: degC to K. */
export function differenceAtom(atom: Atom): Atom {
  const other = { degC: 'K', degF: 'degF-difference', pH: 'pH-difference', '%': 'pp' }[atom.symbol];
  return (other ? bySymbol.get(other) : undefined) ?? atom;
}

function termDimension(term: UnitTerm): Dimension {
  return term.basis === 'CaCO3' ? multiplyDimensions(term.atom.dimension, { ...dimensionless, mass: -1, amount: 1 }) : term.atom.dimension;
}

function termFactor(term: UnitTerm): number {
  return term.basis === 'CaCO3' ? term.atom.factor / (calciumCarbonatePerEquivalent / 1000) : term.atom.factor;
}

function termKind(term: UnitTerm): Kind {
  return term.basis ? basisKind[term.basis] : term.atom.kind;
}

/**
 * Builds the unit of a product of terms. Points on a scale (degC, pH) inside a product become differences.
 * null where two kinds meet that make no sense together (`meq.mg-N`, `mg/mg-N`).
 */
export function buildUnit(given: readonly UnitTerm[]): Unit | null {
  const merged: UnitTerm[] = [];
  for (const term of given) {
    if (term.atom.symbol === '1') continue;
    const index = merged.findIndex((other) => other.atom === term.atom && other.basis === term.basis);
    const other = merged[index];
    if (other) merged[index] = { ...other, exponent: other.exponent + term.exponent };
    else merged.push(term);
  }
  let terms = merged.filter((term) => term.exponent !== 0);
  const single = terms.length === 1 && terms[0]?.exponent === 1;
  if (!single) terms = terms.map((term) => (term.atom.symbol === '%' ? term : { ...term, atom: differenceAtom(term.atom) }));
  if (terms.length === 0) terms = [{ atom: bySymbol.get('1') as Atom, basis: null, exponent: 1 }];

  const kinds = new Set(terms.filter((term) => term.exponent > 0).map(termKind).filter((kind) => kind !== 'plain'));
  if (kinds.size > 1) return null;
  // nitrogen counted beside another mass, or below the line, cannot be written so that it reads back
  const counted = terms.find((term) => term.basis);
  if (counted && (counted.exponent !== 1 || terms.some((term) => term !== counted && term.exponent === 1 && isMass(term.atom)))) return null;
  let dimension = dimensionless;
  let factor = 1;
  for (const term of terms) {
    dimension = multiplyDimensions(dimension, termDimension(term), term.exponent);
    const base = termFactor(term);
    for (let count = 0; count < Math.abs(term.exponent); count += 1) factor = term.exponent > 0 ? factor * base : factor / base;
  }
  const first = terms[0];
  return {
    symbol: writeTerms(terms, (atom) => atom.symbol, (n) => String(n), '.', true),
    dimension, kind: [...kinds][0] ?? 'plain', factor: terms.length === 1 && Math.abs(terms[0]?.exponent ?? 0) === 1 ? factor : Number(factor.toPrecision(15)),
    offset: single && first ? first.atom.offset : 0,
    ucum: writeUcum(terms),
    print: printTerms(terms),
  };
}

function isMass(atom: Atom): boolean {
  return sameDimension(atom.dimension, { ...dimensionless, mass: 1 });
}

function isVolume(atom: Atom): boolean {
  return sameDimension(atom.dimension, { ...dimensionless, length: 3 });
}

/** True for a volume in a volume, such as mL/L, or its rate. */
export function isVolumeRatio(unit: Unit): boolean {
  const terms = termsOf(unit).filter((term) => !isTimeOnly(termDimension(term)));
  return terms.length === 2 && terms.every((term) => isVolume(term.atom)) && terms[0]!.exponent === 1 && terms[1]!.exponent === -1;
}

/** True where an amount is told by the volume of oxygen gas, as in mL(STP)/L. */
export function isAmountOfGas(unit: Unit): boolean {
  return termsOf(unit).some((term) => term.atom.symbol === 'mL(STP)');
}

function writeTerms(terms: readonly UnitTerm[], name: (atom: Atom) => string, power: (n: number) => string, times: string, basisAfterVolume: boolean): string {
  const basis = terms.find((term) => term.basis)?.basis ?? null;
  const volume = basis && basisAfterVolume ? terms.find((term) => term.exponent === -1 && isVolume(term.atom)) : undefined;
  const write = (term: UnitTerm): string => {
    const size = Math.abs(term.exponent);
    const mark = basis && basisAfterVolume && (volume ? term === volume : term.basis) ? `-${basis}` : '';
    return name(term.atom) + (size === 1 ? '' : power(size)) + mark;
  };
  const above = terms.filter((term) => term.exponent > 0).map(write).join(times);
  const below = terms.filter((term) => term.exponent < 0).map((term) => `/${write(term)}`).join('');
  return above + below;
}

function writeUcum(terms: readonly UnitTerm[]): string {
  const write = (term: UnitTerm): string => {
    const size = Math.abs(term.exponent);
    return term.atom.ucum + (size === 1 ? '' : String(size)) + (term.basis ? `{${term.basis}}` : '');
  };
  return terms.filter((term) => term.exponent > 0).map(write).join('.') + terms.filter((term) => term.exponent < 0).map((term) => `/${write(term)}`).join('');
}

function printTerms(terms: readonly UnitTerm[]): string {
  const basis = terms.find((term) => term.basis)?.basis ?? null;
  const powers = ['', '', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
  const text = writeTerms(terms, (atom) => atom.print, (n) => powers[n] ?? `^${n}`, '·', false);
  return basis ? `${text} as ${basis === 'CaCO3' ? 'CaCO₃' : basis}` : text;
}

/** The terms of a unit built here; empty for a plain number. */
export function termsOf(unit: Unit): readonly UnitTerm[] {
  return (parseTidy(unit.symbol) ?? []).filter((term) => term.atom.symbol !== '1');
}

/**
 * The unit of a · b^power with the number that the product of the two values must be multiplied by: symbols of one
 * dimension are brought together (`mg/L/h` times `min` is `mg/L`, scale 1/60), a ratio written as % beside anything but
 * time is taken out (80 % of 5 mg/L is 4 mg/L). null where the kinds cannot stand together.
 */
export function multiplyUnits(a: Unit, b: Unit, power: 1 | -1): { unit: Unit; scale: number } | null {
  let scale = 1;
  let terms: UnitTerm[] = [...termsOf(a)];
  for (const added of termsOf(b)) {
    const exponent = added.exponent * power;
    const index = terms.findIndex((term) => sameDimension(termDimension(term), termDimension(added)) && termKind(term) === termKind(added));
    const term = terms[index];
    if (term) {
      scale *= (termFactor(added) / termFactor(term)) ** exponent;
      terms[index] = { ...term, exponent: term.exponent + exponent };
    } else terms.push({ ...added, exponent });
  }
  terms = terms.filter((term) => term.exponent !== 0);
  // a length to the third power meets a litre
  const volume = terms.findIndex((term) => isVolume(term.atom));
  const length = terms.findIndex((term) => term.exponent % 3 === 0 && sameDimension(term.atom.dimension, { ...dimensionless, length: 1 }));
  const volumeTerm = terms[volume];
  const lengthTerm = terms[length];
  if (volumeTerm && lengthTerm) {
    const times = lengthTerm.exponent / 3;
    scale *= (lengthTerm.atom.factor ** 3 / volumeTerm.atom.factor) ** times;
    terms[volume] = { ...volumeTerm, exponent: volumeTerm.exponent + times };
    terms = terms.filter((term, index) => index !== length && term.exponent !== 0);
  }
  const isRatio = (term: UnitTerm): boolean => ['percentage', 'percentage-points', 'parts-per-million'].includes(termKind(term));
  const othersAreTime = terms.filter((term) => !isRatio(term)).every((term) => isTimeOnly(termDimension(term)));
  let keptRatio = false;
  terms = terms.flatMap((term) => {
    if (!isRatio(term)) return [term];
    const keep = othersAreTime && !keptRatio && term.exponent > 0 ? 1 : 0;
    keptRatio ||= keep === 1;
    scale *= termFactor(term) ** (term.exponent - keep);
    return keep ? [{ ...term, exponent: 1 }] : [];
  });
  const unit = buildUnit(terms);
  return unit ? { unit, scale: Number(scale.toPrecision(15)) } : null;
}
