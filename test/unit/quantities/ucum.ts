// Reads UCUM codes by the grammar of the specification (Schadow and McDonald, The Unified Code for Units of Measure, section 2.1,
// "Full and limited conformance") and works out their size from its tables of units and prefixes: nothing of the product's own.

/** Symbol: size in SI units, whether prefixes may stand before it. A mole counts as 1, as do the dimensionless units' reference. */
const table: Readonly<Record<string, readonly [number, boolean]>> = {
  m: [1, true], s: [1, true], g: [1e-3, true], K: [1, true], cd: [1, true], mol: [1, true], eq: [1, true], A: [1, true], V: [1, true], S: [1, true], Pa: [1, true], J: [1, true], W: [1, true],
  Hz: [1, true], lm: [1, true], lx: [1, true], L: [1e-3, true], l: [1e-3, true], bar: [1e5, true], 'm[Hg]': [133322, true], min: [60, false], h: [3600, false], d: [86400, false], wk: [604800, false],
  atm: [101325, false], '[psi]': [4.4482216152605 / 0.0254 ** 2, false], "[in_i'Hg]": [133322 * 0.0254, false], '[in_i]': [0.0254, false], '[ft_i]': [0.3048, false],
  '[oz_av]': [0.45359237 / 16, false], '[lb_av]': [0.45359237, false], '[gal_us]': [231 * 0.0254 ** 3, false], '[gal_br]': [4.54609e-3, false], '[cft_i]': [0.3048 ** 3, false],
  '%': [0.01, false], '[ppth]': [1e-3, false], '[ppm]': [1e-6, false], '[pH]': [1, false], Cel: [1, true], '[degF]': [5 / 9, false],
};
const prefixes: Readonly<Record<string, number>> = { k: 1e3, h: 1e2, da: 10, d: 0.1, c: 1e-2, m: 1e-3, u: 1e-6, n: 1e-9, M: 1e6 };

/** Size of a simple unit, or null where the tables do not know it. */
function simple(symbol: string): number | null {
  const plain = Object.hasOwn(table, symbol) ? table[symbol] : undefined;
  if (plain) return plain[0];
  for (const [prefix, size] of Object.entries(prefixes)) {
    const rest = symbol.slice(prefix.length);
    const unit = symbol.startsWith(prefix) && Object.hasOwn(table, rest) ? table[rest] : undefined;
    if (unit?.[1]) return size * unit[0];
  }
  return null;
}

export interface UcumCode {
  readonly size: number;
  /** Something stands in braces: the size is that without it. */
  readonly annotated: boolean;
}

/** A valid code's size; a text says what is wrong with it. */
export function readUcum(code: string): UcumCode | string {
  let at = 0;
  let annotated = false;
  const annotation = (): boolean => {
    const found = /^\{[!-z|~]*\}/u.exec(code.slice(at));
    if (!found) return false;
    annotated = true;
    at += found[0].length;
    return true;
  };
  const component = (): number | string => {
    if (annotation()) return 1;
    if (code[at] === '(') {
      at += 1;
      const inner = term();
      if (typeof inner === 'string') return inner;
      if (code[at] !== ')') return 'a bracket is not closed';
      at += 1;
      annotation();
      return inner;
    }
    const number = /^[1-9]\d*/u.exec(code.slice(at));
    if (number) { at += number[0].length; annotation(); return Number(number[0]); }
    const found = /^(?:\[[^\]]+\]|[A-Za-z%'](?:[A-Za-z%'_]|\[[^\]]+\])*)/u.exec(code.slice(at));
    if (!found) return `nothing readable at ${at}`;
    const size = simple(found[0]);
    if (size === null) return `${found[0]} is no unit`;
    at += found[0].length;
    const exponent = /^[+-]?\d+/u.exec(code.slice(at));
    if (exponent) at += exponent[0].length;
    annotation();
    return size ** Number(exponent?.[0] ?? 1);
  };
  const term = (): number | string => {
    let size: number | string = 1;
    let turned = code[at] === '/';
    if (turned) at += 1;
    for (;;) {
      const next = component();
      if (typeof next === 'string') return next;
      size = turned ? (size) / next : (size) * next;
      if (code[at] !== '.' && code[at] !== '/') return size;
      turned = code[at] === '/';
      at += 1;
    }
  };
  const size = code === '' ? 'nothing' : term();
  if (typeof size === 'string') return size;
  return at === code.length ? { size, annotated } : `${code.slice(at)} is too much`;
}
