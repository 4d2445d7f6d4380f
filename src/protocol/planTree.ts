// The plan's YAML as a small tree of our own: every scalar is text with its place in the note. Aliases and tags
// mean nothing here; what the library cannot read is said in the keeper's words and the rest is kept.
import { isAlias, isMap, isScalar, isSeq, parseDocument, type Node, type Scalar } from 'yaml';
import { toDocumentRange, sliceMapped, type MappedText, type Piece } from '../note/mappedText.ts';
import { fix, type SourceRange } from '../problems/problem.ts';
import { quoted, replaceWith, shorten, type Collector } from './collector.ts';
import { mendLines } from './yamlLines.ts';

export interface TextNode {
  readonly kind: 'text';
  readonly value: string;
  /** The value with its way back to the note's text. */
  readonly mapped: MappedText;
  readonly range: SourceRange;
  readonly style: 'plain' | 'quoted' | 'block';
}
export interface MapEntry { readonly key: string; readonly keyRange: SourceRange; readonly value: TreeNode }
export interface MapNode { readonly kind: 'map'; readonly entries: readonly MapEntry[]; readonly range: SourceRange }
export interface ListNode { readonly kind: 'list'; readonly items: readonly TreeNode[]; readonly range: SourceRange }
export type TreeNode = TextNode | MapNode | ListNode;

const deepest = 20;

/** The block's text as a tree; null when it holds nothing at all. */
export function readTree(content: MappedText, collector: Collector): TreeNode | null {
  const mended = mendLines(content, collector);
  return new TreeBuilder(compose(mended, content), collector).build();
}

/** Leads the pieces of a text taken out of `outer` on to the note's text. */
function compose(inner: MappedText, outer: MappedText): MappedText {
  const pieces: Piece[] = [];
  for (const piece of inner.pieces) {
    for (const part of sliceMapped(outer, piece.document, piece.document + piece.length).pieces) {
      pieces.push({ offset: piece.offset + part.offset, document: part.document, length: part.length });
    }
  }
  return { text: inner.text, pieces };
}

/** Brackets that do not pair up within one text. */
function unbalanced(text: string): boolean {
  let depth = 0;
  for (const letter of text) {
    if (letter === '(') depth += 1;
    if (letter === ')' && (depth -= 1) < 0) return true;
  }
  return depth !== 0;
}

const looksLikeFormula = (text: string): boolean => /[()]|<=?|>=?|==|[≤≥]|\.\./.test(text);

class TreeBuilder {
  private readonly source: MappedText;
  private readonly collector: Collector;

  constructor(source: MappedText, collector: Collector) {
    this.source = source;
    this.collector = collector;
  }

  private place(start: number, end: number): SourceRange {
    return toDocumentRange(this.source, { start, end });
  }

  build(): TreeNode | null {
    const { text } = this.source;
    let contents: Node | null;
    try {
      const document = parseDocument(text, { schema: 'failsafe', prettyErrors: false, uniqueKeys: false, logLevel: 'silent', keepSourceTokens: false });
      for (const error of document.errors.slice(0, 3)) {
        const [from, to] = error.pos;
        const start = Math.max(0, Math.min(from, text.length - 1));
        const lineEnd = text.indexOf('\n', start) < 0 ? text.length : text.indexOf('\n', start);
        const end = Math.max(Math.min(to, lineEnd), Math.min(start + 1, text.length));
        this.collector.add('yaml-unreadable', this.place(start, end), { reason: error.code, text: shorten(text.slice(text.lastIndexOf('\n', start - 1) + 1, lineEnd), 40) });
      }
      contents = document.contents;
    } catch {
      this.collector.add('yaml-unreadable', this.place(0, text.length), { reason: 'too-deep', text: shorten(text, 40) });
      return null;
    }
    const tree = contents ? this.node(contents, 0) : null;
    return tree?.kind === 'text' && tree.value.trim() === '' ? null : tree;
  }

