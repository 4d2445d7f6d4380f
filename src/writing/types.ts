// Generated prose before it becomes HTML or Markdown: runs of text and computed values.

/** A computed value inside generated prose. */
export interface ValueRun {
  readonly kind: 'value';
  /** As the reader sees it. */
  readonly text: string;
  /** The formula it came from. */
  readonly formula: string;
  /** Machine form for `<data value>`. */
  readonly machine: string;
}
export interface TextRun { readonly kind: 'text'; readonly text: string }
/** A citation; `source` is the full reference. */
export interface CitationRun { readonly kind: 'citation'; readonly text: string; readonly source: string }
export type Run = TextRun | ValueRun | CitationRun;

export interface Paragraph { readonly topic: string; readonly runs: readonly Run[] }
