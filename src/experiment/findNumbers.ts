// The search for formulas, asked of a note: which numbers it holds that no formula checks, what gives them, and the mends that
// make claims of them. All of it on demand; reading a note never searches.
import { fix, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import { plannedNames } from '../claims/claimWords.ts';
import { canonicalFormula } from '../claims/find/canonical.ts';
import { findFormulas as findInText, givesMention, ownCandidate, searchGround, type SearchGround } from '../claims/find/findFormulas.ts';
import { matcherOf } from '../claims/find/matches.ts';
import { sentenceAround } from '../claims/find/sentence.ts';
import { suggestConditions } from '../claims/find/statements.ts';
import type { Candidate } from '../claims/find/types.ts';
import type { AnyMention } from '../claims/mentions.ts';
import { approximateWords } from '../words/claimWords.ts';
import { readMentions } from '../claims/readMentions.ts';
import type { Note } from './types.ts';

export type { Candidate, Slip } from '../claims/find/types.ts';

/** A number that no formula checks, or that its formula does not give. */
export interface FindableNumber {
  readonly range: SourceRange;
  readonly text: string;
  readonly problem: Problem;
}

/** Loose and mismatched numbers of the note, in the order of the text. */
export function findableNumbers(note: Note): FindableNumber[] {
  return note.problems.filter(findable).map((problem) => ({ range: problem.range, text: note.text.slice(problem.range.start, problem.range.end).replace(/\s+/g, ' '), problem }));
}

const findable = (problem: Problem): boolean => problem.code === 'loose-number' || problem.code === 'claim-mismatch';

/** What the search reads once a note. */
export function groundOfSearch(note: Note): SearchGround {
  return searchGround(note.context);
}

/**
 * Candidates for the number that stands at `range`, best first; for a number of a claim its own formula is among them, with
 * what it gives. Empty where no number stands there.
 */
export function findFormulas(range: SourceRange, note: Note, options: { readonly most?: number; readonly ground?: SearchGround } = {}): Candidate[] {
  const place = numberAt(range, note);
  if (!place) return [];
  const found = findInText(place.text, place.mention, note.context, options);
  const claim = claimAt(range, note);
  if (claim?.form !== 'equals') return found;
  const own = ownCandidate(claim.formula.text.trim(), place.mention, note.context);
  const same = own && canonicalFormula(own.formula, note.context);
  if (!own) return found;
  const others = found.filter((each) => canonicalFormula(each.formula, note.context) !== same).map((each) => otherTankOf(each, own));
  // The author's own formula leads, unless another gives the number and the words ask for it.
  const best = others[0];
  const score = best?.gives && best.score >= asked ? best.score - 0.5 : Math.max(best?.score ?? 0, 0) + 1;
  return [...others, { ...own, score: Math.round(score * 100) / 100 }].sort((a, b) => b.score - a.score);
}

/** From this score on the words clearly ask for a formula. */
const asked = 3;

/** A formula that differs from the claim's in the tank alone is named as that slip. */
function otherTankOf(candidate: Candidate, own: Candidate): Candidate {
  const tankless = (formula: string): string => formula.replace(/[\w-]+(?=\.)/g, '');
  return candidate.gives && candidate.formula !== own.formula && tankless(candidate.formula) === tankless(own.formula) ? { ...candidate, slip: 'other-tank' } : candidate;
}

/** Mends of a loose number (make it a claim) and of a mismatch (use another formula), best first. Empty for other problems. */
export function findFixes(problem: Problem, note: Note, most = 5): Fix[] {
  if (!findable(problem)) return [];
  const claim = claimAt(problem.range, note);
  const giving = findFormulas(problem.range, note, { most: most + 1 }).filter((each) => each.gives && (claim === null || each.formula !== claim.formula.text.trim())).slice(0, most);
  if (problem.code === 'claim-mismatch') {
    if (claim === null) return [];
    const text = claim.formula.text;
    const range = toDocumentRange(claim.formula, { start: text.length - text.trimStart().length, end: text.trimEnd().length });
    return giving.map(({ formula }) => fix('use-formula', { name: formula }, [{ range, newText: formula }]));
  }
  if (claim !== null) return [];
  return giving.map(({ formula, value }, index) => {
    const range = claimedRange(problem.range, value, note);
    const shown = note.text.slice(range.start, range.end);
    return fix('make-claim', { formula: `{${shown.replace(/\s+/g, ' ')} = ${formula}}` }, [
      { range: { start: range.start, end: range.start }, newText: '{' }, { range: { start: range.end, end: range.end }, newText: ` = ${formula}}` },
    ], { preferred: index === 0 });
  });
}

/** `about` goes into the claim where the number needs it to hold. */
function claimedRange(range: SourceRange, value: Candidate['value'], note: Note): SourceRange {
  const place = numberAt(range, note);
  if (!place?.mention.approximate) return range;
  const exact = { ...place.mention, approximate: false, bound: null } as AnyMention;
  const match = exact.kind === 'number' ? matcherOf(exact) : null;
  if (match && givesMention(value, exact, match, note.context)) return range;
  const words = approximateWords(note.protocol?.language ?? 'en').join('|');
  const before = new RegExp(`(?:(?<![\\p{L}])(?:${words})\\s+(?:(?:an?|the|de[mnr]|die|das)\\s+)?|[~≈]\\s*)$`, 'iu').exec(note.text.slice(Math.max(0, range.start - 30), range.start));
  return before ? { start: range.start - before[0].length, end: range.end } : range;
}

function claimAt(range: SourceRange, note: Note): ClaimSyntax | null {
  return note.syntax.claims.find((claim) => claim.range.start <= range.start && range.end <= claim.range.end) ?? null;
}

/** The number at the range, in the visible text of its paragraph. */
function numberAt(range: SourceRange, note: Note): { text: string; mention: AnyMention } | null {
  const paragraph = paragraphAround(range, note);
  const text = visible(paragraph, note);
  const local = { start: range.start - paragraph.start, end: range.end - paragraph.start };
  const mentions = readMentions(text, { language: note.protocol?.language ?? 'en', names: plannedNames(note.context) });
  const mention = mentions.find((each) => each.start < local.end && each.end > local.start);
  return mention ? { text, mention } : null;
}

/** From the blank line before to the blank line after; blocks end a paragraph too. */
function paragraphAround(range: SourceRange, note: Note): SourceRange {
  const { text, syntax } = note;
  let start = 0;
  let end = text.length;
  for (const block of syntax.blocks) {
    if (block.range.end <= range.start) start = Math.max(start, block.range.end);
    if (block.range.start >= range.end) end = Math.min(end, block.range.start);
  }
  const before = text.slice(start, range.start).search(/\n[ \t>]*\r?\n(?![\s\S]*\n[ \t>]*\r?\n)/);
  const after = text.slice(range.end, end).search(/\n[ \t>]*\r?\n/);
  return { start: before < 0 ? start : start + before + 1, end: after < 0 ? end : range.end + after };
}

/** The paragraph with the braces and formulas of claims blanked, so that places stay. */
function visible(paragraph: SourceRange, note: Note): string {
  let text = note.text.slice(paragraph.start, paragraph.end);
  for (const claim of note.syntax.claims) {
    if (claim.range.start < paragraph.start || claim.range.end > paragraph.end) continue;
    const words = toDocumentRange(claim.words, { start: 0, end: claim.words.text.length });
    for (const [from, to] of [[claim.range.start, words.start], [words.end, claim.range.end]] as const) {
      if (to > from) text = text.slice(0, from - paragraph.start) + ' '.repeat(to - from) + text.slice(to - paragraph.start);
    }
  }
  return text;
}

/**
 * Mends that make a statement of the sentence around `range`: `{The open tank hardly changed if …}`. Empty inside blocks and
 * where the sentence holds a claim already. A condition that is not true now says so in its title.
 */
export function statementFixes(range: SourceRange, note: Note): Fix[] {
  if (note.protocol === null || note.syntax.blocks.some((block) => block.range.start <= range.end && range.start <= block.range.end)) return [];
  const paragraph = paragraphAround(range, note);
  const text = note.text.slice(paragraph.start, paragraph.end);
  const local = sentenceAround(text, range.start - paragraph.start, range.end - paragraph.start);
  const raw = text.slice(local.start, local.end);
  const start = paragraph.start + local.start + (raw.length - raw.replace(/^[\s>*#+-]+/, '').length);
  const end = paragraph.start + local.start + raw.replace(/[\s.!?;:,*]+$/, '').length;
  if (end <= start || note.syntax.claims.some((claim) => claim.range.start < end && start < claim.range.end)) return [];
  const sentence = note.text.slice(start, end);
  if (/[{}]/.test(sentence)) return [];
  return suggestConditions(sentence, note.context).map(({ formula, holds }, index) => fix(holds ? 'make-statement' : 'make-statement-untrue', { condition: formula }, [
    { range: { start, end: start }, newText: '{' }, { range: { start: end, end }, newText: ` if ${formula}}` },
  ], { preferred: index === 0 && holds }));
}