  private node(node: Node, depth: number): TreeNode {
    const [start, end] = [node.range?.[0] ?? 0, node.range?.[1] ?? 0];
    if (depth > deepest) return this.text(start, end, this.source.text.slice(start, end), 'plain');
    if (isMap(node)) return { kind: 'map', entries: node.flow ? this.flowEntries(node.items as Pair[], depth) : this.entries(node.items as Pair[], depth), range: this.place(start, end) };
    if (isSeq(node)) return { kind: 'list', items: node.flow ? this.flowItems(node.items as (Node | Pair)[], depth) : node.items.map((item) => this.node(item as Node, depth + 1)), range: this.place(start, end) };
    if (isScalar(node)) {
      const style = node.type === 'BLOCK_LITERAL' || node.type === 'BLOCK_FOLDED' ? 'block' : node.type === 'PLAIN' ? 'plain' : 'quoted';
      const value = typeof node.value === 'string' ? node.value : node.value == null ? '' : String(node.value);
      return this.text(start, end, value, style);
    }
    const word = this.source.text.slice(start, end);
    if (isAlias(node)) this.collector.add('alias-refused', this.place(start, end), { text: word });
    return this.text(start, end, word, 'plain');
  }

  private text(start: number, end: number, value: string, style: TextNode['style']): TextNode {
    return { kind: 'text', value, mapped: this.align(start, end, value, style), range: this.place(start, end), style };
  }

  /** The value's letters with the places they stand at; folded lines, doubled quotes and escapes are stepped over. */
  private align(start: number, end: number, value: string, style: TextNode['style']): MappedText {
    const { text } = this.source;
    if (text.slice(start, end) === value) return { text: value, pieces: this.pieces(start, end, 0) };
    const pieces: Piece[] = [];
    let at = style === 'quoted' ? start + 1 : style === 'block' ? Math.max(start, text.indexOf('\n', start) + 1) : start;
    let runFrom = -1;
    let runAt = 0;
    const flush = (offset: number): void => {
      if (runFrom >= 0) pieces.push(...this.pieces(runAt, runAt + (offset - runFrom), runFrom));
      runFrom = -1;
    };
    for (let offset = 0; offset < value.length; offset += 1) {
      const letter = value[offset]!;
      if (text[at] !== letter || (style === 'quoted' && text[at] === '\\')) {
        flush(offset);
        if (text[at] === '\\' && style === 'quoted') {
          at += 1;
          if (text[at] === letter) { pieces.push(...this.pieces(at, at + 1, offset)); }
          at += 1;
          continue;
        }
        while (at < end && /\s/.test(text[at]!) && text[at] !== letter) at += 1;
        if (/\s/.test(letter)) { if (text[at] === letter) at += 1; while (at < end && /\s/.test(text[at]!) && !/\s/.test(value[offset + 1] ?? ' ')) at += 1; continue; }
        if (text[at] !== letter) continue;
      }
      if (runFrom < 0) { runFrom = offset; runAt = at; }
      at += 1;
      if (letter === "'" && style === 'quoted' && text[start] === "'") { flush(offset + 1); at += 1; }
    }
    flush(value.length);
    if (pieces.length === 0) pieces.push(...this.pieces(start, end, 0).slice(0, 1));
    return { text: value, pieces };
  }

  private pieces(start: number, end: number, offset: number): Piece[] {
    return sliceMapped(this.source, start, end).pieces.map((piece) => ({ ...piece, offset: piece.offset + offset }));
  }

  private keyOf(key: Node | null): { key: string; range: SourceRange; start: number; end: number } {
    const start = key?.range?.[0] ?? 0;
    const end = key?.range?.[1] ?? start;
    const raw = isScalar(key) && typeof key.value === 'string' ? key.value : this.source.text.slice(start, end);
    return { key: raw.trim().replace(/\s+/g, ' '), range: this.place(start, end), start, end };
  }

  private entries(pairs: readonly Pair[], depth: number): MapEntry[] {
    const entries: MapEntry[] = [];
    for (const pair of pairs) {
      const { key, range, end } = this.keyOf(pair.key);
      if (key === '<<') continue; // refused where its alias stands
      if (key === '' && !pair.value) continue;
      entries.push({ key, keyRange: range, value: pair.value ? this.node(pair.value, depth + 1) : this.text(end, end, '', 'plain') });
    }
    return entries;
  }

