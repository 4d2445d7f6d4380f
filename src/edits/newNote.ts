// Writes a new note: plan, readings table, formulas and prose stubs from at most ten answers, each of which may be missing.
import { noFiles, readNote } from '../experiment/readNote.ts';
import { addDays } from '../time/civil.ts';
import { day, type Duration, type Instant, type WallTime } from '../time/instant.ts';
import { formatClock, formatDate, readClock, readDate, readDuration, type Clock } from '../time/text.ts';
import { compatibleInstant, loadZone, utc } from '../time/zone.ts';
import { seededRandom } from '../statistics/random.ts';
import { quoted } from '../protocol/collector.ts';
import type { NewNoteWords } from '../words/en/newNote.ts';
import type { Language } from '../words/languages.ts';
import { newNoteWords } from '../words/newNote.ts';
import { readingsBlockText } from './insertReadingsTable.ts';
import { checkAnswer, readMeasureNames, readPlaceAnswer, readStartAnswer, readTankNames, saysNoLights, type AnswerName, type NewNoteAnswers } from './newNoteAnswers.ts';
import { templateByName, templates, type GapLine, type Template } from './newNoteTemplates.ts';
import { libraryMeasure, type LibraryMeasure } from './planLibrary.ts';
import { measureIn, ownTreated, templateIn } from './templateLanguage.ts';

/** What the shell knows: today's date and the zone of its clock. */
export interface NewNoteSurroundings {
  /** `2026-03-14`: the day the run starts on where no answer says so. */
  readonly today: string;
  /** IANA name, where the place does not name one. */
  readonly timeZone: string;
  /** Seed of the draw; the digits of the first day where nothing is given. */
  readonly seed?: string;
  /** A sentence put under the title, in Markdown. */
  readonly lead?: string;
  /** The language in which the note is written; English where nothing is given. */
  readonly language?: Language;
}

interface DraftTank { readonly id: string; readonly label: string; readonly role: 'treatment' | 'control' | null }

interface Draft {
  readonly language: Language;
  readonly words: NewNoteWords;
  /** In the language of the note. */
  readonly template: Template;
  readonly question: string;
  readonly hypothesis: string | null;
  readonly treatment: string;
  readonly tanks: readonly DraftTank[];
  /** True where treatment and order were drawn from the seed. */
  readonly drawn: boolean;
  readonly seed: string;
  readonly measure: readonly LibraryMeasure[];
  readonly place: readonly string[];
  readonly start: string;
  readonly end: string;
  readonly length: Duration;
  readonly lightOff: string | null;
  readonly lightOn: string | null;
  readonly every: readonly string[];
}

/** The text of the note. Answers that cannot be read (`checkAnswer` says which) count as not given. */
export function newNote(answers: NewNoteAnswers, surroundings: NewNoteSurroundings): string {
  const draft = fillIn(answers, surroundings);
  const before = [`# ${draft.question.replace(/\s+/g, ' ')}`, '', ...(surroundings.lead ? [surroundings.lead, ''] : []), ...planBlock(draft), ''];
  const note = readNote(`${before.join('\n')}\n`, noFiles, undefined, { fileIsNote: true });
  const table = note.protocol && note.protocol.measure.length > 0 ? readingsBlockText(note.protocol, { rows: note.protocol.schedule !== null }).trimEnd() : '';
  return `${[...before, ...afterPlan(draft, table)].join('\n').trimEnd()}\n`;
}

