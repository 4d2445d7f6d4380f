// Reads the structure of a note: blocks, claims, prose and headings, each with its exact place in the text.
import type { Token } from 'markdown-it';
import { sortProblems } from '../problems/problem.ts';
import { toDocumentRange, type MappedText, type Piece } from './mappedText.ts';
import { blockWords, type Block, type BlockWord, type ClaimSyntax, type Heading, type NoteSyntax, type ProseRun } from './syntax.ts';
import { infoWords, markNote, type ClaimMeta, type NoteEnvironment } from './claimRule.ts';
import { createWatchingParser, plainText, readInline, type InlineReading } from './readInline.ts';
import { addPiece, fromNormal, mapCells, mapLines, sourceLines, trimmedEnd, type SourceLines } from './sourceLines.ts';
import type { Fence, InlineText } from './structure.ts';
import { structureProblems } from './structureProblems.ts';

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

  const fences: Fence[] = [];
  const inlines: InlineText[] = [];
  const headings: Heading[] = [];
  const html: Token[] = [];
  const code: Token[] = [];
  let row: MappedText[] = [];
  let cell = 0;
  let follows = false;
  tokens.forEach((token, index) => {
    if (token.type === 'fence') fences.push(readFence(token, lines));
    else if (token.type === 'html_block') html.push(token);
    else if (token.type === 'code_block') code.push(token);
    else if (token.type === 'tr_open') { row = readRow(token, lines); cell = 0; }
    else if (token.type === 'inline') {
      const holder = tokens[index - 1];
      const inCell = holder?.type === 'td_open' || holder?.type === 'th_open';
      const mapped = inCell ? row[cell++] ?? { text: '', pieces: [] } : mapInline(token, holder, lines);
      const reading = readInline(md, token.content, env);
      inlines.push({ mapped, reading, level: token.level, holder: holder?.tag ?? '', follows });
      if (holder?.type === 'heading_open') headings.push(readHeading(holder, reading, mapped, lines));
    }
    if (token.type === 'inline') follows = true;
    else if (token.type === 'fence' || token.type === 'code_block' || token.type === 'html_block' || token.type === 'hr') follows = false;
  });

  const blocks = fences.flatMap((fence) => asBlock(fence) ?? []);
  const claims = isNote ? inlines.flatMap((inline) => inline.reading.claims.map((claim) => asClaim(claim, inline.mapped))) : [];
  const problems = structureProblems({ text, lines, isNote, fences, blocks, inlines, html, code });
  const prose: ProseRun[] = inlines.flatMap((inline) => inline.reading.runs.map((run) => ({
    text: { text: run.text, pieces: composePieces(run.pieces, inline.mapped.pieces) },
  })));
  return { text, isNote, blocks, claims, prose, headings, problems: sortProblems(problems) };
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
  const closed = endLine - startLine - 1 > contentLines;
  const content = mapLines(lines, token.content, startLine + 1, false);
  return {
    info, content, closed, startLine, endLine, level: token.level,
    range: { start: opening, end: Math.max(trimmedEnd(lines, closed || contentLines === 0 ? endLine - 1 : startLine + contentLines), opening) },
    infoRange: { start: infoStart, end: infoStart + info.length },
  };
}

function asBlock(fence: Fence): Block | null {
  const [word, name] = infoWords(fence.info);
  if (!(blockWords as readonly string[]).includes(word)) return null;
  const { range, infoRange, content, closed, startLine, endLine } = fence;
  return { word: word as BlockWord, name: name === '' ? null : name, range, infoRange, content, closed, startLine, endLine };
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
  return { level: Number(token.tag.slice(1)), text: plainText(reading.tokens), line, range: { start, end: trimmedEnd(lines, endLine - 1) } };
}

/** Way back from a part of the inline text to the note. */
function composePieces(inner: readonly Piece[], outer: readonly Piece[]): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  for (const piece of inner) {
    const end = piece.document + piece.length;
    while (at > 0 && outer[at]!.offset > piece.document) at--;
    while (at < outer.length && outer[at]!.offset + outer[at]!.length <= piece.document) at++;
    for (let index = at; index < outer.length && outer[index]!.offset < end; index++) {
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
