// Instructions of the template that the author has not written over yet.
import type { NoteSyntax } from '../note/syntax.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { instructionsToAuthor } from '../words/newNoteProse.ts';

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** An instruction with any white space between its words, as an editor wraps lines; those that follow one another are one find. */
const oneInstruction = `(?:${instructionsToAuthor.map((each) => each.split(' ').map(escaped).join('\\s+')).join('|')})`;
const instructions = new RegExp(`${oneInstruction}(?:\\s+${oneInstruction})*`, 'gu');

/** One warning at every instruction in the prose, the headings and the plan. */
export function findTemplateText(syntax: NoteSyntax): Problem[] {
  const places: readonly MappedText[] = [...syntax.prose.map((run) => run.text), ...syntax.blocks.filter((block) => block.word === 'protocol').map((block) => block.content)];
  return places.flatMap((place) => [...place.text.matchAll(instructions)].map((found) => problem(
    'template-text', toDocumentRange(place, { start: found.index, end: found.index + found[0].length }), { text: firstSentence(found[0].replace(/\s+/gu, ' ')) },
  )));
}

const firstSentence = (text: string): string => /^.*?[.?](?=\s|$)/u.exec(text)?.[0] ?? text;
