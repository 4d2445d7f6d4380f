// Seals: a hash over canonical times, units and first values, with a short check a cell so that a change can be named.
// Marks, remarks, corrections and alignment are not part of it; everything else is.
import { sha256Of } from '../protocol/sha256.ts';
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import type { Instant, Zone } from '../time/instant.ts';
import { formatInstant } from '../time/text.ts';
import type { Cell, ReadingsTable } from './types.ts';

/** What a seal covers, as text: heads with units, then each row's time and first values. */
interface Canonical { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] }

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** The first value of a cell without marks, with a decimal point. */
export function firstValue(cell: Cell): string {
  const text = (cell.earlier[0] ?? cell.state).text || cell.text;
  return text.replace(/^\(+|[)?]+$/gu, '').replace(/,/gu, '.');
}

function canonical(table: ReadingsTable): Canonical {
  return {
    heads: table.columns.map((column) => `${column.id}[${column.unit?.symbol ?? ''}]`),
    rows: table.rows.map((row) => {
      const first = row.firstInstant === undefined ? row.instant : row.firstInstant;
      const time = first === null ? row.timeText.split('->')[0]! : new Date(first).toISOString();
      return [time, ...row.cells.map(firstValue), ...(row.extra ?? []).map((cell) => cell.text)];
    }),
  };
}

function hashOf(text: Canonical): string {
  const lines = [text.heads.join('\t'), ...text.rows.map((row) => row.join('\t'))];
  return sha256Of(lines.join('\n'));
}

/** Twelve bits of FNV-1a as two characters: not a proof (the SHA-256 is), only a finger on the changed cell. */
function check(text: string): string {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193) >>> 0;
  const folded = (hash ^ (hash >>> 12) ^ (hash >>> 24)) & 0xfff;
  return alphabet[folded >> 6]! + alphabet[folded & 63]!;
}

const group = (texts: readonly string[]): string => texts.map(check).join('');

/** The seal line for a table: `# sealed TIME sha256:… cells:…`. */
export function sealText(table: ReadingsTable, at: Instant, zone: Zone): string {
  const text = canonical(table);
  const time = formatInstant(at, zone).replace(/:\d\d(?=[+-]\d\d:\d\d$|Z$)/u, '');
  return `# sealed ${time} sha256:${hashOf(text)} cells:${[text.heads, ...text.rows].map(group).join('.')}`;
}

/** One thing that is not as it was when the block was sealed. */
export interface SealChange {
  readonly kind: 'value' | 'time' | 'head' | 'row-added' | 'row-removed' | 'unknown';
  readonly range: SourceRange;
  readonly head: string;
  readonly time: string;
}

export type SealState = { readonly state: 'none' | 'valid' | 'unreadable' } | { readonly state: 'broken'; readonly changes: readonly SealChange[] };

/** Compares a table with its seal line, and says which cells changed. */
export function verifySeal(table: ReadingsTable): SealState {
  if (!table.sealed) return { state: 'none' };
  const match = /^#\s*sealed\s+(\S+)\s+sha256:([0-9a-fA-F]{64})(?:\s+cells:([\w.-]+))?\s*$/u.exec(table.sealed.text);
  if (!match) return { state: 'unreadable' };
  const text = canonical(table);
  if (hashOf(text) === match[2]!.toLowerCase()) return { state: 'valid' };
  const [headsThen, ...rowsThen] = (match[3] ?? '').split('.');
  const changes = match[3] === undefined ? [] : findChanges(table, text, headsThen ?? '', rowsThen.filter((row) => row !== ''));
  const unknown: SealChange = { kind: 'unknown', range: table.sealed.range, head: '', time: '' };
  return { state: 'broken', changes: changes.length > 0 ? changes.slice(0, 50) : [unknown] };
}