/** YAML text, in quotes where it needs them. */
function plain(text: string): string {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat === '' || /^[\s\-?:,[\]{}#&*!|>'"%@`]|: | #|:$/.test(flat) ? quoted(flat) : flat;
}

const two = (count: number): string => String(count).padStart(2, '0');

function fillIn(answers: NewNoteAnswers, surroundings: NewNoteSurroundings): Draft {
  const given = (name: AnswerName): string | null => {
    const text = answers[name]?.trim() ?? '';
    return text === '' || checkAnswer(name, text) ? null : text;
  };
  const language = surroundings.language ?? 'en';
  const words = newNoteWords(language);
  const template = templateIn(words, templateByName(given('template') ?? '') ?? templates.at(-1)!);
  const question = given('question');
  const place = readPlaceAnswer(given('place') ?? '');
  const zoneName = place?.zone ?? (loadZone(surroundings.timeZone) ? surroundings.timeZone : 'UTC');
  const zone = loadZone(zoneName) ?? utc;
  const start = readStartAnswer(given('start') ?? '');
  const date = start?.date ?? readDate(surroundings.today) ?? { year: 2026, month: 1, day: 1 };
  const clock: Clock = start?.clock ?? readClock(template.start) ?? { hour: 20, minute: 0, second: 0 };
  const from: WallTime = { year: date.year, month: date.month, day: date.day, hour: clock.hour, minute: clock.minute, second: 0 };
  const length = readDuration(given('length') ?? template.length) ?? 12 * 3_600_000;
  const begin = compatibleInstant(from, zone);
  const end: Instant = length % day === 0 ? compatibleInstant(addDays(from, length / day), zone) : begin + length;
  const written = (instant: Instant): string => `${formatDate(instant, zone)} ${formatClock(instant, zone)}`;
  const seed = surroundings.seed ?? `${date.year}${two(date.month)}${two(date.day)}`;

  const off = given('lightOff');
  const lightOff = off !== null && saysNoLights(off) ? null : off ?? template.lightOff;
  const offClock = lightOff === null ? null : readClock(lightOff);
  const untilOff = offClock ? (((offClock.hour - clock.hour) * 60 + offClock.minute - clock.minute + 1440) % 1440) * 60_000 : null;
  const everyText = given('every');
  const every = readDuration(everyText ?? template.every) ?? 1_800_000;
  const denser = template.denser.filter((stretch) => {
    const finer = readDuration(/^(.*?) from /.exec(stretch)?.[1] ?? '');
    const lasts = readDuration(/\+ (.+)$/.exec(stretch)?.[1] ?? '') ?? 0;
    const starts = stretch.includes('light-off') ? untilOff : 0;
    return finer !== null && finer < every && starts !== null && starts + lasts <= length;
  });
  const names = readTankNames(given('tanks') ?? '', words);
  const measure = given('measure');
  const treatment = given('treatment') ?? template.treatment;
  const own = treatment !== template.treatment;
  return {
    language, words, template, question: question ?? (own ? questionAbout(treatment, template) : template.question), hypothesis: question === null && !own ? template.hypothesis : null, treatment,
    tanks: names.length > 0 ? drawRoles(names, seed)
      : [{ ...(own ? ownTreated(words) : template.treated), role: 'treatment' }, ...(template.control ? [{ ...template.control, role: 'control' as const }] : [])],
    drawn: names.length > 1, seed,
    measure: (measure === null ? template.measure.flatMap((id) => libraryMeasure(id) ?? []) : readMeasureNames(measure)).map((each) => measureIn(words, each)),
    place: [
      ...(place?.name ? [`name: ${plain(place.name)}`] : []),
      ...(place && place.latitude !== null && place.longitude !== null ? [`latitude: ${place.latitude}`, `longitude: ${place.longitude}`] : []), `time zone: ${zoneName}`,
    ],
    start: written(begin), end: written(end), length, lightOff, lightOn: lightOff === null ? null : template.lightOn ?? '08:00',
    every: [everyText ?? template.every, ...denser],
  };
}

/** The template's question asked of another treatment; one with a comma in it ends with a comma too, where it is not quoted. */
function questionAbout(treatment: string, template: Template): string {
  const named = treatment.replace(/[\s.?!,;]+$/u, '');
  const bare = !template.questionAbout.includes('„WITH“');
  return template.questionAbout.replace('WITH', () => (bare && named.includes(',') ? `${named},` : named));
}

/** Half of the tanks (the smaller half) get the treatment, drawn from the seed. A single tank has no role. */
function drawRoles(names: readonly { readonly id: string; readonly label: string }[], seed: string): DraftTank[] {
  if (names.length === 1) return [{ ...names[0]!, role: null }];
  const treated = new Set(seededRandom(`${seed} roles`).shuffle(names.map((each) => each.id)).slice(0, Math.max(1, Math.floor(names.length / 2))));
  return names.map((each) => ({ ...each, role: treated.has(each.id) ? 'treatment' : 'control' }));
}

/** Lines of a template with its gaps filled. What needs a quantity, a tank or a time that this plan does not have is left away. */
function fillLines(draft: Draft, gaps: readonly GapLine[]): string[] {
  const measured = draft.measure.map((each) => each.id);
  const treated = draft.tanks.filter((tank) => tank.role !== 'control');
  const controls = draft.tanks.filter((tank) => tank.role === 'control');
  const side = (tanks: readonly DraftTank[], role: string): string | null => (tanks.length === 0 ? null : tanks.length === 1 ? tanks[0]!.id : role);
  const one = side(treated, 'treatment');
  const other = side(controls, 'control');
  const tooLate = (text: string): boolean => [...text.matchAll(/\bstart \+ (\d+(?:\.\d+)? (?:min|h|d))/g)].some((match) => (readDuration(match[1]!) ?? 0) >= draft.length);
  // Events that come after the end of this run; what names one goes, in the plan and behind it.
  const lost = draft.template.plan.flatMap((gap) => gap.lines).filter(tooLate).flatMap((text) => /\bid: ([\w-]+)/.exec(text)?.[1] ?? []);
  return gaps.flatMap(({ needs, lines }): string[] => {
    if (needs.some((id) => !measured.includes(id))) return [];
    const usable = lines.filter((line) => !tooLate(line) && !lost.some((id) => new RegExp(`\\b${id}\\b`).test(line))
      && !(draft.lightOff === null && /\blight-o(?:ff|n)\b/.test(line)) && !(other === null && line.includes('CONTROL')));
    if (lines.some((line) => line.includes('accept:') && !usable.includes(line))) return [];
    // A list entry is repeated whole for every tank.
    const filled = (text: string): string => text.replaceAll('TREATED', one ?? '').replaceAll('CONTROL', other ?? '');
    if (!usable.some((line) => line.includes('EACH'))) return usable.map(filled);
    return draft.tanks.flatMap((tank) => usable.map((line) => filled(line.replaceAll('EACH', tank.id))));
  });
}

/** Heads such as `equalise:` under which nothing is left are dropped. */
function withoutEmptyHeads(lines: readonly string[]): string[] {
  return lines.filter((line, index) => !/^\S.*:$/.test(line) || /^\s/.test(lines[index + 1] ?? ''));
}

function planBlock(draft: Draft): string[] {
  const { template } = draft;
  const [first, ...others] = draft.tanks;
  const difference = (tank: DraftTank): string => `    ${template.differs}: ${plain(tank.role === 'control' ? template.withoutTreatment : draft.treatment)}`;
  const head = (tank: DraftTank): string[] => [`  ${tank.id}:`, ...(tank.role ? [`    role: ${tank.role}`] : []), `    label: ${plain(tank.label)}`];
  const fillings = template.treated.keys;
  const several = draft.tanks.length > 1;
  return [
    '```protocol',
    `question: ${plain(draft.question)}`,
    ...(draft.hypothesis ? [`hypothesis: ${plain(draft.hypothesis)}`] : []),
    ...(draft.language === 'en' ? [] : [`language: ${draft.language}`]),
    'place:', ...draft.place.map((line) => `  ${line}`),
    'tanks:',
    ...(first ? [...head(first), ...fillings.map(([key, text]) => `    ${key}: ${plain(text)}`), difference(first)] : []),
    ...others.flatMap((tank) => [...head(tank), `    like: ${first!.id}`, difference(tank)]),
    ...(several ? [`differs: [${template.differs}]`] : []),
    'schedule:', `  start: ${draft.start}`,
    ...(draft.lightOff === null ? [] : [`  light off: ${draft.lightOff}`, `  light on: ${draft.lightOn!}`]),
    `  end: ${draft.end}`, `  every: ${draft.every.length > 1 ? `[${draft.every.join(', ')}]` : draft.every[0]!}`,
    'measure:', ...draft.measure.map((each) => `  ${each.id}: {what: ${each.what}, ${each.rest}}`),
    ...withoutEmptyHeads(fillLines(draft, template.plan)),
    ...(several ? draft.drawn ? ['order: random', `seed: ${plain(draft.seed)}`] : ['order: alternate'] : []),
    '```',
  ];
}

function afterPlan(draft: Draft, table: string): string[] {
  const { words } = draft;
  const values = fillLines(draft, draft.template.values);
  const names = values.map((line) => line.split(' = ')[0]!);
  const prose = fillLines(draft, draft.template.prose).filter((line) => [...line.matchAll(/\{\? = ([\p{L}\p{N}-]+)\}/gu)].every((match) => names.includes(match[1]!)));
  const measured = draft.measure.filter((each) => !/scale:/.test(each.rest)).map((each) => each.id);
  const shown = [...draft.template.figure.filter((id) => measured.includes(id)), ...measured].slice(0, Math.max(1, draft.template.figure.length));
  const room = new Set(draft.measure.filter((each) => each.room).map((each) => each.id));
  const series = [...new Set(shown)].flatMap((id) => (room.has(id) ? [`room.${id}`] : draft.tanks.map((tank) => `${tank.id}.${id}`)));
  const limits = fillLines(draft, draft.template.plan).some((line) => line.startsWith('limits:'));
  return [
    `## ${words.headings.read}`, '',
    ...(table === '' ? [] : [table, '']),
    ...(values.length > 0 ? ['```values', ...values, '```', ''] : []),
    `## ${words.headings.happened}`, '',
    ...words.whatHappened, '',
    ...prose.flatMap((line) => [line, '']),
    ...(series.length > 0 ? ['```figure', `show: [${series.join(', ')}]`, '```', ''] : []),
    ...(limits ? ['```limits', '```', ''] : []),
    `## ${words.headings.means}`, '',
    words.whatItMeans, '',
    '```results', '```', '',
    `## ${words.headings.done}`, '',
    ...(draft.drawn ? [words.drawn, ''] : []),
    '```methods', '```', '',
  ];
}

