// Claims that are not claims: not closed, cut in two by the text's structure, without spaces, or standing where nothing is checked.
import { fix, problem, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import { toDocumentOffset, toDocumentRange } from './mappedText.ts';
import { scanBrace, scanClaim } from './scanClaim.ts';
import type { InlineText, Structure } from './structure.ts';
import { mapLines } from './sourceLines.ts';

export function claimProblems(structure: Structure): Problem[] {
  const problems: Problem[] = [];
  structure.inlines.forEach(({ reading, mapped }, index) => {
    for (const brace of reading.plainBraces) {
      const found = plainBrace(structure, index, brace);
      if (found) problems.push(found);
    }
    for (const range of reading.touched) {
      problems.push(problem('claim-in-number', toDocumentRange(mapped, range), { words: oneLine(mapped.text.slice(range.start, range.end)) }));
    }
    for (const range of reading.imageClaims) {
      problems.push(problem('claim-in-image-text', toDocumentRange(mapped, range), { words: wordsAt(mapped.text, range.start) }));
    }
  });
  return [...problems, ...htmlClaims(structure)];
}

function wordsAt(source: string, position: number): string {
  const claim = scanClaim(source, position);
  return claim ? oneLine(source.slice(claim.wordsStart, claim.wordsEnd)) : '';
}

function oneLine(words: string): string {
  return words.replace(/\s+/g, ' ').trim();
}

/** What is wrong with a `{` that starts no claim; null where it is a plain brace. */
function plainBrace(structure: Structure, index: number, position: number): Problem | null {
  const inline = structure.inlines[index]!;
  const source = inline.mapped.text;
  const next = source[position + 1];
  if (next === '{' || next === '%' || source[position - 1] === '{') return null;
  const brace = scanBrace(source, position);
  if (brace.close >= 0) return brace.separator ? withoutWords(inline, position, brace.separator.start) : withoutSpaces(inline, position, brace.close);
  const cut = brace.stop === source.length ? cutClaim(structure, index, position) : null;
  if (cut) return cut;
  if (!brace.separator) return null;
  const { separator, stop } = brace;
  const words = oneLine(source.slice(position + 1, separator.start));
  const rest = source.slice(separator.end, stop);
  if (words === '' || words.length > 200 || /[.;!?]\s/.test(words)) return null;
  if (separator.word === 'if' && !/[<>≤≥(]|==/.test(rest)) return null;
  const mends = closeClaim(inline, separator.word, separator.end, rest);
  const start = toDocumentOffset(inline.mapped, position);
  const insertion = mends[0]?.edits[0]?.range.start;
  const end = insertion ?? toDocumentOffset(inline.mapped, separator.start, true);
  return problem('claim-not-closed', { start, end: Math.max(end, start + 1) }, { words }, mends);
}

/** Where the missing brace most likely belongs: after a stated source, after the first name or call, or at the end of the line. */
function closeClaim(inline: InlineText, word: '=' | 'if', formulaStart: number, rest: string): Fix[] {
  const openString = /^stated\s+"[^"}]*(?=\})/.exec(rest);
  const formula = word === 'if'
    ? /^[^\n]*?(?=[\s.,;:!?]*(?:\n|$))/.exec(rest)
    : /^(?:stated\s+"[^"]*"|\p{L}[\p{L}\p{N}_-]*(?:\.\p{L}[\p{L}\p{N}_-]*(?:@[\p{L}\p{N}_-]+)?)?(?:\([^(){}\n]*(?:\([^(){}\n]*\)[^(){}\n]*)*\))?(?:\s+in\s+[^\s,.;]+)?)/u.exec(rest);
  const length = openString?.[0].length ?? formula?.[0].length ?? 0;
  if (length === 0) return [];
  const at = toDocumentOffset(inline.mapped, formulaStart + length, true);
  const newText = openString ? '"' : '}';
  return [fix('insert', { text: newText }, [{ range: { start: at, end: at }, newText }], { preferred: true })];
}

