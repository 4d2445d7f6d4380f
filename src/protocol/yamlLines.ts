// Lines of a plan as a keeper mistypes them, mended before the YAML library sees them, so that one slip never
// loses the rest: tabs, missing colons, wrong indentation, open quotes and brackets, values that need quotes.
import { fix, type Fix, type SourceRange } from '../problems/problem.ts';
import { toDocumentRange, type MappedText, type Piece } from '../note/mappedText.ts';
import { quoted, replaceWith, shorten, type Collector } from './collector.ts';
import { flowEnd, keyColon, knownKeys, plainEnd, quoteEnd, splitLines, type Line } from './yamlScan.ts';

interface Mend { readonly at: number; readonly remove: number; readonly insert: string }
interface Level { readonly column: number; open: boolean }

class LineReader {
  private readonly mends: Mend[] = [];
  private readonly levels: Level[] = [{ column: -1, open: true }];
  private readonly tabs: { start: number; end: number; newText: string }[] = [];
  private readonly lines: Line[];
  private index = 0;
  /** Offset up to which lines belong to a value of several lines. */
  private skipTo = 0;
  /** Lines deeper than this column belong to a text block (`|`, `>`). */
  private textBlock: number | null = null;
  private readonly content: MappedText;
  private readonly collector: Collector;

  constructor(content: MappedText, collector: Collector) {
    this.content = content;
    this.collector = collector;
    this.lines = splitLines(content.text);
  }

  private place(start: number, end: number): SourceRange {
    return toDocumentRange(this.content, { start, end });
  }

  private insert(at: number, text: string): void {
    this.mends.push({ at, remove: 0, insert: text });
  }

  private insertFix(at: number, text: string, shown: string): Fix {
    const place = this.place(at, at);
    return fix('replace-with', { text: shown }, [{ range: place, newText: text }], { preferred: true, safe: true });
  }

  read(): MappedText {
    for (this.index = 0; this.index < this.lines.length; this.index += 1) this.readLine(this.lines[this.index]!);
    const first = this.tabs[0];
    if (first) {
      this.collector.add('tab-indent', this.place(first.start, first.end), { lines: String(this.tabs.length) }, [
        fix('indent-with-spaces', {}, this.tabs.map((tab) => ({ range: this.place(tab.start, tab.end), newText: tab.newText })), { preferred: true, safe: true }),
      ]);
    }
    return this.apply();
  }

  private apply(): MappedText {
    const source = this.content.text;
    const mends = this.mends.map((mend, order) => ({ ...mend, order })).sort((a, b) => a.at - b.at || a.order - b.order);
    const pieces: Piece[] = [];
    let text = '';
    let position = 0;
    const keep = (end: number): void => {
      if (end > position) pieces.push({ offset: text.length, document: position, length: end - position });
      text += source.slice(position, Math.max(position, end));
      position = Math.max(position, end);
    };
    for (const mend of mends) {
      keep(mend.at);
      text += mend.insert;
      position = Math.max(position, mend.at + mend.remove);
    }
    keep(source.length);
    if (pieces.length === 0) pieces.push({ offset: 0, document: 0, length: 0 });
    return { text, pieces };
  }

  private nextLineColumn(): number {
    for (let i = this.index + 1; i < this.lines.length; i += 1) {
      const text = this.lines[i]!.text;
      const column = text.search(/\S/);
      if (column >= 0 && text[column] !== '#') return column;
    }
    return -1;
  }

