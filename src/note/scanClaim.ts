// The one scanner for claims: given text and the place of a `{`, says whether a claim stands there and where its parts are.
// The Markdown rule and the editor both call it, so that neither can see a claim the other does not.

/** A claim in a piece of text; all places are UTF-16 offsets into that text, ends exclusive. */
export interface ScannedClaim {
  /** Past the `}`. */
  readonly end: number;
  readonly form: 'equals' | 'unfilled' | 'if' | 'stated';
  readonly wordsStart: number;
  readonly wordsEnd: number;
  /** For `stated`, of the text after the word `stated`. */
  readonly formulaStart: number;
  readonly formulaEnd: number;
  /** For `stated`: the source without its quotes, null when there is none. */
  readonly source: string | null;
}

const openBrace = 0x7b;
const closeBrace = 0x7d;
const backslash = 0x5c;
const quote = 0x22;
const backtick = 0x60;
const percent = 0x25;

function isSpace(code: number): boolean {
  return code === 0x20 || code === 0x09 || code === 0x0a;
}

function isWordCharacter(code: number): boolean {
  return (code >= 0x30 && code <= 0x39) || (code >= 0x41 && code <= 0x5a) || (code >= 0x61 && code <= 0x7a);
}

/** The place of the quotation mark that ends the string opened at `position`, or -1. */
function stringEnd(source: string, position: number): number {
  for (let index = position + 1; index < source.length; index++) {
    const code = source.charCodeAt(index);
    if (code === backslash) index++;
    else if (code === quote) return index;
  }
  return -1;
}

/** Where the scan of an opening brace came to an end, and the last separator it passed. */
export interface BraceScan {
  /** Place of the `}`; -1 when none was found. */
  readonly close: number;
  /** Where the scan stopped: at the `}`, at another `{` or a backtick, or at the end of the text. */
  readonly stop: number;
  /** The last spaced ` = ` or ` if ` outside a string: from its first space to past its last. */
  readonly separator: { readonly start: number; readonly end: number; readonly word: '=' | 'if' } | null;
  /** The first spaced ` = `, for unfilled claims. */
  readonly firstEquals: { readonly start: number; readonly end: number } | null;
}

/** Reads from the `{` at `position` to its `}`; strings in double quotes may hold braces. A quotation mark after a letter or digit is an inch mark. */
export function scanBrace(source: string, position: number): BraceScan {
  let separator: BraceScan['separator'] = null;
  let firstEquals: BraceScan['firstEquals'] = null;
  let index = position + 1;
  for (; index < source.length; index++) {
    const code = source.charCodeAt(index);
    if (code === backslash) index++;
    else if (code === closeBrace) return { close: index, stop: index, separator, firstEquals };
    else if (code === openBrace || code === backtick) break;
    else if (code === quote && !isWordCharacter(source.charCodeAt(index - 1))) {
      const end = stringEnd(source, index);
      if (end > 0) index = end;
    } else if (isSpace(code)) {
      const next = source.charCodeAt(index + 1);
      if (next === 0x3d && isSpace(source.charCodeAt(index + 2))) {
        separator = { start: index, end: index + 3, word: '=' };
        firstEquals ??= separator;
      } else if (next === 0x69 && source.charCodeAt(index + 2) === 0x66 && isSpace(source.charCodeAt(index + 3))) {
        separator = { start: index, end: index + 4, word: 'if' };
      }
    }
  }
  return { close: -1, stop: Math.min(index, source.length), separator, firstEquals };
}

/** True where the brace belongs to another language's marks: `{{ … }}` and `{% … %}`. */
function isForeignBrace(source: string, position: number): boolean {
  const next = source.charCodeAt(position + 1);
  return next === openBrace || next === percent
    || (source.charCodeAt(position - 1) === openBrace && source.charCodeAt(position - 2) !== backslash);
}

/**
 * Reads the claim that starts at the `{` at `position`.
 * @returns null where plain text stands: no spaced ` = ` or ` if `, no `}`, nothing before the separator, another `{` or a backtick
 * outside a string.
 */
export function scanClaim(source: string, position: number): ScannedClaim | null {
  if (source.charCodeAt(position) !== openBrace || isForeignBrace(source, position)) return null;
  const brace = scanBrace(source, position);
  if (brace.close < 0 || !brace.separator) return null;

  let wordsStart = position + 1;
  while (isSpace(source.charCodeAt(wordsStart))) wordsStart++;
  const unfilled = source.charCodeAt(wordsStart) === 0x3f && brace.firstEquals !== null
    && source.slice(wordsStart + 1, brace.firstEquals.start).trim() === '';
  const separator = unfilled ? { ...brace.firstEquals!, word: '=' as const } : brace.separator;
  let wordsEnd = separator.start;
  while (wordsEnd > wordsStart && isSpace(source.charCodeAt(wordsEnd - 1))) wordsEnd--;
  if (wordsEnd <= wordsStart) return null;

  let formulaStart = Math.min(separator.end, brace.close);
  while (formulaStart < brace.close && isSpace(source.charCodeAt(formulaStart))) formulaStart++;
  let formulaEnd = brace.close;
  while (formulaEnd > formulaStart && isSpace(source.charCodeAt(formulaEnd - 1))) formulaEnd--;
  const claim = { end: brace.close + 1, wordsStart, wordsEnd };
  if (unfilled) return { ...claim, form: 'unfilled', formulaStart, formulaEnd, source: null };
  if (separator.word === 'if') return { ...claim, form: 'if', formulaStart, formulaEnd, source: null };

  const formula = source.slice(formulaStart, formulaEnd);
  const stated = /^stated(?=["\s]|$)\s*/.exec(formula);
  if (!stated) return { ...claim, form: 'equals', formulaStart, formulaEnd, source: null };
  const statedSource = /^"((?:[^"\\]|\\[^])*)"$/.exec(formula.slice(stated[0].length))?.[1];
  return {
    ...claim, form: 'stated', formulaStart: formulaStart + stated[0].length, formulaEnd,
    source: statedSource?.trim() ? statedSource.replace(/\\([^])/g, '$1').replace(/\s+/g, ' ').trim() : null,
  };
}