  /** Entries of `{…}`: a key without a value is the rest of a text that a comma cut. */
  private flowEntries(pairs: readonly Pair[], depth: number): MapEntry[] {
    const entries: MapEntry[] = [];
    for (let i = 0; i < pairs.length; i += 1) {
      const pair = pairs[i]!;
      const { key, range, start } = this.keyOf(pair.key);
      if (!pair.value) {
        const tight = /^([\p{L}][\p{L} ]*):(\S.*)$/u.exec(key);
        if (tight) {
          const at = start + tight[1]!.length + 1;
          this.collector.add('colon-needs-space', this.place(start, at), { key: tight[1]! },
            [fix('replace-with', { text: `${tight[1]!}: ` }, [{ range: this.place(at, at), newText: ' ' }], { preferred: true, safe: true })]);
          entries.push({ key: tight[1]!, keyRange: this.place(start, at - 1), value: this.text(at, at + tight[2]!.length, tight[2]!, 'plain') });
          continue;
        }
        // `{words}` alone: whoever reads it knows whether words or keys were meant.
        if (pairs.length === 1) entries.push({ key, keyRange: range, value: this.text(start, start, '', 'plain') });
        else if (key !== '') this.collector.add('needs-quotes', range, { key: '', text: shorten(key, 40), reason: 'no-value' });
        continue;
      }
      let last = i;
      const from = pair.value.range?.[0] ?? 0;
      let to = pair.value.range?.[1] ?? from;
      if (isPlain(pair.value)) {
        while (last + 1 < pairs.length && (!pairs[last + 1]!.value || unbalanced(this.source.text.slice(from, to)))) {
          if (!pairs[last + 1]!.value && /^[\p{L}][\p{L} ]*:\S/u.test(this.keyOf(pairs[last + 1]!.key).key)) break;
          last += 1;
          to = pairs[last]!.value?.range?.[1] ?? this.keyOf(pairs[last]!.key).end;
        }
      }
      if (last > i || (isPlain(pair.value) && unbalanced(this.source.text.slice(from, to)) && looksLikeFormula(this.source.text.slice(from, to)))) {
        entries.push({ key, keyRange: range, value: this.cutText(from, to, key) });
        i = last;
        continue;
      }
      entries.push({ key, keyRange: range, value: this.node(pair.value, depth + 1) });
    }
    return entries;
  }

  /** Items of `[…]`: brackets that do not close within one item belong to the next ones. */
  private flowItems(items: readonly (Node | Pair)[], depth: number): TreeNode[] {
    const result: TreeNode[] = [];
    for (let i = 0; i < items.length; i += 1) {
      const item = items[i]!;
      if (!isPlain(item)) {
        result.push('key' in item ? { kind: 'map', entries: this.entries([item as Pair], depth), range: this.place((item as Pair).key?.range?.[0] ?? 0, (item as Pair).value?.range?.[1] ?? 0) } : this.node(item, depth + 1));
        continue;
      }
      const from = item.range?.[0] ?? 0;
      let to = item.range?.[1] ?? from;
      if (unbalanced(this.source.text.slice(from, to)) && this.source.text.slice(from, to).includes('(')) {
        while (i + 1 < items.length && isPlain(items[i + 1]!) && unbalanced(this.source.text.slice(from, to))) {
          i += 1;
          to = (items[i] as Scalar).range?.[1] ?? to;
        }
        result.push(this.cutText(from, to, ''));
      } else result.push(this.node(item, depth + 1));
    }
    return result;
  }

  private cutText(from: number, to: number, key: string): TextNode {
    const value = this.source.text.slice(from, to).trimEnd();
    const range = this.place(from, from + value.length);
    this.collector.add(looksLikeFormula(value) ? 'formula-needs-quotes' : 'needs-quotes', range, { key, text: shorten(value, 60), ...(looksLikeFormula(value) ? {} : { reason: 'comma' }) },
      [replaceWith(range, quoted(value), { safe: true })]);
    return this.text(from, from + value.length, value, 'plain');
  }
}

interface Pair { readonly key: Node | null; readonly value: Node | null }

function isPlain(node: Node | Pair): node is Scalar {
  return isScalar(node) && node.type === 'PLAIN';
}
