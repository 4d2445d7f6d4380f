// `evenwater find NOTE`: for each number that no formula checks or gives, the formulas that do, best first.
import { findableNumbers, findFormulas, groundOfSearch, type Candidate } from '../../experiment/findNumbers.ts';
import { jsonValue } from '../../formula/show.ts';
import type { Note } from '../../experiment/types.ts';
import { slipSentence } from '../../words/slips.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { readNoteFile } from '../noteFiles.ts';
import { lineStarts, placeOf, problemJson, problemLine } from '../places.ts';

export const find: Command = {
  name: 'find',
  usage: 'NOTE',
  summary: 'Find the formulas behind loose and mismatched numbers.',
  help: [
    'Lists each number that no formula checks, or that its formula does not give, with the formulas of this note that give it, best first.',
    'Scores compare the formulas of one number only. For a number that nothing gives, what comes near is listed with its value and the slip that would explain it.',
    'Exit 0 whatever was found, 1 when the note has no readable plan, 2 on wrong use or unreadable input.',
  ],
  options: {},
  async run({ positionals, json, output }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongUse('find needs one note.');
    const { note, text } = await readNoteFile(name);
    const starts = lineStarts(text);
    if (!note.protocol) {
      const problems = note.problems.filter((each) => each.severity === 'error').map((each) => problemJson(each, starts));
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
      for (const each of candidates) output.result(candidateLine(each));
      if (candidates.length === 0) output.result('    nothing in this note gives it');
    }
    output.progress(found.length === 0 ? 'Every number has a formula that gives it.' : `${found.length} ${found.length === 1 ? 'number' : 'numbers'} without a formula that gives it.`);
    return exit.well;
  },
};

function candidateJson(candidate: Candidate, note: Note): { formula: string; value: unknown; unit: unknown; text: string; score: number } {
  const { value, unit } = jsonValue(candidate.value, note.context);
  return { formula: candidate.formula, value, unit, text: candidate.text, score: candidate.score };
}

function candidateLine({ formula, text, score, gives, slip }: Candidate): string {
  const what = gives ? `gives ${text}` : `gives ${text} instead`;
  return `    ${score.toFixed(2).padStart(6)}  ${formula}  ${what}${slip === null ? '' : `; ${slipSentence(slip)}`}`;
}