/** A claim whose `}` stands in the next cell, paragraph or list item. */
function cutClaim({ text, inlines }: Structure, index: number, position: number): Problem | null {
  const first = inlines[index]!;
  let joined = first.mapped.text.slice(position);
  for (let at = index + 1; at < Math.min(inlines.length, index + 4); at++) {
    const next = inlines[at]!;
    if (!next.follows) return null;
    const offset = joined.length + 1;
    joined += `\n${next.mapped.text}`;
    if (!next.mapped.text.includes('}')) { if (next.mapped.text.includes('{')) return null; continue; }
    const claim = scanClaim(joined, 0);
    if (!claim || claim.end <= offset) return null;
    const range: SourceRange = {
      start: toDocumentOffset(first.mapped, position), end: toDocumentOffset(next.mapped, claim.end - offset, true),
    };
    const words = oneLine(joined.slice(claim.wordsStart, claim.wordsEnd));
    const between = inlines.slice(index, at + 1);
    const inRow = between.every(({ holder }) => holder === 'td' || holder === 'th') && !/[\r\n]/.test(text.slice(range.start, range.end));
    const by = inRow ? 'table-bar' : first.holder.startsWith('h') ? 'heading' : 'paragraph';
    const edits = between.slice(1).flatMap((each, step) => joinEdit(text, between[step]!, each, inRow) ?? []);
    const whole = edits.length === between.length - 1;
    return problem('claim-cut', range, { words, by }, whole ? [fix(inRow ? 'escape-bar' : 'join-lines', {}, edits, { preferred: true })] : []);
  }
  return null;
}

/** The edit that puts two stretches of text together again. */
function joinEdit(text: string, first: InlineText, second: InlineText, inRow: boolean): { range: SourceRange; newText: string } | null {
  const start = toDocumentOffset(first.mapped, first.mapped.text.length, true);
  const end = toDocumentOffset(second.mapped, 0);
  if (end < start) return null;
  const gap = text.slice(start, end);
  if (inRow) return { range: { start, end }, newText: gap.replace(/\|/g, '\\|') };
  if (first.holder === 'td' || first.holder === 'th' || /[#=]/.test(gap)) return null;
  const marks = second.level > first.level ? gap : gap.replace(/>/g, ' ');
  return { range: { start, end }, newText: marks.replace(/\s+/g, ' ') };
}

/** `{ = FORMULA}`: nothing for the reader. */
function withoutWords(inline: InlineText, position: number, separator: number): Problem | null {
  const source = inline.mapped.text;
  if (source.slice(position + 1, separator).trim() !== '' || !/^\s+=\s/.test(source.slice(separator))) return null;
  const start = toDocumentOffset(inline.mapped, position);
  const at = start + 1;
  const range = { start, end: toDocumentOffset(inline.mapped, scanBrace(source, position).close + 1, true) };
  return problem('claim-without-words', range, {}, [fix('fill-in-mark', {}, [{ range: { start: at, end: at }, newText: '?' }], { preferred: true })]);
}

/** `{2.9 %=first-loss}`: a number, an equals sign and something like a formula, but not the spaces that make a claim. */
function withoutSpaces(inline: InlineText, position: number, close: number): Problem | null {
  const inside = inline.mapped.text.slice(position + 1, close);
  const found = /^([^=]*[^=<>!\s])(\s*)=(\s*)(\p{L}[\p{L}\p{N}_-]*(?:[.(].*)?|stated\s*".*)$/su.exec(inside);
  if (!found || !/\d|^\s*\?/.test(found[1]!)) return null;
  const from = position + 1 + found[1]!.length;
  const range = toDocumentRange(inline.mapped, { start: position, end: close + 1 });
  const gap = toDocumentRange(inline.mapped, { start: from, end: from + found[2]!.length + 1 + found[3]!.length });
  return problem('claim-wants-spaces', range, { words: oneLine(inside) },
    [fix('space-equals', {}, [{ range: gap, newText: ' = ' }], { preferred: true })]);
}

/** Blocks of HTML that a page does not show as text. */
export const hiddenHtml = /^\s*<(?:!|\?|script|style|pre|textarea)/i;

function htmlClaims({ html, lines }: Structure): Problem[] {
  return html.flatMap((token) => {
    if (hiddenHtml.test(token.content)) return [];
    const problems: Problem[] = [];
    const mapped = mapLines(lines, token.content, token.map?.[0] ?? 0, false);
    for (let at = token.content.indexOf('{'); at >= 0; at = token.content.indexOf('{', at + 1)) {
      const claim = scanClaim(token.content, at);
      if (!claim) continue;
      problems.push(problem('claim-in-html', toDocumentRange(mapped, { start: at, end: claim.end }), { words: wordsAt(token.content, at) }));
      at = claim.end - 1;
    }
    return problems;
  });
}
