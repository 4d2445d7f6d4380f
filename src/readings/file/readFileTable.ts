// Reads a readings block that points to a data file: finds the file, checks its hash, and turns its lines into rows.
import type { Block } from '../../note/syntax.ts';
import { nearestName } from '../../problems/nearest.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Protocol } from '../../protocol/types.ts';
import type { Unit } from '../../quantities/types.ts';
import { convertible } from '../../quantities/units.ts';
import { readHead, type HeadReading } from '../heads.ts';
import { implausible } from '../plausible.ts';
import { replaceFix, type Reporter } from '../reporter.ts';
import type { FileContents, FileReference, ReadingColumn, ReadingsTable } from '../types.ts';
import { dataPath } from './dataPath.ts';
import { dataFileOf, type DataFile } from './dataFile.ts';
import { encodings, type Encoding } from './decode.ts';
import { readFileKeys, yamlText, type FileKeys, type LocalText } from './fileKeys.ts';
import { readFileRows, type FileColumn } from './fileRows.ts';
import { addLines, badChoice, choice } from './keyFixes.ts';
import { unitInHead, unitsUnder, type UnitLine } from './fileUnits.ts';
import { type FileRow } from './dataCells.ts';
import { delimiters, detectDelimiter, detectHeads, headNames, numberedColumns, type DelimiterName, type HeadLine } from './layout.ts';
import { proposeColumns } from './propose.ts';

