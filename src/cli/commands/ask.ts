// `evenwater ask NOTE 'FORMULA'`: one formula against one note.
import { mappedText } from '../../note/mappedText.ts';
import { contextOf } from '../../experiment/readNote.ts';
import { problemsBehind } from '../../experiment/problemsBehind.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { jsonValue, showValue } from '../../formula/show.ts';
import { cautionsBehind } from '../../words/remarks.ts';
import { exit, printJson, wrongUse, type Command } from '../command.ts';
import { readNoteFile } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine } from '../places.ts';

export const ask: Command = {
  name: 'ask',
  options: {},
  async run({ positionals, json, output, language, say }) {
    const [name, formula, ...more] = positionals;
    if (name === undefined || formula === undefined || more.length > 0) throw wrongUse('ask-needs');
    const { note, text } = await readNoteFile(name);
    // The formula is placed behind the note's text, so that a problem's place tells whether it lies in the note or in the formula.
    const behind = text.length + 1;
    const evaluation = evaluate(mappedText(formula, behind), contextOf(note));
    const problems = [
      ...(note.protocol === null ? note.problems.filter((each) => each.severity === 'error') : []),
      ...evaluation.problems.filter((each) => each.severity === 'error'),
      ...problemsBehind(formula, note),
    ];
    if (evaluation.value === null || problems.length > 0) {
      const inNote = lineStarts(text);
      const inFormula = lineStarts(formula);
      const listed = problems.map((each) => each.range.start >= behind
        ? { name: 'formula', ...problemJson({ ...each, range: { start: each.range.start - behind, end: each.range.end - behind } }, inFormula, language) }
        : { name, ...problemJson(each, inNote, language) });
      if (json) printJson(output, { problems: listed.map(({ name: _name, ...rest }) => rest) });
      else for (const each of listed) output.result(problemLine(each.name, each, output.colours));
      return exit.problems;
    }
    const value = jsonValue(evaluation.value, contextOf(note));
    if (json) { printJson(output, value); return exit.well; }
    output.result(value.text);
    const uncertain = showValue(evaluation.value, contextOf(note), { withUncertainty: true });
    if (evaluation.value.type === 'number' && uncertain !== value.text) output.progress(say('half-width', { value: uncertain }));
    for (const caution of cautionsBehind(evaluation.working, language)) output.progress(caution);
    return exit.well;
  },
};
