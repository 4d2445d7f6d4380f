// A template and the measures of the library in the language of the note: the author's texts and the names turn, the keys,
// functions, units and sources of the note's language do not.
import type { NewNoteWords } from '../words/en/newNote.ts';
import type { GapLine, TankKeys, Template } from './newNoteTemplates.ts';
import type { LibraryMeasure } from './planLibrary.ts';

type Words = Pick<NewNoteWords, 'text' | 'name'>;

/** The template with its texts and names in these words. */
export function templateIn(words: Words, template: Template): Template {
  const { text } = words;
  const { treated, control, plan, values, prose } = template;
  const tank = ({ id, label, keys }: TankKeys): TankKeys => ({ id: words.name(id), label: text(label), keys: keys.map(([key, value]) => [key, text(value)]) });
  const each = (gaps: readonly GapLine[], turn: (line: string) => string): GapLine[] => gaps.map(({ needs, lines }) => ({ needs, lines: lines.map(turn) }));
  return {
    ...template,
    question: text(template.question), questionAbout: text(template.questionAbout), hypothesis: template.hypothesis && text(template.hypothesis),
    treatment: text(template.treatment), withoutTreatment: text(template.withoutTreatment),
    treated: tank(treated), control: control && tank(control),
    plan: each(plan, (line) => planLineIn(words, line)), values: each(values, (line) => namesIn(words, line)), prose: each(prose, text),
  };
}

/** The measure with its instrument, and the words of its scale, in these words. Its quantity is of the closed list. */
export function measureIn(words: Words, measure: LibraryMeasure): LibraryMeasure {
  const rest = measure.rest
    .replace(/(?<=\bwith: )[^,]+/, words.text)
    .replace(/(?<=\bscale: \[)[^\]]+/, (scale) => namesIn(words, scale));
  return { ...measure, rest };
}

/** What the treated tank is called where the treatment is not the template's. */
export const ownTreated = (words: Words): TankKeys => ({ id: words.name('treated'), label: words.text('treated tank'), keys: [] });

/** A line of the plan: the free text of its last key, or names and formulas. */
function planLineIn(words: Words, line: string): string {
  const free = /^(.*\b(?:step|why|for|do|what): )([^}]+)(.*)$/.exec(line);
  return free ? `${namesIn(words, free[1]!)}${words.text(free[2]!)}${free[3]!}` : namesIn(words, line);
}

function namesIn(words: Words, line: string): string {
  return line.replace(/[a-z][\w-]*/gi, (name) => {
    const bare = name.replace(/(?:TREATED|CONTROL)$/, '');
    return `${words.name(bare)}${name.slice(bare.length)}`;
  });
}
