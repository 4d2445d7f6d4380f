// The sentences of a note that state findings: those of the author's prose with a claim in them, claims as plain words.
import type { Token } from 'markdown-it';
import type { Note } from '../experiment/types.ts';
import { checkClaim } from '../claims/checkClaim.ts';
import type { CheckedClaim } from '../claims/types.ts';
import { intervalSource } from '../formula/intervalSource.ts';
import { createNoteParser } from '../note/markdown.ts';
import { mappedText } from '../note/mappedText.ts';
import { scanClaim } from '../note/scanClaim.ts';
import type { IntervalSource } from '../words/intervals.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { writingWords } from '../words/writing.ts';
import { numberFigure, paragraphText } from '../writing/figures.ts';
import { writeResults } from '../writing/results.ts';
import { describeEvidence } from '../writing/computing.ts';

const open = '\uE000';

/** Text cut into sentences: a full stop between digits or after one letter ends none. */
export function splitSentences(text: string, language: Language = 'en'): string[] {
  const { abbreviations } = postWords(language);
  return text.replace(/\s+/g, ' ').trim().split(/(?<=[^\s.][.!?][”"')]?)\s+(?=[\p{Lu}“"(\d\uE000])/u)
    .reduce<string[]>((all, part) => {
      const last = all.at(-1);
      if (last !== undefined && (abbreviations.test(last) || /(?:^|\s)\p{Lu}\.$/u.test(last))) all[all.length - 1] = `${last} ${part}`;
      else if (part !== '') all.push(part);
      return all;
    }, []);
}

/** Sentences of the prose with a claim that holds, in order. */
export function findingSentences(note: Note): string[] {
  const found: string[] = [];
  let claim = 0;
  const textOf = (tokens: readonly Token[] | null): string => (tokens ?? []).map((token) => {
    if (token.type === 'evenwater_claim') {
      const checked = note.claims[claim];
      claim += 1;
      if (checked?.syntax.form === 'unfilled') return open + (checked.computed ?? '?');
      return (checked?.syntax.form === 'stated' ? '' : open) + token.content;
    }
    if (token.type === 'html_inline') return '';
    return token.children ? textOf(token.children) : token.type === 'softbreak' || token.type === 'hardbreak' ? ' ' : token.content;
  }).join('');
  for (const token of createNoteParser().parse(note.text, {})) {
    if (token.type !== 'inline') continue;
    for (const sentence of splitSentences(textOf(token.children), languageOf(note.protocol?.language))) if (sentence.includes(open)) found.push(sentence.replaceAll(open, ''));
  }
  return found;
}

export interface Answer {
  readonly text: string;
  /** False where the protocol gives none and a computed sentence stands in. */
  readonly own: boolean;
  /** Claims of the answer that do not hold, in words. */
  readonly faults: readonly string[];
  readonly quoted: readonly QuotedInterval[];
}

/** A figure with ± and what it comes from; `told` where its own sentence says so. */
export interface QuotedInterval { readonly figure: string; readonly source: IntervalSource; readonly told: boolean }

/** The figure of a claim where it carries a ±. */
function quotedIn(checked: CheckedClaim): QuotedInterval[] {
  const words = checked.state === 'unfilled' ? checked.computed ?? '' : checked.syntax.words.text.trim();
  const value = checked.evaluation?.value;
  const source = words.includes('±') && value?.type === 'number' ? intervalSource(value) : null;
  return source === null ? [] : [{ figure: words, source, told: false }];
}

/** The figures with ± in the claims of the prose. */
export function quotedInFindings(note: Note): QuotedInterval[] {
  return note.claims.flatMap(quotedIn);
}

/** What the ± of quoted figures come from: one sentence for all, or one for each source with the figures that it is about. */
export function intervalSentences(note: Note, quoted: readonly QuotedInterval[]): string[] {
  const untold = quoted.filter((each) => !each.told);
  const sources = (['instruments', 'scatter', 'both'] as const).filter((source) => untold.some((each) => each.source === source));
  const alike = quoted.every((each) => each.source === sources[0]);
  const words = postWords(languageOf(note.protocol?.language));
  const compared = (note.protocol?.tanks.length ?? 0) > 1;
  return sources.map((source) => {
    const figures = alike ? null : [...new Set(untold.filter((each) => each.source === source).map((each) => each.figure))];
    return words.plusMinus({ source, figures, compared });
  });
}

/** The answer to the protocol's question: the author's, its claims checked now, or the last computed sentence on the first quantity. */
export function answerOf(note: Note): Answer | null {
  const written = note.protocol?.answer?.value;
  const language = languageOf(note.protocol?.language);
  if (written) {
    let text = '';
    const faults: string[] = [];
    const quoted: QuotedInterval[] = [];
    for (let at = 0; at < written.length;) {
      const scanned = written[at] === '{' ? scanClaim(written, at) : null;
      if (!scanned) { text += written[at] === '\\' && written[at + 1] === '{' ? '' : written[at]; at += 1; continue; }
      const checked: CheckedClaim = checkClaim({
        form: scanned.form, range: note.protocol!.answer!.range, source: scanned.source,
        words: mappedText(written.slice(scanned.wordsStart, scanned.wordsEnd)), formula: mappedText(written.slice(scanned.formulaStart, scanned.formulaEnd)),
      }, note.context);
      const words = written.slice(scanned.wordsStart, scanned.wordsEnd).trim();
      if (checked.state !== 'holds' && checked.state !== 'unfilled') faults.push(postWords(language).answerFault(words, checked.computed));
      quoted.push(...quotedIn(checked));
      text += checked.state === 'unfilled' ? checked.computed ?? '?' : words;
      at = scanned.end;
    }
    return { text: text.replace(/\s+/g, ' ').trim(), own: true, faults, quoted };
  }
  return computedAnswer(note, language);
}

/** The last computed sentence on the first quantity that is no remark on the ± before it. */
function computedAnswer(note: Note, language: Language): Answer | null {
  const first = writeResults(note)[0];
  if (!first) return null;
  const { results: words } = writingWords(language);
  const remarks = [true, false].map(words.instrumentsAlone);
  const text = splitSentences(paragraphText(first.runs), language).findLast((each) => !remarks.includes(each));
  if (text === undefined) return null;
  const quoted = first.runs.flatMap((run): QuotedInterval[] => {
    if (run.kind !== 'value' || !run.text.includes('±') || !text.includes(run.text)) return [];
    const found = numberFigure(run.formula, note.context);
    const source = found && intervalSource(found.value);
    return source ? [{ figure: run.text, source, told: source === 'scatter' }] : [];
  });
  return { text, own: false, faults: [], quoted };
}

/** What the experiment cannot show, as the methods say it. */
export function evidenceLimits(note: Note): string[] {
  if (!note.protocol) return [];
  return describeEvidence(note.protocol).map((pieces) => pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('').replace(/\s+/g, ' ').trim()).filter((each) => each !== '');
}
