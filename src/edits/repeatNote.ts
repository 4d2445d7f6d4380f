// Writes the note of a repeat: the same plan with new dates, the same formulas and figures, an empty table, and a link to the
// first run with its plan's digest, so that the repeat can say what it changed.
import { noFiles, readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { repeatsText } from '../protocol/planSeal.ts';
import { quoted } from '../protocol/collector.ts';
import { addDays, daysFromCivil, wallFromNumber, wallNumber } from '../time/civil.ts';
import { readDate, type CalendarDate } from '../time/text.ts';
import { wallTimeOf } from '../time/zone.ts';
import { readingsBlockText } from './insertReadingsTable.ts';
import { applyEdits, type Message } from './edit.ts';
import { languageOf } from '../words/languages.ts';
import { newNoteWords } from '../words/newNote.ts';

export type RepeatResult = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: Message };

/**
 * The note of a repeat, in the first note's language, that starts on `date` (`2026-05-02`), at the first run's clock times.
 * @param name how the repeat names the first note: its file, relative to the repeat
 */
export function repeatNote(note: Note, name: string, date: string): RepeatResult {
  const { protocol } = note;
  if (!protocol) return { ok: false, message: { code: 'no-protocol', args: {} } };
  if (!protocol.schedule) return { ok: false, message: { code: 'no-slots', args: {} } };
  const to = readDate(date);
  if (!to) return { ok: false, message: { code: 'answer-unreadable', args: { text: date, example: '2026-05-02' } } };
  const first = wallTimeOf(protocol.schedule.start, protocol.zone);
  const days = daysFromCivil(to.year, to.month, to.day) - daysFromCivil(first.year, first.month, first.day);
  const words = newNoteWords(languageOf(protocol.language));
  const plan = movePlan(note, days);
  const link = `repeats: ${plain(repeatsText(protocol, name))}`;
  const title = /^#[ \t]+(.+)$/m.exec(note.text)?.[1]?.trim() ?? protocol.title?.value ?? protocol.question?.value ?? words.untitledRepeat;
  const blocks = (words: readonly string[]): string[] => note.syntax.blocks.filter((block) => words.includes(block.word) && block.closed)
    .flatMap((block) => ['```' + block.word + (block.name ? ` ${block.name}` : ''), ...lines(moveDates(block.content.text, days)), '```', '']);
  const before = [
    `# ${words.repeatTitle(title)}`, '',
    words.repeatLead(name.split('/').at(-1)!), '',
    '```protocol', ...lines(plan), link, '```', '',
  ];
  const read = readNote(`${before.join('\n')}\n`, noFiles, undefined, { fileIsNote: true });
  const table = read.protocol && read.protocol.measure.length > 0 ? readingsBlockText(read.protocol).trimEnd() : '';
  const has = (word: string): boolean => note.syntax.blocks.some((block) => block.word === word);
  const text = [
    ...before, `## ${words.headings.read}`, '', ...(table === '' ? [] : [table, '']), ...blocks(['values']),
    `## ${words.headings.happened}`, '', words.whatHappenedAgain, '',
    ...blocks(['figure', 'summary']), ...(has('limits') ? blocks(['limits']) : []), '```results', '```', '',
    `## ${words.headings.done}`, '', '```methods', '```', '',
  ];
  return { ok: true, text: `${text.join('\n').trimEnd()}\n` };
}

const lines = (text: string): string[] => (text.trimEnd() === '' ? [] : text.trimEnd().split(/\r?\n/));
const plain = (text: string): string => (/^[\w./]/.test(text) && !/: | #/.test(text) ? text : quoted(text));

/** Every date of a text, `days` later. */
function moveDates(text: string, days: number): string {
  return text.replace(/\d{4}-\d\d-\d\d/g, (written) => {
    const date = readDate(written);
    return date ? dateText(later(date, days)) : written;
  });
}

function later(date: CalendarDate, days: number): CalendarDate {
  return wallFromNumber(wallNumber(addDays({ ...date, hour: 0, minute: 0, second: 0 }, days)));
}

const dateText = ({ year, month, day }: CalendarDate): string => `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/** The plan's text without what belongs to the first run only, its schedule, events and phases moved. */
function movePlan(note: Note, days: number): string {
  const { protocol, text } = note;
  if (!protocol) return '';
  const own: { range: SourceRange; key: string }[] = [
    ...protocol.equalise.flatMap((step) => (step.done ? [{ range: step.done.range, key: 'done' }] : [])),
    ...protocol.stopRules.flatMap((rule) => (rule.outcome ? [{ range: rule.outcome.range, key: 'outcome' }] : [])),
    ...(protocol.sealed ? [{ range: protocol.sealed.range, key: 'sealed' }] : []),
    ...(protocol.repeats ? [{ range: protocol.repeats.range, key: 'repeats' }] : []),
  ];
  const edits = own.flatMap(({ range, key }) => { const found = wholeKey(text, range, key); return found ? [{ range: found, newText: '' }] : []; });
  const { start, end } = protocol.range;
  const cut = applyEdits(text.slice(start, end), edits.map((edit) => ({ ...edit, range: { start: edit.range.start - start, end: edit.range.end - start } })));
  // Only these hold dates of the run; calibrations and the age of a tank are what they are.
  return cut.replace(/^(?:schedule|events|phases):[^\n]*(?:\n(?:[ \t][^\n]*|- [^\n]*|[ \t]*))*/gm, (section) => moveDates(section, days));
}

/** From the key to the end of its value: a whole line, or with its comma inside braces. Null where neither is the case. */
function wholeKey(text: string, value: SourceRange, key: string): SourceRange | null {
  const lineStart = text.lastIndexOf('\n', value.start - 1) + 1;
  const before = text.slice(lineStart, value.start);
  if (new RegExp(`^[ \\t]*${key}:[ \\t]*["']?$`).test(before)) {
    const next = text.indexOf('\n', value.end);
    return { start: lineStart, end: next < 0 ? text.length : next + 1 };
  }
  const inside = new RegExp(`,[ \\t]*${key}:[ \\t]*["']?$`).exec(before);
  return inside ? { start: lineStart + inside.index, end: value.end + (/^["']/.test(text.slice(value.end)) ? 1 : 0) } : null;
}
