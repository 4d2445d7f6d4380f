// Claims that a reader cannot tell from the number they stand against: `1{5.83 mg/L = …}` reads as 15.83.

/** Characters that take no room on the page: soft hyphens, joiners, marks of direction. */
const invisible = '\\u00AD\\u034F\\u180E\\u200B-\\u200F\\u202A-\\u202E\\u2060-\\u2069\\uFEFF';
export const invisibleCharacter = new RegExp(`[${invisible}]`, 'u');

/** What before a claim becomes a part of its number: digits, a decimal or thousands mark behind digits, and a sign that hangs on nothing. */
const before = /(?:\p{N}[.,'’\u00a0\u202f\u2009]?|(?:^|[\s(~≈"“‘])[−–+-]|\p{N}(?:e|\s?[×·]\s?))$/u;
/** What behind a claim that ends in a digit does the same, and a digit behind any claim. */
const after = /^[.,'’\u00a0\u202f\u2009]?\p{N}/u;

export interface Touched { readonly start: number; readonly end: number }

/** What of a text a reader sees: the character shown for each place, empty where none is, null where something else than text stands. */
export type Shown = (index: number) => string | null;

/** The claims of an inline text that stand against a number, with that number. */
export function touchedClaims(source: string, claims: readonly Touched[], shown: Shown): Touched[] {
  return claims.flatMap((claim) => {
    const left = nearest(source, claim.start - 1, -1, shown);
    const right = nearest(source, claim.end, 1, shown);
    const touches = before.test(left.text) || (after.test(right.text) && !/^\s/u.test(right.text));
    return touches ? [{ start: before.test(left.text) ? left.from : claim.start, end: after.test(right.text) ? right.from + 1 : claim.end }] : [];
  });
}

/** Stands for anything that is no prose: another claim, code, an image. */
const other = '\uFFFC';

/** Up to three visible characters beside a claim, and where the nearest of them stands. */
function nearest(source: string, start: number, step: 1 | -1, shown: Shown): { text: string; from: number } {
  let text = '';
  let from = start;
  for (let index = start; index >= 0 && index < source.length && text.length < 3; index += step) {
    const character = shown(index);
    if (character === null) return { text: step < 0 ? other + text : text + other, from };
    if (text === '' && character !== '') from = index;
    text = step < 0 ? character + text : text + character;
  }
  return { text, from };
}
