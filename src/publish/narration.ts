// The narration sheet: question, findings and limits as numbered sentences to be spoken, numbers written as said.
import type { Note } from '../experiment/types.ts';
import { languageOf } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { answerOf, evidenceLimits, findingSentences, intervalSentences, quotedInFindings } from './sentences.ts';
import { spokenText } from './spoken.ts';

const sentence = (text: string): string => {
  const said = text.replace(/\s*\([^()]*\b(?:1[89]|20)\d\d[^()]*\)/g, '');
  const upper = said.charAt(0).toUpperCase() + said.slice(1);
  return /[.!?]$/.test(upper) ? upper : `${upper}.`;
};

/** The sheet as plain text, one numbered sentence a line. Languages that we have no words of keep their figures as printed. */
export function publishNarration(note: Note, stem: string): { text: string; faults: readonly string[] } {
  const tag = note.protocol?.language ?? 'en';
  const language = languageOf(tag);
  const spoken = tag.toLowerCase().startsWith(language);
  const answer = answerOf(note);
  const said = [
    ...(note.protocol?.question ? [note.protocol.question.value] : []), ...findingSentences(note),
    ...(answer ? [answer.text] : []), ...intervalSentences(note, [...quotedInFindings(note), ...answer?.quoted ?? []]), ...evidenceLimits(note),
  ].map(sentence).map((each) => (spoken ? spokenText(each, language) : each)).map((each) => each.charAt(0).toUpperCase() + each.slice(1));
  const title = note.protocol?.title?.value ?? note.syntax.headings.find((heading) => heading.level === 1)?.text ?? stem;
  const remark = spoken ? '' : `${postWords(language).figuresAsPrinted}\n\n`;
  return { text: `${title}\n\n${remark}${said.map((each, index) => `${index + 1}. ${each}`).join('\n')}\n`, faults: answer?.faults ?? [] };
}
