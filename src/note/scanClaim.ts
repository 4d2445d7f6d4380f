// The one scanner for claims: given text and the place of a `{`, says whether a claim stands there and where its parts are.
// The Markdown rule and the editor both call it, so that neither can see a claim the other does not.

/** A claim in a piece of text; all places are UTF-16 offsets into that text, ends exclusive. */
export interface ScannedClaim {
  readonly kind: 'claim';
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

/** @returns null where plain text stands. */
export function scanClaim(_source: string, _position: number): ScannedClaim | null {
  return null;
}