  private readLine(line: Line): void {
    if (line.start < this.skipTo) return;
    const indent = /^[ \t]*/.exec(line.text)![0];
    const body = line.text.slice(indent.length);
    if (body === '' || body.startsWith('#')) return;
    let column = indent.replace(/\t/g, '  ').length;
    if (this.textBlock !== null) {
      if (column > this.textBlock) return;
      this.textBlock = null;
    }
    const indentEnd = line.start + indent.length;
    if (indent.includes('\t')) {
      const spaces = indent.replace(/\t/g, '  ');
      this.tabs.push({ start: line.start, end: indentEnd, newText: spaces });
      this.mends.push({ at: line.start, remove: indent.length, insert: spaces });
    }
    if (/^(?:---|\.\.\.)(?:\s|$)/.test(body) && column === 0) {
      this.insert(indentEnd, '#');
      if (this.mends.length > 1 || this.levels.length > 1) this.collector.add('yaml-unreadable', this.place(indentEnd, line.end), { reason: 'marker', text: body.slice(0, 3) });
      return;
    }
    const dashes = /^(?:-(?:[ \t]+|$))*/.exec(body)![0];
    const content = body.slice(dashes.length);
    const contentStart = indentEnd + dashes.length;
    let colon = this.mendColon(content, contentStart, column, dashes !== '');
    const virtual = colon === 'mended';
    if (colon === 'mended') colon = content.length;
    const isKeyLine = colon >= 0 || dashes !== '';
    if (!isKeyLine) {
      this.readLoneLine(line, content, contentStart, column);
      return;
    }
    column = this.settleColumn(line, column, indent.length);
    for (const match of dashes.matchAll(/-/g)) this.push(column + match.index, false);
    const contentColumn = column + dashes.length;
    if (content === '') {
      if (dashes) this.levels.at(-1)!.open = true;
      return;
    }
    if (virtual) {
      this.push(contentColumn, this.lastMendOpens);
      this.takePending(contentColumn);
      return;
    }
    if (colon < 0) {
      this.readValue(content, contentStart, contentColumn - 1);
      return;
    }
    const rest = content.slice(colon + 1);
    const lead = /^\s*/.exec(rest)![0].length;
    const value = rest.slice(lead).trimEnd();
    this.push(contentColumn, value === '' || value.startsWith('#') || /^[&!]\S*$/.test(value));
    if (value !== '') this.readValue(value, contentStart + colon + 1 + lead, contentColumn, content.slice(0, colon).trim());
  }

  private lastMendOpens = false;

  private push(column: number, open: boolean): void {
    while (this.levels.at(-1)!.column > column) this.levels.pop();
    const top = this.levels.at(-1)!;
    if (top.column === column) top.open = open;
    else this.levels.push({ column, open });
  }