/** True when the block refers to a file: its first line that is not blank starts with `from:`. */
export function fileOf(block: Block): boolean {
  return /^(?:[ \t]*(?:#[^\n]*)?\r?\n)*[ \t]*from[ \t]*:/u.test(block.content.text);
}

/** What was found out about a file and is not written in the block yet: `key: value` lines. */
export type Findings = Map<string, string>;

export function readFileTable(
  block: Block, blockIndex: number, protocol: Protocol, files: FileContents, reporter: Reporter,
): { table: ReadingsTable; wants: string[]; problems: Problem[] } {
  const keys = readFileKeys(block.content.text, reporter);
  const from = keys.texts.get('from') ?? { text: '', range: { start: 0, end: 0 } };
  const path = dataPath(from.text);
  const bytes = path === null ? undefined : files.get(path);
  const heads = readTargets(keys, protocol, reporter);
  const columns: ReadingColumn[] = heads.map((head) => ({ ...head.column, range: reporter.place(head.token) }));
  const hash = bytes ? dataFileOf(bytes).sha256 : null;
  const pinned = keys.texts.get('sha256') ?? null;
  const changed = hash !== null && pinned !== null && pinned.text.toLowerCase() !== hash;
  const file: FileReference = {
    path: path ?? from.text, range: reporter.place(from.range), sha256: pinned?.text.toLowerCase() ?? null,
    state: path === null ? 'outside' : bytes === undefined ? 'not-loaded' : bytes === null ? 'missing' : changed ? 'changed' : 'loaded',
  };
  const table: ReadingsTable = { block: blockIndex, name: block.name, columns, rows: [], headRange: keys.columnsRange ? reporter.place(keys.columnsRange) : null, file, sealed: null };
  const done = (rows: ReadingsTable['rows'] = []): { table: ReadingsTable; wants: string[]; problems: Problem[] } => (
    { table: { ...table, rows }, wants: path === null ? [] : [path], problems: reporter.problems });
  if (path === null) {
    const slashes = from.text.replace(/\\/gu, '/');
    const fixes = slashes !== from.text && dataPath(slashes) !== null ? [replaceFix(from.range, slashes, { preferred: true, safe: true })] : [];
    reporter.add({ code: 'data-file-outside', range: from.range, args: { path: from.text }, fixes });
    return done();
  }
  if (bytes === undefined) { reporter.add({ code: 'data-file-not-loaded', range: from.range, args: { path } }); return done(); }
  if (bytes === null) { reporter.add({ code: 'data-file-missing', range: from.range, args: { path } }); return done(); }
  if (changed) {
    reporter.add({ code: 'data-file-changed', range: pinned.range, args: { path }, fixes: [{ title: 'pin-file-as-it-is', args: { path }, edits: [{ range: pinned.range, newText: hash! }] }] });
  }
  const findings: Findings = new Map();
  const layout = readLayout(dataFileOf(bytes), keys, findings, from, reporter);
  if (!layout) return done();
  const { rows, headLine, unitLine } = layout;
  if (!keys.columns || keys.columns.length === 0) {
    askForColumns(keys, layout, protocol, from, block, reporter);
    return done();
  }
  const picked = pickColumns(keys, heads, headLine, reporter);
  checkUnitLine(picked.columns, unitLine, reporter);
  const read = readFileRows({ rows: rows.slice((unitLine?.at ?? headLine.at) + 1), width: headLine.at < 0 ? null : headLine.names.length, columns: picked.columns, time: picked.time, remark: picked.remark, keys, protocol, range: file.range, findings, reporter, from, block });
  if (!pinned) findings.set('sha256', hash!);
  if (findings.size > 0) {
    const lines = [...findings].map(([key, value]) => `${key}: ${value}`);
    reporter.add({
      code: 'data-file-detected', range: from.range, args: { path, found: lines.map((line) => (line.startsWith('sha256') ? `${line.slice(0, 20)}…` : line)) },
      fixes: addLines(block, lines, 'write-file-keys', { preferred: true, safe: true }),
    });
  }
  const finished = done(read);
  const implausibleOnes = implausible(finished.table, heads.map((head) => head.measure), file.range);
  return { ...finished, problems: [...finished.problems, ...implausibleOnes] };
}

/** The targets of the mapping that are columns of readings. */
function readTargets(keys: FileKeys, protocol: Protocol, reporter: Reporter): HeadReading[] {
  const taken = new Set<string>();
  return (keys.columns ?? []).filter((each) => each.to.text !== 'time' && each.to.text !== 'remark').map(({ from, to }) => {
    const head = readHead({ text: to.text, start: to.range.start, end: to.range.end }, protocol, taken);
    taken.add(head.column.id);
    for (const complaint of head.complaints) reporter.add(complaint);
    checkUnit(head, from.text, unitInHead(from.text), reporter);
    return head;
  });
}

/** A unit that the file prints must be the one in which the column is read. */
function checkUnit({ token, column }: HeadReading, from: string, printed: Unit | null, reporter: Reporter): void {
  if (!printed || !column.unit || printed.symbol === column.unit.symbol || printed.factor === column.unit.factor) return;
  const fits = convertible(printed, column.unit) && !token.text.includes('[');
  reporter.add({
    code: 'data-file-unit', range: { start: token.start, end: token.end }, args: { from, printed: printed.symbol, head: column.id, unit: column.unit.symbol },
    fixes: fits ? [{ title: 'read-column-in-unit', args: { head: column.id, unit: printed.symbol }, edits: [{ range: { start: token.end, end: token.end }, newText: `[${printed.symbol}]` }], preferred: true }] : [],
  });
}

function checkUnitLine(columns: readonly FileColumn[], unitLine: UnitLine | null, reporter: Reporter): void {
  for (const { at, head, name } of columns) if (unitInHead(name) === null) checkUnit(head, name, unitLine?.units[at] ?? null, reporter);
}

interface FileLayout { readonly rows: readonly FileRow[]; readonly headLine: HeadLine; readonly unitLine: UnitLine | null }

function readLayout(file: DataFile, keys: FileKeys, findings: Findings, from: LocalText, reporter: Reporter): FileLayout | null {
  const named = choice(keys, 'encoding', encodings, reporter);
  const encoding: Encoding = named ?? file.encoding;
  if (!named && encoding !== 'utf-8') findings.set('encoding', encoding);
  const typed = keys.texts.get('delimiter');
  const names = Object.keys(delimiters) as DelimiterName[];
  const typedName = typed && (names.find((name) => name === typed.text || delimiters[name] === typed.text) ?? null);
  if (typed && !typedName) badChoice('delimiter', typed, names, reporter);
  const delimiter = typedName ?? detectDelimiter(file.text(encoding));
  if (!delimiter) {
    reporter.add({ code: 'data-file-layout', range: from.range, args: { path: from.text } });
    return null;
  }
  if (!typedName) findings.set('delimiter', delimiter);
  const rows = file.rows(encoding, delimiters[delimiter]);
  const line = keys.texts.get('header line');
  const at = line && /^\d{1,6}$/u.test(line.text) ? Number(line.text) : null;
  if (line && at === null) badChoice('header line', line, ['1'], reporter);
  if (at === 0) return { rows, headLine: { at: -1, names: numberedColumns(rows) }, unitLine: null };
  const index = at === null ? -1 : rows.findIndex((row) => row.line === at);
  if (index >= 0) return { rows, headLine: { at: index, names: headNames(rows[index]!) }, unitLine: unitsUnder(rows, index) };
  const wanted = (keys.columns ?? []).flatMap((column) => [column.from.text, ...column.from.text.split(' + ').map((part) => part.trim())]);
  const headLine = detectHeads(rows, wanted);
  const found = headLine.at < 0 ? 0 : rows[headLine.at]!.line;
  if (found !== 1) findings.set('header line', String(found));
  return { rows, headLine, unitLine: unitsUnder(rows, headLine.at) };
}

/** Where the file's columns stand, by the mapping; a name that the file does not have is a problem. */
function pickColumns(keys: FileKeys, heads: readonly HeadReading[], headLine: HeadLine, reporter: Reporter): { columns: FileColumn[]; time: readonly number[] | null; remark: number | null } {
  const find = (name: LocalText, text: string): number => {
    const exact = headLine.names.indexOf(text);
    const at = exact >= 0 ? exact : /^column \d+$/u.test(text) ? Number(text.slice(7)) - 1 : -1;
    if (at >= 0) return at;
    const near = nearestName(text, headLine.names);
    reporter.add({
      code: 'data-file-column', range: name.range, args: { name: text, known: headLine.names.slice(0, 20) },
      fixes: near === null || name.text !== text ? [] : [replaceFix(name.range, near, { preferred: true })],
    });
    return -1;
  };
  let time: number[] | null = null;
  let remark: number | null = null;
  const columns: FileColumn[] = [];
  let index = 0;
  for (const { from, to } of keys.columns ?? []) {
    if (to.text === 'time') {
      const whole = headLine.names.includes(from.text);
      const found = (whole ? [from.text] : from.text.split(' + ').map((part) => part.trim())).map((part) => find(from, part));
      if (found.every((at) => at >= 0)) time = found;
      else time ??= [];
    } else if (to.text === 'remark') {
      const at = find(from, from.text);
      if (at >= 0) remark = at;
    } else {
      columns.push({ at: find(from, from.text), head: heads[index]!, name: from.text });
      index += 1;
    }
  }
  if (time === null) reporter.add({ code: 'data-file-no-time', range: keys.columnsRange ?? { start: 0, end: 0 }, args: { known: headLine.names.slice(0, 20) } });
  return { columns, time: time && time.length > 0 ? time : null, remark };
}

function askForColumns(keys: FileKeys, { headLine, unitLine }: FileLayout, protocol: Protocol, from: LocalText, block: Block, reporter: Reporter): void {
  const proposals = proposeColumns(headLine.names, protocol, unitLine?.units).filter((each) => each.to !== null);
  const lines = ['columns:', ...proposals.map((each) => `  ${yamlText(each.from)}: ${each.to!}`)];
  const fixes = proposals.length > 0 && keys.columns === null ? addLines(block, lines, 'write-file-columns', { preferred: true }) : [];
  reporter.add({ code: 'data-file-columns', range: from.range, args: { known: headLine.names.slice(0, 20) }, fixes });
}
