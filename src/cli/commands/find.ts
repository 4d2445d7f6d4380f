// `evenwater find NOTE`: for each number that no formula checks or gives, the formulas that do, best first.
import { findableNumbers, findFormulas, groundOfSearch, type Candidate } from '../../experiment/findNumbers.ts';
import { jsonValue } from '../../formula/show.ts';
import type { Note } from '../../experiment/types.ts';
import { slipSentence } from '../../words/slips.ts';
import { exit, printJson, wrongUse, type Command, type Invocation } from '../command.ts';
import { readNoteFile } from '../noteFiles.ts';
import { lineStarts, placeOf, problemJson, problemLine } from '../places.ts';

export const find: Command = {
  name: 'find',
  options: {},
  async run({ positionals, json, output, language, say }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw wrongUse('find-needs');
    const { note, text } = await readNoteFile(name);
    const starts = lineStarts(text);
    if (!note.protocol) {
      const problems = note.problems.filter((each) => each.severity === 'error').map((each) => problemJson(each, starts, language));
      if (json) printJson(output, { problems }); else for (const each of problems) output.result(problemLine(name, each, output.colours));
      return exit.problems;
    }
    const ground = groundOfSearch(note);
    const found = findableNumbers(note).map(({ range, text: shown }) => ({ ...placeOf(range, starts), text: shown, candidates: findFormulas(range, note, { ground }) }));
    if (json) {
      printJson(output, found.map(({ line, column, text: shown, candidates }) => ({ line, column, text: shown, candidates: candidates.map((each) => candidateJson(each, note)) })));
      return exit.well;
    }
    for (const { line, column, text: shown, candidates } of found) {
      output.result(`${name}:${line}:${column}: ${shown}`);
      for (const each of candidates) output.result(candidateLine(each, { language, say }));
      if (candidates.length === 0) output.result(`    ${say('nothing-gives-it')}`);
    }
    output.progress(found.length === 0 ? say('all-have-formulas') : say('without-formula', { count: found.length }));
    return exit.well;
  },
};

function candidateJson(candidate: Candidate, note: Note): { formula: string; value: unknown; unit: unknown; text: string; score: number } {
  const { value, unit } = jsonValue(candidate.value, note.context);
  return { formula: candidate.formula, value, unit, text: candidate.text, score: candidate.score };
}

function candidateLine({ formula, text, score, gives, slip }: Candidate, { language, say }: Pick<Invocation, 'language' | 'say'>): string {
  const what = say(gives ? 'gives' : 'gives-instead', { value: text });
  return `    ${score.toFixed(2).padStart(6)}  ${formula}  ${what}${slip === null ? '' : `; ${slipSentence(slip, language)}`}`;
}
