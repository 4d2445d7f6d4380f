// Reads the YAML of a readings block that points to a file: keys and texts with their places in the block.
import { isMap, isScalar, parseDocument, type Node, type Pair } from 'yaml';
import { nearestName } from '../../problems/nearest.ts';
import type { SourceRange } from '../../problems/problem.ts';
import { replaceFix, type Reporter } from '../reporter.ts';

/** A text and its place in the block's text. */
export interface LocalText { readonly text: string; readonly range: SourceRange }

export const fileKeyNames = ['from', 'columns', 'time zone', 'sha256', 'delimiter', 'decimal', 'date order', 'header line', 'encoding'] as const;
export type FileKey = (typeof fileKeyNames)[number];

export interface FileKeys {
  readonly texts: ReadonlyMap<Exclude<FileKey, 'columns'>, LocalText>;
  /** Columns of the file and what each holds, in order; null when the key is not there. */
  readonly columns: readonly { readonly from: LocalText; readonly to: LocalText }[] | null;
  readonly columnsRange: SourceRange | null;
}

/** Reads the keys. YAML's own errors and unknown keys are reported; what can be read is read. */
export function readFileKeys(text: string, reporter: Reporter): FileKeys {
  const texts = new Map<Exclude<FileKey, 'columns'>, LocalText>();
  let columns: { from: LocalText; to: LocalText }[] | null = null;
  let columnsRange: SourceRange | null = null;
  let contents: Node | null = null;
  try {
    const document = parseDocument(text, { schema: 'failsafe', prettyErrors: false, uniqueKeys: false, logLevel: 'silent' });
    contents = document.contents;
    for (const error of document.errors.slice(0, 3)) {
      const start = Math.min(Math.max(0, error.pos[0]), text.length);
      reporter.add({ code: 'data-file-keys', range: { start, end: Math.min(text.length, Math.max(start, error.pos[1])) }, args: { reason: error.code } });
    }
  } catch {
    reporter.add({ code: 'data-file-keys', range: { start: 0, end: text.length }, args: { reason: 'UNREADABLE' } });
  }
  if (!isMap(contents)) return { texts, columns, columnsRange };
  for (const pair of contents.items as Pair<unknown, unknown>[]) {
    const key = scalarText(pair.key, text);
    if (!key) continue;
    const name = key.text as FileKey;
    if (!fileKeyNames.includes(name)) {
      const near = nearestName(key.text, fileKeyNames);
      reporter.add({
        code: 'data-file-key-unknown', range: key.range, args: { key: key.text, known: [...fileKeyNames] },
        fixes: near === null ? [] : [replaceFix(key.range, near, { preferred: true })],
      });
    } else if (name === 'columns') {
      columnsRange = key.range;
      columns = [];
      if (isMap(pair.value)) {
        for (const inner of pair.value.items as Pair<unknown, unknown>[]) {
          const from = scalarText(inner.key, text);
          const to = scalarText(inner.value, text);
          if (from && to && to.text !== '') columns.push({ from, to });
          else if (from) reporter.add({ code: 'data-file-keys', range: from.range, args: { reason: 'NO_TARGET' } });
        }
      } else reporter.add({ code: 'data-file-keys', range: key.range, args: { reason: 'NO_COLUMNS' } });
    } else if (!texts.has(name)) {
      const value = scalarText(pair.value, text);
      if (value && value.text !== '') texts.set(name, value);
    }
  }
  return { texts, columns, columnsRange };
}

/** A scalar's text with the place of its letters: quotes stay outside. */
function scalarText(node: unknown, text: string): LocalText | null {
  if (!isScalar(node) || typeof node.value !== 'string' || !node.range) return null;
  let [start, end] = [node.range[0], node.range[1]];
  if (/^["']/u.test(text.slice(start, end))) { start += 1; end = Math.max(start, end - 1); }
  return { text: node.value.trim(), range: { start, end } };
}

/** A text as a YAML key or value that reads back letter by letter. */
export function yamlText(text: string): string {
  if (/^[\p{L}\p{N}][\p{L}\p{N} ._/@%()\[\]°³²+-]*$/u.test(text) && !/[:#] |\s$|^(?:true|false|null|yes|no)$/iu.test(text) && !text.includes(' #')) return text;
  return `"${text.replace(/[\\"]/gu, '\\$&').replace(/[\u0000-\u001f]/gu, (letter) => `\\x${letter.charCodeAt(0).toString(16).padStart(2, '0')}`)}"`;
}
