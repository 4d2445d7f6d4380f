// English help of the command line: what each command is for, how it is called, and what it does.
export type CommandName = 'new' | 'log' | 'check' | 'find' | 'ask' | 'publish' | 'recheck' | 'extract' | 'format' | 'seal';

export interface OneHelp {
  /** What stands after the name in the usage line. */
  readonly usage: string;
  readonly summary: string;
  /** Longer help, a line an entry. */
  readonly lines: readonly string[];
}

export interface CommandHelp {
  readonly usageHead: string;
  readonly about: string;
  readonly call: string;
  /** Last lines of the help on everything. */
  readonly more: (languages: readonly string[]) => readonly string[];
  readonly commands: Readonly<Record<CommandName, OneHelp>>;
}

export const commandHelp: CommandHelp = {
  usageHead: 'Usage',
  about: 'evenwater: aquarium experiment notes whose numbers cannot drift from the readings.',
  call: 'evenwater COMMAND … [--json] [--language CODE]',
  more: (languages) => [
    'evenwater COMMAND --help tells more. --version prints the version.',
    `--language CODE  language of the sentences: ${languages.join(' or ')}; without it English. Codes and --json stay as they are.`,
  ],
  commands: {
    new: {
      usage: '[--template NAME] [--to FILE]',
      summary: 'Write a new note: plan, empty table and prose stubs.',
      lines: [
        'Every option can be left away; the template has an answer for each question.',
        '',
        '  --template NAME      one of the templates below',
        '  --question TEXT      what the run is to answer',
        '  --treatment TEXT     what the treated tanks have and the others do not',
        '  --tanks NAMES        left, right: treatment and reading order are drawn from a seed',
        '  --measure NAMES      DO, T, P: short names, or names of quantities',
        '  --place TEXT         Zwolle, 52.51, 6.09, Europe/Amsterdam: any of them',
        '  --start TIME         2026-03-14 20:00, a date or a clock time',
        '  --light-off TIME     22:00, or none',
        '  --every DURATION     30 min',
        '  --length DURATION    14 h',
        '  --seed TEXT          seed of the draw; the digits of the first day where it is left away',
        '  --repeat NOTE        a repeat of that run instead: the same plan on the date of --start',
        '  --language CODE      language of the note, too, but for a repeat: that goes by its first note',
        '  --to FILE            the file to write; without it the note goes to stdout',
        '',
        'Exit 0 when the note was written without a problem in it, 1 when it has warnings or errors, 2 on wrong use.',
      ],
    },
    log: {
      usage: 'NOTE VALUES… [--at TIME]',
      summary: 'Log a row of readings into a note.',
      lines: [
        'The values stand in the planned order: evenwater log night.tank.md 7.31 24.9 8.28 24.6 1008.1',
        'Where the plan draws or alternates the order of the tanks, it is that of the time logged; what went where is printed.',
        'A reading that was not taken is -. Without values: writes what an earlier run could not, and says what is due.',
        '',
        '  --at TIME      06:30, 2026-03-15T06:30, +90 (minutes from the start) or now; without it the slot that is due',
        '  --note TEXT    a remark for the row',
        '  --anyway       log values that look wrong, too',
        '  --forget       give up the rows that wait in the journal for this note; prints them',
        '',
        'The row is printed when it is on disk. Until then it is in the journal (the folder EVENWATER_STATE, or the',
        'system\'s folder for program state), and a later run writes it. The note is replaced in one step, under a lock',
        'file beside it; rows that another program wrote meanwhile stay.',
        'Exit 0 when the row is logged, 1 when it is refused (the reason on stderr), 2 on wrong use or an unreadable note.',
      ],
    },
    check: {
      usage: 'PATH…',
      summary: 'Check notes: every number and statement against the readings.',
      lines: [
        'A file is checked itself; a folder means every *.tank.md below it, dot folders and node_modules left out.',
        'Prints a line a problem: file:line:column: severity code: sentence.',
        'Exit 0 without errors, 1 with errors, 2 on wrong use or unreadable input.',
      ],
    },
    find: {
      usage: 'NOTE',
      summary: 'Find the formulas behind loose and mismatched numbers.',
      lines: [
        'Lists each number that no formula checks, or that its formula does not give, with the formulas of this note that give it, best first.',
        'Scores compare the formulas of one number only. For a number that nothing gives, what comes near is listed with its value and the slip that would explain it.',
        'Exit 0 whatever was found, 1 when the note has no readable plan, 2 on wrong use or unreadable input.',
      ],
    },
    ask: {
      usage: "NOTE 'FORMULA'",
      summary: 'Compute one formula from a note and print its value.',
      lines: [
        "Example: evenwater ask night.tank.md 'min(mat.DO, dark)'",
        'Exit 1 with the problems when the formula or the readings behind it have one, 2 when the note cannot be read.',
      ],
    },
    publish: {
      usage: 'NOTE --to DIR',
      summary: 'Publish a note: one self-contained page, or other forms.',
      lines: [
        'Writes DIR/<stem>.html, each file whole or not at all. Refuses while the note has an error; lists warnings and loose numbers.',
        '--as FORM     another form; may be given more than once:',
        '  html         one self-contained page (the default)',
        '  markdown     <stem>.post.md with its figures as SVG files, for forums and blogs; --front-matter adds a head of metadata',
        '  card         a summary card, as Markdown and as an SVG picture: question, answer, figure, limits of the evidence',
        '  plan         the plan as one page of A4 with an empty table for pencil; --plan is short for it',
        '  narration    the findings as numbered sentences to be spoken, numbers written as said in English and German, as printed in other languages',
        '  data         <stem>-data/: tables as CSV with CSVW, Data Package and RO-Crate metadata, the plan as JSON, note, data files and post',
        '--published T the time of publishing that the post prints (2026-04-13T10:00+03:00); without it the protocol\'s, or none.',
        'Exit 0 when the post was written, 1 when it was refused, 2 on wrong use or unreadable input.',
      ],
    },
    recheck: {
      usage: 'POST',
      summary: 'Recompute every number of a post from the note and data inside it.',
      lines: [
        'Takes note and data out of POST.html, verifies their hashes, reads and computes everything again and compares the',
        'whole page: claims, tables, generated sentences, drawings, and the values and formulas behind the numbers.',
        'A post made with another version of evenwater is said first; then numbers, values, formulas and the words of the author are judged, generated wording, layout and drawings are not.',
        'It shows that the page agrees with the data it carries, not who wrote them.',
        'Exit 0 when all agree, 1 with a line a difference, 2 on wrong use or unreadable input.',
      ],
    },
    extract: {
      usage: 'POST --to DIR',
      summary: 'Take the note and its data out of a post, byte for byte.',
      lines: [
        'Writes the note and every data file that POST.html carries into DIR, in the folders they came from.',
        'A file that stands there already and differs is left alone, and nothing is written.',
        'Exit 0 when all were written and their hashes agree, 1 when something in the post does not agree, 2 on wrong use or unreadable input.',
      ],
    },
    format: {
      usage: 'PATH… [--check]',
      summary: 'Align the readings tables of notes; no value is touched.',
      lines: [
        'A file is formatted itself; a folder means every *.tank.md below it. Prints a line a note that changed.',
        '',
        '  --check    change nothing, and exit 1 when a note is not formatted',
      ],
    },
    seal: {
      usage: 'NOTE [--block NAME | --plan]',
      summary: 'Seal a table of readings, or the plan.',
      lines: [
        'Writes a hash over times, units and first values under the heads. Corrections, marks, remarks and formatting keep a seal',
        'valid; any other change is an error of evenwater check, which names the cell.',
        '',
        '  --block NAME    the table of that name, or its number in the note; without it the last table that is not sealed',
        '  --plan          the plan instead, before the first reading; the methods list every later change of it',
      ],
    },
  },
};