function findChanges(table: ReadingsTable, now: Canonical, headsThen: string, rowsThen: readonly string[]): SealChange[] {
  const found: SealChange[] = [];
  const headsNow = group(now.heads);
  if (headsNow !== headsThen) {
    table.columns.forEach((column, index) => {
      if (headsThen.length === headsNow.length && headsThen.slice(index * 2, index * 2 + 2) === check(now.heads[index]!)) return;
      if (headsThen.length !== headsNow.length && headsThen.includes(check(now.heads[index]!))) return;
      found.push({ kind: 'head', range: column.range, head: column.id, time: '' });
    });
    if (headsThen.length !== headsNow.length) {
      return found.length > 0 ? found : [{ kind: 'head', range: table.headRange ?? table.sealed!.range, head: '', time: '' }];
    }
  }
  for (const [then, at] of alignRows(rowsThen, now.rows.map(group))) {
    const row = at === null ? null : table.rows[at]!;
    if (!row) {
      found.push({ kind: 'row-removed', range: table.sealed!.range, head: '', time: '' });
    } else if (then === null) {
      found.push({ kind: 'row-added', range: row.range, head: '', time: row.timeText });
    } else {
      now.rows[at!]!.forEach((text, index) => {
        if (then.slice(index * 2, index * 2 + 2) === check(text)) return;
        const cell = row.cells[index - 1];
        if (index === 0) found.push({ kind: 'time', range: row.timeRange, head: 'time', time: row.timeText });
        else found.push({ kind: 'value', range: cell?.range ?? row.range, head: table.columns[index - 1]?.id ?? '', time: row.timeText });
      });
    }
  }
  return found;
}

/** Pairs the rows then with the rows now (by index), changed, added and removed ones only. */
function alignRows(then: readonly string[], now: readonly string[]): [string | null, number | null][] {
  let start = 0;
  while (start < then.length && start < now.length && then[start] === now[start]) start += 1;
  let thenEnd = then.length;
  let nowEnd = now.length;
  while (thenEnd > start && nowEnd > start && then[thenEnd - 1] === now[nowEnd - 1]) { thenEnd -= 1; nowEnd -= 1; }
  const pairs: [string | null, number | null][] = [];
  const gap = (oldFrom: number, oldTo: number, newFrom: number, newTo: number): void => {
    for (let step = 0; oldFrom + step < oldTo || newFrom + step < newTo; step += 1) {
      pairs.push([oldFrom + step < oldTo ? then[oldFrom + step]! : null, newFrom + step < newTo ? newFrom + step : null]);
    }
  };
  let oldAt = start;
  let newAt = start;
  for (const [oldSame, newSame] of commonRows(then, now, start, thenEnd, nowEnd)) {
    gap(oldAt, oldSame, newAt, newSame);
    oldAt = oldSame + 1;
    newAt = newSame + 1;
  }
  gap(oldAt, thenEnd, newAt, nowEnd);
  return pairs;
}

/** Longest common subsequence of equal rows between the differing ends; none where the search would be too long. */
function commonRows(then: readonly string[], now: readonly string[], start: number, thenEnd: number, nowEnd: number): [number, number][] {
  const height = thenEnd - start;
  const width = nowEnd - start;
  if (height === width || height * width > 1_000_000) return [];
  const longest = Array.from({ length: height + 1 }, () => new Uint32Array(width + 1));
  for (let i = height - 1; i >= 0; i -= 1) {
    for (let j = width - 1; j >= 0; j -= 1) {
      longest[i]![j] = then[start + i] === now[start + j] ? longest[i + 1]![j + 1]! + 1 : Math.max(longest[i + 1]![j]!, longest[i]![j + 1]!);
    }
  }
  const same: [number, number][] = [];
  for (let i = 0, j = 0; i < height && j < width;) {
    if (then[start + i] === now[start + j]) { same.push([start + i, start + j]); i += 1; j += 1; }
    else if (longest[i + 1]![j]! >= longest[i]![j + 1]!) i += 1;
    else j += 1;
  }
  return same;
}

/** The seal's problems: one for each change. */
export function sealProblems(table: ReadingsTable): Problem[] {
  const seal = verifySeal(table);
  if (seal.state === 'unreadable') return [problem('seal-unreadable', table.sealed!.range)];
  if (seal.state !== 'broken') return [];
  return seal.changes.map((change) => problem(
    'seal-broken', change.range, { kind: change.kind, head: change.head, time: change.time }, [], [{ range: table.sealed!.range, message: 'seal-here', args: {} }],
  ));
}
