// Where the cursor stands in YAML that is being typed: under which keys, at a key or at a value, with what beside it.
// Reads lines and brackets only; the plan's own reader is for text that is finished.
import { keyColon, quoteEnd } from '../protocol/yamlScan.ts';

export interface YamlPlace {
  /** Keys from the top, list positions left out; for a value its own key included. */
  readonly path: readonly string[];
  /** `item`: on a line or in brackets where either a key or the text of a list could stand. */
  readonly at: 'key' | 'value' | 'item';
  /** Start of what is being typed, and of the whole value where `at` is a value. */
  readonly wordStart: number;
  /** Keys that stand beside the cursor, with their texts. */
  readonly beside: ReadonlyMap<string, string>;
  /** In brackets. */
  readonly flow: boolean;
  /** In the brackets of a list or behind a dash. */
  readonly inList: boolean;
  /** Column of what is being typed. */
  readonly column: number;
}

interface Level { readonly column: number; readonly key: string | null; open: boolean }
interface Frame { readonly kind: '{' | '['; readonly open: number; key: string | null; tokenStart: number; readonly entries: Map<string, string> }

const trimKey = (text: string): string => text.trim().replace(/^["']|["']$/gu, '').replace(/\s+/gu, ' ');

/** The place of an offset in a block's YAML; null inside comments and texts of several lines. */
export function yamlPlace(text: string, at: number): YamlPlace | null {
  const levels: Level[] = [];
  const cursorLine = startOfLine(text, at);
  let textBlock: number | null = null;
  for (let start = 0; start <= cursorLine;) {
    const stop = text.indexOf('\n', start);
    const end = stop < 0 ? text.length : stop;
    const line = text.slice(start, end).replace(/\r$/u, '');
    const isCursor = start === cursorLine;
    const [, indent, dashes, body] = /^([ \t]*)((?:-(?:[ \t]+|$))*)(.*)$/u.exec(line) as unknown as [string, string, string, string];
    let next = end + 1;
    if (textBlock !== null && (line.trim() === '' || indent.length > textBlock)) {
      if (isCursor && line.trim() !== '') return null;
    } else {
      textBlock = null;
      if (isCursor && /(?:^|\s)#/u.test(line.slice(0, at - start)) && !/["']/u.test(line)) return null;
      if (isCursor && at - start < indent.length && line.trim() !== '') return null;
      const column = dashes === '' && body === '' && isCursor ? at - start : indent.length + dashes.length;
      if (body !== '' || dashes !== '' || isCursor) {
        if (dashes !== '') {
          settle(levels, indent.length, true);
          for (const dash of dashes.matchAll(/-/gu)) levels.push({ column: indent.length + dash.index, key: null, open: true });
        } else settle(levels, column, false);
        const bodyStart = start + indent.length + dashes.length;
        const colon = body.startsWith('#') ? -1 : keyColon(body);
        if (isCursor && (colon < 0 || at <= bodyStart + colon)) {
          const flow = colon < 0 && /^[[{]/u.test(body) && at > bodyStart ? flowPlace(text, bodyStart, at, pathOf(levels), column) : null;
          if (flow) return flow === 'closed' ? null : flow;
          return { path: pathOf(levels), at: colon < 0 ? 'item' : 'key', wordStart: Math.min(at, bodyStart), beside: keysBeside(text, start, column), flow: false, inList: levels.at(-1)?.key === null, column };
        }
        if (colon >= 0) {
          const key = trimKey(body.slice(0, colon));
          const behind = body.slice(colon + 1);
          const value = behind.trim();
          const valueStart = bodyStart + colon + 1 + (behind.length - behind.trimStart().length);
          if (isCursor) {
            const path = [...pathOf(levels), key];
            if (/^[[{]/u.test(value) && at > valueStart) {
              const flow = flowPlace(text, valueStart, at, path, column);
              return flow === 'closed' ? null : flow;
            }
            return { path, at: 'value', wordStart: Math.min(at, valueStart), beside: keysBeside(text, start, column), flow: false, inList: false, column };
          }
          levels.push({ column, key, open: value === '' || value.startsWith('#') });
          if (/^[|>][-+0-9]{0,2}\s*(?:#.*)?$/u.test(value)) textBlock = column;
          if (/^[[{]/u.test(value)) {
            const path = pathOf(levels);
            const flow = flowPlace(text, valueStart, at, path, column);
            const cursorIndent = /^[ \t]*/u.exec(text.slice(cursorLine, at))![0].length;
            if (flow !== 'closed') {
              if (at > end && cursorIndent > column) return flow;
            } else next = Math.max(next, text.indexOf('\n', closeOf(text, valueStart)) + 1);
          }
        }
      }
    }
    if (stop < 0) break;
    start = next;
  }
  return null;
}

/** Leaves the levels that a line at this column goes out of. */
function settle(levels: Level[], column: number, isItem: boolean): void {
  while (levels.length > 0) {
    const top = levels.at(-1)!;
    const leaves = isItem ? top.column > column || (top.column === column && (top.key === null || !top.open)) : top.column >= column;
    if (!leaves && (top.open || top.key === null)) return;
    levels.pop();
  }
}

const pathOf = (levels: readonly Level[]): string[] => levels.flatMap((level) => (level.key === null ? [] : [level.key]));

/** Keys of the same map around a line, with their texts. */
function keysBeside(text: string, lineStart: number, column: number): Map<string, string> {
  const found = new Map<string, string>();
  const note = (line: string): 'on' | 'stop' => {
    const [, indent, dashes, body] = /^([ \t]*)((?:-(?:[ \t]+|$))*)(.*)$/u.exec(line.replace(/\r$/u, '')) as unknown as [string, string, string, string];
    if (body === '' || body.startsWith('#')) return dashes !== '' && indent.length < column ? 'stop' : 'on';
    const own = indent.length + dashes.length;
    if (own < column || (dashes !== '' && own > column && indent.length < column)) return 'stop';
    const colon = own === column ? keyColon(body) : -1;
    if (colon >= 0) found.set(trimKey(body.slice(0, colon)), body.slice(colon + 1).trim());
    return 'on';
  };
  const startsItem = (line: string): boolean => { const match = /^([ \t]*)((?:-(?:[ \t]+|$))+)/u.exec(line); return match !== null && match[1]!.length < column; };
  const own = text.slice(lineStart, endOfLine(text, lineStart));
  for (let end = lineStart - 1; end >= 0 && !startsItem(text.slice(end + 1, endOfLine(text, end + 1)));) {
    const start = startOfLine(text, end);
    if (note(text.slice(start, end)) === 'stop') break;
    if (startsItem(text.slice(start, end))) break;
    end = start - 1;
  }
  if (keyColon(own.trim().replace(/^(?:- )+/u, '')) >= 0) note(own);
  for (let start = endOfLine(text, lineStart) + 1; start < text.length; start = endOfLine(text, start) + 1) {
    const line = text.slice(start, endOfLine(text, start));
    if (startsItem(line) || note(line) === 'stop') break;
  }
  return found;
}

/** The start of the line that holds an offset. */
export function startOfLine(text: string, at: number): number {
  return at <= 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1;
}

function endOfLine(text: string, start: number): number {
  const stop = text.indexOf('\n', start);
  return stop < 0 ? text.length : stop;
}

/** Walks brackets from `start` up to `until`; every frame seen, and those still open. */
function walkFlow(text: string, start: number, until: number): { readonly open: Frame[]; readonly all: Frame[]; readonly closedAt: number } {
  const open: Frame[] = [];
  const all: Frame[] = [];
  const finish = (end: number): void => {
    const frame = open.at(-1);
    if (frame?.key != null) frame.entries.set(frame.key, text.slice(frame.tokenStart, end).trim());
  };
  for (let i = start; i < until; i += 1) {
    const letter = text[i]!;
    const frame = open.at(-1);
    if ((letter === '"' || letter === "'") && frame && text.slice(frame.tokenStart, i).trim() === '') {
      const close = quoteEnd(text, i);
      if (close > 0 && close <= until) i = close - 1;
    } else if (letter === '{' || letter === '[') {
      const made: Frame = { kind: letter, open: i, key: null, tokenStart: i + 1, entries: new Map() };
      open.push(made);
      all.push(made);
    } else if (letter === '}' || letter === ']') {
      finish(i);
      open.pop();
      if (open.length === 0) return { open, all, closedAt: i + 1 };
    } else if (letter === ',' && frame) {
      finish(i);
      frame.key = null;
      frame.tokenStart = i + 1;
    } else if (letter === ':' && frame?.kind === '{' && frame.key === null && /[\s{["']/u.test(text[i + 1] ?? ' ')) {
      frame.key = trimKey(text.slice(frame.tokenStart, i));
      frame.tokenStart = i + 1;
    }
  }
  return { open, all, closedAt: -1 };
}

const closeOf = (text: string, start: number): number => Math.max(start, walkFlow(text, start, text.length).closedAt);

function flowPlace(text: string, start: number, at: number, path: readonly string[], column: number): YamlPlace | 'closed' {
  const walked = walkFlow(text, start, at);
  const frame = walked.open.at(-1);
  if (!frame) return 'closed';
  const whole = walkFlow(text, start, Math.min(text.length, endOfLine(text, at)));
  const beside = new Map(whole.all.find((each) => each.open === frame.open)?.entries ?? frame.entries);
  const keys = walked.open.flatMap((each) => (each.kind === '{' && each.key !== null ? [each.key] : []));
  const typed = text.slice(frame.tokenStart, at);
  const wordStart = frame.tokenStart + (typed.length - typed.trimStart().length);
  const common = { wordStart: Math.min(at, wordStart), beside, flow: true, column };
  if (frame.kind === '[') return { ...common, path: [...path, ...keys], at: 'item', inList: true };
  return { ...common, path: [...path, ...keys], at: frame.key === null ? 'key' : 'value', inList: false };
}