  /** `start:2026-…` and `start 2026-…`: the colon that is missing or stands too tight. */
  private mendColon(content: string, start: number, column: number, item: boolean): number | 'mended' {
    const tight = /^([\p{L}][\p{L}\p{N} @_-]*):(?=[^\s])/u.exec(content);
    const top = this.levels.findLast((level) => level.column <= column) ?? this.levels[0]!;
    if (tight && (knownKeys.includes(tight[1]!) || /^["'{[]/.test(content.slice(tight[0].length)))) {
      const continuing = !item && column > top.column && !top.open;
      if (!continuing) {
        const at = start + tight[0].length;
        this.collector.add('colon-needs-space', this.place(start, at), { key: tight[1]! }, [this.insertFix(at, ' ', `${tight[1]!}: `)]);
        this.insert(at, ' ');
        // The value behind the mended colon is looked at like any other, one letter earlier.
        const value = content.slice(tight[0].length).trimEnd();
        this.lastMendOpens = false;
        this.pendingValue = { value, start: at, key: tight[1]! };
        return 'mended';
      }
    }
    const colon = keyColon(content);
    if (colon >= 0 || item) return colon;
    const plain = content.slice(0, plainEnd(content)).trimEnd();
    const known = knownKeys.find((key) => plain === key || plain.startsWith(`${key} `));
    const deeper = this.nextLineColumn() > column;
    const sibling = column === top.column || (column < (this.levels.at(-1)?.column ?? 0) && this.levels.some((level) => level.column === column));
    const firstChild = column > top.column && top.open && this.nextLineColumn() === column;
    const nameAlone = /^[\p{L}][\p{L}\p{N}-]*$/u.test(plain) && deeper && (sibling || top.open);
    if ((known && (sibling || (firstChild && known !== plain))) || nameAlone) {
      const key = known ?? plain;
      const at = start + key.length;
      this.collector.add('missing-colon', this.place(start, at), { key }, [this.insertFix(at, ':', `${key}:`)]);
      this.insert(at, ':');
      const value = plain.slice(key.length).trim();
      this.lastMendOpens = value === '';
      this.pendingValue = value === '' ? null : { value, start: start + plain.indexOf(value, key.length), key };
      return 'mended';
    }
    return -1;
  }

  private pendingValue: { value: string; start: number; key: string } | null = null;

  /** Checks the column of a key or dash against the levels above it; returns the column after mending. */
  private settleColumn(line: Line, column: number, indentLength: number): number {
    let popped: Level | null = null;
    while (this.levels.at(-1)!.column > column) popped = this.levels.pop()!;
    const top = this.levels.at(-1)!;
    if (top.column === column) return column;
    let wanted: number | null = null;
    if (popped) wanted = popped.column - column <= column - top.column || top.column < 0 ? popped.column : top.column;
    else if (!top.open) wanted = top.column;
    if (wanted === null || wanted === column) return column;
    if (popped && wanted === popped.column) this.levels.push(popped);
    const spaces = ' '.repeat(Math.max(0, wanted));
    const place = this.place(line.start, line.start + indentLength);
    const shown = this.place(line.start + indentLength, line.end);
    this.collector.add('bad-indentation', shown, { text: shorten(line.text, 40), spaces: String(Math.max(0, wanted)) }, [
      fix('indent-by', { count: String(Math.max(0, wanted)) }, [{ range: place, newText: spaces }], { preferred: true }),
    ]);
    const earlier = this.mends.findIndex((mend) => mend.at === line.start && mend.remove === indentLength && indentLength > 0);
    if (earlier >= 0) this.mends.splice(earlier, 1);
    this.mends.push({ at: line.start, remove: indentLength, insert: spaces });
    return Math.max(0, wanted);
  }

  /** A line that is neither key nor list item: the rest of a text, or something that YAML cannot place. */
  private readLoneLine(line: Line, content: string, start: number, column: number): void {
    const top = this.levels.at(-1)!;
    if (column > top.column) {
      if (top.open && /^["'{[|>@`%&*!]/.test(content)) this.readValue(content.trimEnd(), start, top.column);
      else this.checkHash(content, start, content);
      top.open = false;
      return;
    }
    this.insert(start, '#');
    this.collector.add('yaml-unreadable', this.place(start, line.end), { reason: 'no-key', text: shorten(content, 40) });
  }

  private needsQuotes(value: string, start: number, reason: string, key: string): void {
    const place = this.place(start, start + value.length);
    this.collector.add('needs-quotes', place, { key, text: shorten(value, 40), reason }, [replaceWith(place, quoted(value), { safe: true })]);
    this.insert(start, "'");
    for (let i = 0; i < value.length; i += 1) if (value[i] === "'") this.insert(start + i, "'");
    this.insert(start + value.length, "'");
  }

  private checkHash(value: string, start: number, whole: string): void {
    const end = plainEnd(value);
    if (end === value.length) return;
    const lost = value.slice(end).trim();
    const kept = value.slice(0, end).trimEnd();
    const hash = start + end + /^\s*/.exec(value.slice(end))![0].length;
    const fixes: Fix[] = [];
    if (whole === value && kept !== '') fixes.push(replaceWith(this.place(start, start + value.length), quoted(value.trimEnd())));
    const line = this.lines[this.index]!;
    const indent = /^\s*/.exec(line.text)![0];
    // In a quote or list a new line would need the container's marks, which are not known here.
    if (this.content.pieces.length <= 1) fixes.push(fix('own-line', {}, [
      { range: this.place(line.start + indent.length, line.start + indent.length), newText: `${lost}\n${indent}` },
      { range: this.place(Math.min(start + end, hash), start + value.length), newText: '' },
    ], { safe: true }));
    this.collector.add('text-after-hash', this.place(hash, start + value.length), { text: shorten(lost, 40) }, fixes);
  }

  private readValue(value: string, start: number, column: number, key = ''): void {
    const first = value[0]!;
    const lineEnd = start + value.length;
    if (first === '#') {
      if (this.nextLineColumn() <= column && key !== '') this.checkHash(` ${value}`, start - 1, '');
    } else if (first === '"' || first === "'") this.readQuoted(value, start, column, key);
    else if (first === '{' || first === '[') this.readFlow(value, start, column, key);
    else if (first === '|' || first === '>') {
      if (/^[|>][-+0-9]{0,2}\s*(?:#.*)?$/.test(value)) this.textBlock = column;
      else this.needsQuotes(value, start, 'start', key);
    } else if (first === '*' || first === '&' || first === '!') {
      const word = /^\S+/.exec(value)![0];
      const deeper = this.nextLineColumn() > column;
      if (first !== '!') this.collector.add('alias-refused', this.place(start, lineEnd), { text: shorten(value, 40) });
      if (word === value && deeper && first !== '*') {
        if (first === '!') this.collector.add('needs-quotes', this.place(start, lineEnd), { key, text: shorten(value, 40), reason: 'start' });
        this.mends.push({ at: start, remove: value.length, insert: '' });
      } else if (first === '!') this.needsQuotes(value, start, 'start', key);
      else this.quoteSilently(value, start);
    } else if (/^[@`%,\]}]/.test(value) || /^[-?:](?:\s|$)/.test(value)) this.needsQuotes(value, start, 'start', key);
    else {
      const plain = value.slice(0, plainEnd(value)).trimEnd();
      if (/:(?=\s|$)/.test(plain)) this.needsQuotes(plain, start, 'colon', key);
      this.checkHash(value, start, value);
    }
  }

  private quoteSilently(value: string, start: number): void {
    this.insert(start, "'");
    for (let i = 0; i < value.length; i += 1) if (value[i] === "'") this.insert(start + i, "'");
    this.insert(start + value.length, "'");
  }

  private readQuoted(value: string, start: number, column: number, key: string): void {
    const close = quoteEnd(value, 0);
    if (close >= 0) {
      const rest = value.slice(close).trim();
      if (rest !== '' && !(rest.startsWith('#') && /\s/.test(value[close]!))) this.needsQuotes(value, start, 'quote', key);
      return;
    }
    const end = this.continuedTo(start, column, (text) => quoteEnd(text, 0));
    if (end >= 0) {
      this.skipTo = end;
      return;
    }
    const at = start + value.length;
    this.collector.add('unclosed-quote', this.place(start, at), { text: shorten(value, 40) }, [replaceWith(this.place(start, at), `${value}${value[0]!}`, { safe: true })]);
    if (/\\$/.test(value) && value[0] === '"') this.insert(at, '\\');
    this.insert(at, value[0]!);
  }

  /** Where a value that goes on over deeper lines closes; -1 when a line comes in between that stands on its own. */
  private continuedTo(start: number, column: number, close: (text: string) => number): number {
    let stop = this.lines[this.index]!.end;
    for (let i = this.index + 1; i < this.lines.length; i += 1) {
      const { text, end } = this.lines[i]!;
      const indent = text.search(/\S/);
      if (indent >= 0 && indent <= column) break;
      stop = end;
    }
    const whole = this.content.text.slice(start, stop);
    const end = close(whole);
    if (end < 0) return -1;
    const between = whole.slice(0, end).split('\n').slice(1);
    const standsAlone = whole.startsWith('{') || whole.startsWith('[') ? false
      : between.some((text) => /^\s*(?:- )?[\p{L}][\p{L}\p{N} @_-]*:(?:\s|$)/u.test(text));
    return standsAlone ? -1 : start + end;
  }

  private readFlow(value: string, start: number, column: number, key: string): void {
    const { end, open } = flowEnd(value, 0);
    if (end >= 0) {
      const rest = value.slice(end);
      const plain = rest.slice(0, plainEnd(rest)).trim();
      if (plain === '') return;
      if (/^[\]}\s]+$/.test(plain)) {
        const at = start + end + rest.indexOf(plain);
        const place = this.place(at, at + plain.length);
        this.collector.add('bracket-unbalanced', place, { text: plain, extra: 'yes' }, [fix('remove-text', { text: plain }, [{ range: place, newText: '' }], { preferred: true, safe: true })]);
        this.mends.push({ at, remove: plain.length, insert: '' });
      } else this.needsQuotes(value, start, 'bracket', key);
      return;
    }
    const continued = this.continuedTo(start, column, (text) => flowEnd(text, 0).end);
    if (continued >= 0) {
      this.skipTo = continued;
      return;
    }
    const hash = plainEnd(value);
    // `{with: probe #2, unit: mg/L}`: the brace closes once the # is plain text.
    if (hash < value.length && flowEnd(value.replace(/(\s)#/g, '$1_'), 0).end >= 0) {
      const from = Math.max(...[': ', ', ', '{', '['].map((mark) => value.lastIndexOf(mark, hash) + (value.lastIndexOf(mark, hash) < 0 ? 1 : mark.length)));
      const token = /^[^,}\]]*/.exec(value.slice(from))![0].trimEnd();
      if (!/["']/.test(token)) {
        this.needsQuotes(token, start + from, 'hash', key);
        return;
      }
    }
    const plain = value.slice(0, plainEnd(value)).trimEnd();
    const at = start + plain.length;
    const closers = [...(open || (value[0] === '{' ? '}' : ']'))].reverse().join('');
    const openQuote = /[:,[{]\s*(["'])[^"']*$/.exec(plain)?.[1] ?? '';
    const insertion = openQuote + closers;
    this.collector.add('bracket-unbalanced', this.place(start, at), { text: closers, extra: 'no' }, [replaceWith(this.place(start, at), plain + insertion)]);
    this.insert(at, insertion);
  }

  /** A value behind a colon that was just mended. */
  private takePending(column: number): void {
    const pending = this.pendingValue;
    this.pendingValue = null;
    if (pending) this.readValue(pending.value, pending.start, column, pending.key);
  }
}

/** The block's text with slips mended, each mend a problem with a place and a fix. Its pieces lead back to the block's text. */
export function mendLines(content: MappedText, collector: Collector): MappedText {
  return new LineReader(content, collector).read();
}
