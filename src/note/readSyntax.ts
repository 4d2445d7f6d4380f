// Reads the structure of a note: blocks, claims, prose and headings, each with its exact place in the text.
import type { Token } from 'markdown-it';
import { sortProblems } from '../problems/problem.ts';
import { sliceMapped, toDocumentRange, type MappedText, type Piece } from './mappedText.ts';
import { blockWords, type Block, type BlockWord, type ClaimSyntax, type Heading, type NoteSyntax, type ProseRun } from './syntax.ts';
import { infoWords, markNote, type ClaimMeta, type NoteEnvironment } from './claimRule.ts';
import { createWatchingParser, readInline, type InlineReading } from './readInline.ts';
import { addPiece, fromNormal, mapCells, mapLines, sourceLines, trimmedEnd, type SourceLines } from './sourceLines.ts';
import type { Fence, InlineText } from './structure.ts';
import { structureProblems, contentEnd } from './structureProblems.ts';
import { hiddenHtml } from './claimProblems.ts';

export interface SyntaxOptions {
  /** True for files whose name says that they are notes (`*.tank.md`): then a missing or misspelt `protocol` block is a problem. */
  readonly fileIsNote?: boolean;
}

/**
 * A quick look whether the text may hold a `protocol` block: a line on which the word stands after a fence. Plain Markdown costs one search.
 */
export function mayBeNote(text: string): boolean {
  for (let at = text.indexOf('protocol'); at >= 0; at = text.indexOf('protocol', at + 8)) {
    let before = at - 1;
    while (text[before] === ' ' || text[before] === '\t') before--;
    const mark = text[before];
    if ((mark === '`' || mark === '~') && text[before - 1] === mark && text[before - 2] === mark) return true;
  }
  return false;
}

/**
 * Reads the structure of a note. A text without a `protocol` block gives no blocks and no claims; with `fileIsNote` it gives the problem
 * that the block is missing. Never throws.
 */
export function readSyntax(text: string, previous?: NoteSyntax, options: SyntaxOptions = {}): NoteSyntax {
  const fileIsNote = options.fileIsNote ?? false;
  if (previous !== undefined && previous.text === text && (previous.isNote || !fileIsNote)) return previous;
  const nothing: NoteSyntax = { text, isNote: false, blocks: [], claims: [], prose: [], headings: [], problems: [] };
  if (!fileIsNote && !mayBeNote(text)) return nothing;

  const lines = sourceLines(text);
  const md = createWatchingParser();
  const env: NoteEnvironment = {};
  const tokens: Token[] = [];
  md.block.parse(lines.normal, md, env, tokens);
  const isNote = markNote(tokens, env);
  if (!isNote && !fileIsNote) return nothing;

  const cache = openCache(previous, env);
  const fences: Fence[] = [];
  const inlines: InlineText[] = [];
  const headings: Heading[] = [];
  const html: Token[] = [];
  const code: Token[] = [];
  let row: MappedText[] = [];
  let cell = 0;
  let columns: string[] = [];
  let rowHead = '';
  let follows = false;
  tokens.forEach((token, index) => {
    if (token.type === 'fence') fences.push(readFence(token, lines));
    else if (token.type === 'html_block') html.push(token);
    else if (token.type === 'code_block') code.push(token);
    else if (token.type === 'thead_open') columns = [];
    else if (token.type === 'tr_open') { row = readRow(token, lines); cell = 0; rowHead = ''; }
    else if (token.type === 'inline') {
      const holder = tokens[index - 1];
      const inCell = holder?.type === 'td_open' || holder?.type === 'th_open';
      const mapped = inCell ? row[cell++] ?? { text: '', pieces: [] } : mapInline(token, holder, lines);
      const reading = cache.read(token.content, () => readInline(md, token.content, env));
      const heads = holder?.type === 'td_open' ? { heads: [columns[cell - 1] ?? '', rowHead] } : {};
      if (holder?.type === 'th_open') columns.push(reading.words);
      if (holder?.type === 'td_open' && cell === 1) rowHead = reading.words;
      inlines.push({ mapped, reading, level: token.level, holder: holder?.tag ?? '', follows, ...heads });
      if (holder?.type === 'heading_open') headings.push(readHeading(holder, reading, mapped, lines));
    }
    if (token.type === 'tr_close') for (const mapped of row.slice(cell)) inlines.push(cellLeftOver(mapped, token.level + 2));
    if (token.type === 'inline') follows = true;
    else if (token.type === 'fence' || token.type === 'code_block' || token.type === 'html_block' || token.type === 'hr') follows = false;
  });

  const blocks: Block[] = [];
  for (const fence of fences) {
    const block = asBlock(fence);
    if (block) blocks.push(block);
  }
  const claims: ClaimSyntax[] = [];
  const prose: ProseRun[] = [];
  for (const { mapped, reading, heads } of inlines) {
    for (const claim of isNote ? reading.claims : []) claims.push(asClaim(claim, mapped));
    for (const run of reading.runs) prose.push({ text: { text: run.text, pieces: composePieces(run.pieces, mapped.pieces) }, ...(heads ? { heads } : {}) });
  }
  prose.push(...html.flatMap((token) => htmlProse(token, lines)));
  const problems = structureProblems({ text, lines, isNote, fences, blocks, inlines, html, code });
  return { text, isNote, blocks, claims, prose, headings, problems: sortProblems(problems), cache: cache.kept };
}

