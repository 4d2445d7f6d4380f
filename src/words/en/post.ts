// English words of a published page: head and foot, the working of each number, the data section, card and narration.
import type { IntervalSource } from '../intervals.ts';
import { dateWords, listedText } from './grammar.ts';

export const postWords = {
  date: dateWords,
  quotes: ['“', '”'] as readonly [string, string],
  skip: 'Skip to the text',
  published: (time: string): string => `published ${time}`,
  foot: (version: string): string => `Made with Evenwater ${version}. Each marked number and statement was checked against the readings when this page was made; a mark says what was checked, not that the cause is proved.`,
  references: 'References',
  image: (words: string): string => `${words} (image)`,
  imageAt: (source: string): string => `image ${source}`,

  working: {
    /** `source` is HTML that is ready. */
    statedAfter: (source: string): string => `Stated by the author, after ${source}.`,
    statedAlone: 'Stated by the author; no source is given.',
    standsBecause: (condition: string): string => `Stands because it is true that ${condition}`,
    about: 'the text says “about”',
    /** `formula` is HTML that is ready. */
    whichIs: (formula: string): string => `, which is ${formula},`,
    fromReadings: (count: number): string => ` (from ${count} readings)`,
    back: (number: number): string => `back to number ${number} in the text`,
    summary: (count: number, stated: boolean): string => (stated ? (count === 1 ? 'Where this comes from' : 'Where these come from') : count === 1 ? 'How this was checked' : `How these ${count} were checked`),
    meanings: {
      computed: 'the number in the text equals the value of the formula, to the digits shown',
      condition: 'the condition is true of the readings; that does not prove a cause',
      stated: 'taken from the source named; not computed from these readings',
      unchecked: 'nothing was checked',
    },
    heading: 'How each number was computed',
  },

  data: {
    heading: 'Data and plan',
    time: 'time', remark: 'remark',
    block: (number: number): string => `block ${number}`,
    caption: (args: { name: string | null; file: { readonly path: string; readonly hash: string | null } | null; shown: { readonly first: number; readonly of: number } | null }): string =>
      `Readings as recorded${args.name ? `, ${args.name}` : ''}.${args.file ? ` From ${args.file.path}${args.file.hash === null ? '' : `, SHA-256 ${args.file.hash}`}.` : ''}${args.shown ? ` The first ${args.shown.first} of ${args.shown.of} rows.` : ''}`,
    note: 'Note', times: 'Times', licence: 'Licence', accepted: 'Accepted', madeWith: 'Made with',
    zone: (zone: string | null): string => (zone === null ? 'UTC' : `local time in ${zone}`),
    acceptedBy: (codes: readonly string[]): string => `by the author, who looked at these warnings and lets them stand: ${codes.join(', ')}`,
    key: 'In the table below a value in brackets was left out of every calculation, “a->b” is a correction with its first value kept, “?” marks a doubtful reading, “-” a reading not taken, “<” and “>” a value outside the instrument’s range, and “a/b” repeats taken at once.',
    whole: 'The note as it was written',
    theNote: ' (the note itself)', aDataFile: ' (a data file)',
    files: 'This page carries the files it was made from. Save them here, or check the whole page with “evenwater recheck”:',
  },

  /** What the ± of quoted sentences come from; `figures` names those that are meant, null where all are. `compared`: the note has several tanks. */
  plusMinus: ({ source, figures, compared }: { source: IntervalSource; figures: readonly string[] | null; compared: boolean }): string => {
    const head = figures === null ? 'Each ± quoted' : `The ± in ${listedText(figures.map((each) => `“${each}”`))}`;
    if (source === 'instruments') return `${head} comes from the instruments alone${compared ? '; how far the tanks drift apart by themselves is not in it' : ''}.`;
    return `${head} comes from scatter${source === 'both' ? ' and from the instruments' : ', not from the instruments'}.`;
  },
  limitsOfEvidence: (limits: string): string => `Limits of the evidence: ${limits}`,
  answerFault: (words: string, computed: string | null): string => `“${words}”${computed === null ? ' cannot be computed' : `: the readings give ${computed}`}`,
  /** Before a narration whose language cannot be written as said; empty where it can. */
  figuresAsPrinted: 'The figures stand as printed: only English and German can be written as said.',
  /** Abbreviations whose full stop ends no sentence. */
  abbreviations: /\b(?:e\.g|i\.e|cf|vs|approx|ca|Fig|No|St|Dr)\.$/u,

  recheck: {
    noNote: 'The post carries no note that can be read.',
    severalNotes: 'The post carries more than one note.',
    unreadable: (path: string): string => `The file "${path}" in the post cannot be decoded.`,
    altered: (path: string, found: string, stated: string): string => `The file "${path}" in the post was altered: its SHA-256 is ${found}, the post states ${stated === '' ? 'none' : stated}.`,
    outside: (path: string): string => `The post names a file "${path}" outside the note's folder; it is left out.`,
    nouns: { number: 'number', words: 'text', value: 'value behind the number', formula: 'formula', drawing: 'drawing', markup: 'markup' },
    difference: (args: { printed: string; computed: string; formula: string | null }): string =>
      `${args.printed === '' ? 'the post lacks it' : `the post has “${args.printed}”`}, ${args.computed === '' ? 'the note gives nothing here' : `the note gives “${args.computed}”`}${args.formula === null ? '' : `, from ${args.formula}`}.`,
  },
};

export type PostWords = typeof postWords;
