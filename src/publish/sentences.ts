// The sentences of a note that state findings: those of the author's prose with a claim in them, claims as plain words.
import type { Token } from 'markdown-it';
import type { Note } from '../experiment/types.ts';
import { checkClaim } from '../claims/checkClaim.ts';
import type { CheckedClaim } from '../claims/types.ts';
import { createNoteParser } from '../note/markdown.ts';
import { mappedText } from '../note/mappedText.ts';
import { scanClaim } from '../note/scanClaim.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { paragraphText } from '../writing/figures.ts';
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
}

/** The answer to the protocol's question: the author's, its claims checked now, or the last computed sentence on the first quantity. */
export function answerOf(note: Note): Answer | null {
  const written = note.protocol?.answer?.value;
  const language = languageOf(note.protocol?.language);
  if (written) {
    let text = '';
    const faults: string[] = [];
    for (let at = 0; at < written.length;) {
      const scanned = written[at] === '{' ? scanClaim(written, at) : null;
      if (!scanned) { text += written[at] === '\\' && written[at + 1] === '{' ? '' : written[at]; at += 1; continue; }
      const checked: CheckedClaim = checkClaim({
        form: scanned.form, range: note.protocol!.answer!.range, source: scanned.source,
        words: mappedText(written.slice(scanned.wordsStart, scanned.wordsEnd)), formula: mappedText(written.slice(scanned.formulaStart, scanned.formulaEnd)),
      }, note.context);
      const words = written.slice(scanned.wordsStart, scanned.wordsEnd).trim();
      if (checked.state !== 'holds' && checked.state !== 'unfilled') faults.push(postWords(language).answerFault(words, checked.computed));
      text += checked.state === 'unfilled' ? checked.computed ?? '?' : words;
      at = scanned.end;
    }
    return { text: text.replace(/\s+/g, ' ').trim(), own: true, faults };
  }
  const first = writeResults(note)[0];
  const sentence = first && splitSentences(paragraphText(first.runs), language).at(-1);
  return sentence ? { text: sentence, own: false, faults: [] } : null;
}

/** What the experiment cannot show, as the methods say it. */
export function evidenceLimits(note: Note): string[] {
  if (!note.protocol) return [];
  return describeEvidence(note.protocol).map((pieces) => pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('').replace(/\s+/g, ' ').trim()).filter((each) => each !== '');
}