/** Readings of inline text by its words. They hold as long as the link references and the display maths of the note are the same. */
interface SyntaxCache { readonly key: string; readonly readings: Map<string, InlineReading> }

function openCache(previous: NoteSyntax | undefined, env: NoteEnvironment): { kept: SyntaxCache; read(source: string, parse: () => InlineReading): InlineReading } {
  const key = JSON.stringify([env.evenwater?.isNote, env.references ?? null, [...env.evenwater?.maths ?? []]]);
  const old = previous?.cache as SyntaxCache | undefined;
  const earlier = old?.key === key ? old.readings : undefined;
  const readings = new Map<string, InlineReading>();
  return {
    kept: { key, readings },
    read(source, parse) {
      let reading = readings.get(source) ?? earlier?.get(source);
      reading ??= parse();
      readings.set(source, reading);
      return reading;
    },
  };
}

/** What a reader sees of a block of HTML: its text without tags; nothing of comments, styles and the like. */
function htmlProse(token: Token, lines: SourceLines): ProseRun[] {
  if (hiddenHtml.test(token.content)) return [];
  const mapped = mapLines(lines, token.content, token.map?.[0] ?? 0, false);
  return [...token.content.matchAll(/(?<=^|[>}])[^<>{}]+(?=[<{]|$)/g)].filter(([text]) => text.trim() !== '').map((match) => {
    const pieces = composePieces([{ offset: 0, document: match.index, length: match[0].length }], mapped.pieces);
    return { text: { text: match[0], pieces } };
  });
}

function readFence(token: Token, lines: SourceLines): Fence {
  const [startLine, endLine] = token.map ?? [0, 0];
  const lineStart = lines.starts[startLine] ?? 0;
  const lineEnd = lines.ends[startLine] ?? lines.text.length;
  const opening = Math.max(lineStart, lines.text.indexOf(token.markup, lineStart));
  const info = token.info.trim();
  let infoStart = Math.min(opening + token.markup.length, lineEnd);
  while (infoStart < lineEnd && info !== '' && /\s/.test(lines.text[infoStart]!)) infoStart++;
  const lineBreaks = token.content.split('\n').length - 1;
  const contentLines = lineBreaks + (token.content === '' || token.content.endsWith('\n') ? 0 : 1);
  // A last line without line break may be an empty line of the content, so the marks are looked for too.
  const closed = endLine - startLine - 1 > contentLines
    && lines.text.endsWith(token.markup, trimmedEnd(lines, endLine - 1));
  const content = mapLines(lines, token.content, startLine + 1, false);
  const nextStart = lines.starts[startLine + 1] ?? lines.text.length;
  const before = content.text === '' ? '' : lines.text.slice(nextStart, content.pieces[0]?.document ?? nextStart);
  return {
    info, content, closed, linePrefix: /^[ \t>]*$/.test(before) ? before : '', lineBreak: lines.text.slice(lineEnd, nextStart) || '\n', startLine, endLine, level: token.level,
    range: { start: opening, end: Math.max(trimmedEnd(lines, closed || contentLines === 0 ? endLine - 1 : startLine + contentLines), opening) },
    infoRange: { start: infoStart, end: infoStart + info.length },
  };
}

