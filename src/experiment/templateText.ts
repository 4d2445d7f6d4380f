// Instructions of the template that the author has not written over yet.
import type { NoteSyntax } from '../note/syntax.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { instructionsToAuthor } from '../words/newNote.ts';

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** An instruction with any white space between its words, as an editor wraps lines; those that follow one another are one find. */
const oneInstruction = `(?:${instructionsToAuthor.map((each) => each.split(' ').map(escaped).join('\\s+')).join('|')})`;
const instructions = new RegExp(`${oneInstruction}(?:\\s+${oneInstruction})*`, 'gu');

/** How far a note is along; its instructions are no fault before the author could have answered them. */
export interface NoteProgress { readonly read: boolean; readonly planSealed: boolean }

/**
 * One find at every instruction in the prose, the headings and the plan. It is information while nothing has been read,
 * a warning afterwards; in a sealed plan a warning at once, because there it can no longer be written over.
 */
export function findTemplateText(syntax: NoteSyntax, { read, planSealed }: NoteProgress): Problem[] {
  const plan = syntax.blocks.filter((block) => block.word === 'protocol').map((block) => block.content);
  return [
    ...syntax.prose.flatMap((run) => instructionsIn(run.text, read)),
    ...plan.flatMap((content) => instructionsIn(content, read || planSealed)),
  ];
}

function instructionsIn(place: MappedText, late: boolean): Problem[] {
  return [...place.text.matchAll(instructions)].map((found) => {
    const range = toDocumentRange(place, { start: found.index, end: found.index + found[0].length });
    const left = problem('template-text', range, { text: firstSentence(found[0].replace(/\s+/gu, ' ')) });
    return late ? left : { ...left, severity: 'information' };
  });
}

const firstSentence = (text: string): string => /^.*?[.?](?=\s|$)/u.exec(text)?.[0] ?? text;
