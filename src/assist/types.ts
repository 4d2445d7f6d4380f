// What the editor's help consists of, as plain data: suggestions, places of names, stretches. Offsets are in the note's text.
import type { SourceRange } from '../problems/problem.ts';

export type SuggestionKind =
  | 'key' | 'value' | 'unit' | 'tank' | 'quantity' | 'series' | 'function' | 'phase' | 'instant' | 'event' | 'result' | 'word' | 'keyword' | 'block' | 'claim';

/** One thing that could be written at the cursor. */
export interface Suggestion {
  readonly label: string;
  readonly kind: SuggestionKind;
  /** Text to write; with `snippet`, `${1:…}` and `$0` are places to type at. */
  readonly insert: string;
  readonly snippet: boolean;
  /** What it replaces: from the start of the word under the cursor. Within one line. */
  readonly range: SourceRange;
  /** A few words beside the label: a unit, a label, what it gives. */
  readonly detail: string;
  /** Markdown; from the catalogue, the schema or the tables. */
  readonly documentation: string;
  /** Suggestions stand in the order of this text. */
  readonly sort: string;
  /** What is typed is held against this; the label where it is absent. */
  readonly filter?: string;
  /** True where the next thing to write can be suggested at once. */
  readonly goesOn?: boolean;
}

/** Escapes text for use inside a snippet. */
export function snippetText(text: string): string {
  return text.replace(/[\\$}]/gu, '\\$&');
}

/** A place to type at, with what stands there at first. */
export function stop(index: number, text: string): string {
  return `\${${index}:${snippetText(text)}}`;
}
