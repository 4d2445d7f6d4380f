// What a data file's bytes say before the keys of a block are asked: hash, encoding, text, cells. Each is read once for the same
// bytes: a key typed above the block of a file of 100,000 rows moves the block, and changes nothing in the file.
import { sha256Of } from '../../protocol/sha256.ts';
import type { FileRow } from './dataCells.ts';
import { decodeText, detectEncoding, type Encoding } from './decode.ts';
import { splitRows } from './layout.ts';

export class DataFile {
  readonly #bytes: Uint8Array;
  #sha256: string | null = null;
  #encoding: Encoding | null = null;
  #decoded: { readonly encoding: Encoding; readonly text: string } | null = null;
  #split: { readonly encoding: Encoding; readonly delimiter: string; readonly rows: readonly FileRow[] } | null = null;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  /** 64 hexadecimal digits in lower case. */
  get sha256(): string {
    return this.#sha256 ??= sha256Of(this.#bytes);
  }

  /** The encoding that the bytes show. */
  get encoding(): Encoding {
    return this.#encoding ??= detectEncoding(this.#bytes);
  }

  text(encoding: Encoding): string {
    if (this.#decoded?.encoding !== encoding) this.#decoded = { encoding, text: decodeText(this.#bytes, encoding) };
    return this.#decoded.text;
  }

  /** All rows of cells, from the first line on. */
  rows(encoding: Encoding, delimiter: string): readonly FileRow[] {
    if (this.#split?.encoding !== encoding || this.#split.delimiter !== delimiter) this.#split = { encoding, delimiter, rows: splitRows(this.text(encoding), delimiter) };
    return this.#split.rows;
  }
}

const known = new WeakMap<Uint8Array, DataFile>();

/** The file of these bytes, which nobody changes; it goes when they go. */
export function dataFileOf(bytes: Uint8Array): DataFile {
  const file = known.get(bytes) ?? new DataFile(bytes);
  known.set(bytes, file);
  return file;
}