function asBlock(fence: Fence): Block | null {
  const [word, name] = infoWords(fence.info);
  if (!(blockWords as readonly string[]).includes(word)) return null;
  const { range, infoRange, closed, startLine, endLine, linePrefix, lineBreak } = fence;
  const end = contentEnd(fence.content.text, closed);
  const content = end === null ? fence.content : sliceMapped(fence.content, 0, fence.content.text.lastIndexOf('\n', end) + 1);
  return { word: word as BlockWord, name: name === '' ? null : name, range, infoRange, content, linePrefix, lineBreak, closed, startLine, endLine };
}

/** A cell beyond the table's columns: Markdown drops it, but a claim may have been cut there. */
function cellLeftOver(mapped: MappedText, level: number): InlineText {
  return { mapped, level, holder: 'td', follows: true, reading: { words: '', claims: [], imageClaims: [], runs: [], touched: [], plainBraces: [] } };
}

function readRow(token: Token, lines: SourceLines): MappedText[] {
  const { start, end } = token.meta as unknown as { start: number; end: number };
  const row = lines.normal.slice(start, end);
  const lead = row.length - row.trimStart().length;
  return mapCells(row.trim(), fromNormal(lines, token.map?.[0] ?? 0, start + lead));
}

/** Maps the text of a paragraph or heading. */
function mapInline(token: Token, holder: Token | undefined, lines: SourceLines): MappedText {
  const line = token.map?.[0] ?? 0;
  if (holder?.type !== 'heading_open' || !holder.markup.startsWith('#')) return mapLines(lines, token.content, line, true);
  let start = lines.text.indexOf('#', lines.starts[line]) + holder.markup.length;
  while (/[ \t\v\f]/.test(lines.text[start] ?? '')) start++;
  return { text: token.content, pieces: [{ offset: 0, document: start, length: token.content.length }] };
}

function readHeading(token: Token, reading: InlineReading, mapped: MappedText, lines: SourceLines): Heading {
  const [line, endLine] = token.map ?? [0, 1];
  const marked = token.markup.startsWith('#');
  const start = marked ? lines.text.indexOf('#', lines.starts[line]) : mapped.pieces[0]?.document ?? lines.starts[line] ?? 0;
  return { level: Number(token.tag.slice(1)), text: reading.words, line, range: { start, end: trimmedEnd(lines, endLine - 1) } };
}

/** Way back from a part of the inline text to the note. */
function composePieces(inner: readonly Piece[], outer: readonly Piece[]): Piece[] {
  const [only] = outer;
  if (only && outer.length === 1) {
    return inner.map(({ offset, document, length }) => ({ offset, document: only.document + document - only.offset, length }));
  }
  const pieces: Piece[] = [];
  for (const piece of inner) {
    const end = piece.document + piece.length;
    let low = 0;
    let high = outer.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (outer[middle]!.offset <= piece.document) low = middle; else high = middle - 1;
    }
    for (let index = low; index < outer.length && outer[index]!.offset < end; index++) {
      const from = Math.max(piece.document, outer[index]!.offset);
      const to = Math.min(end, outer[index]!.offset + outer[index]!.length);
      const document = outer[index]!.document + from - outer[index]!.offset;
      if (to > from) addPiece(pieces, { offset: piece.offset + from - piece.document, document, length: to - from });
    }
  }
  return pieces;
}

function partOf(mapped: MappedText, start: number, end: number): MappedText {
  const pieces = composePieces([{ offset: 0, document: start, length: end - start }], mapped.pieces);
  if (pieces.length === 0) pieces.push({ offset: 0, document: toDocumentRange(mapped, { start, end: start }).start, length: 0 });
  return { text: mapped.text.slice(start, end), pieces };
}

function asClaim(claim: ClaimMeta, mapped: MappedText): ClaimSyntax {
  return {
    form: claim.form, source: claim.source,
    range: toDocumentRange(mapped, { start: claim.start, end: claim.end }),
    words: partOf(mapped, claim.wordsStart, claim.wordsEnd),
    formula: partOf(mapped, claim.formulaStart, claim.formulaEnd),
  };
}
