// The small part of papaparse that is used. Its own types bring Node's in, which the pure rooms must not see.
declare module 'papaparse/papaparse.js' {
  export interface ParseError { readonly code: string; readonly row?: number }
  export interface ParseResult { readonly data: string[][]; readonly errors: readonly ParseError[] }
  export interface ParseConfig {
    readonly delimiter: string; readonly newline: string; readonly quoteChar: string; readonly header: false; readonly skipEmptyLines: false; readonly preview?: number;
  }
  const papaparse: { parse(text: string, config: ParseConfig): ParseResult };
  export default papaparse;
}
