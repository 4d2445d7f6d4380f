// The questions of a new note, in the order in which they are asked; each can be skipped. Reads the answers, and says what it
// cannot read.
import { readClock, readDate, readDateTime, readDuration, type CalendarDate, type Clock } from '../time/text.ts';
import { minute, type Duration } from '../time/instant.ts';
import { loadZone } from '../time/zone.ts';
import type { NewNoteWords } from '../words/en/newNote.ts';
import type { Message } from './edit.ts';
import { libraryMeasure, libraryMeasures, type LibraryMeasure } from './planLibrary.ts';
import { templateByName, templates } from './newNoteTemplates.ts';
import { isName, isReserved } from '../protocol/names.ts';

/** At most ten answers. Empty and absent ones take the template's. */
export interface NewNoteAnswers {
  /** Name of a template. */
  readonly template?: string | undefined;
  readonly question?: string | undefined;
  /** What the treated tanks have and the others do not. */
  readonly treatment?: string | undefined;
  /** Names with commas between them: `left, right`. Treatment and reading order are then drawn. One name: no comparison. */
  readonly tanks?: string | undefined;
  /** Short names or names of quantities with commas between them: `DO, T, P`. */
  readonly measure?: string | undefined;
  /** `Zwolle, 52.51, 6.09, Europe/Amsterdam`: any of them. */
  readonly place?: string | undefined;
  /** `2026-03-14 20:00`, a date or a clock time. */
  readonly start?: string | undefined;
  /** A clock time, or `none` (`nie`). */
  readonly lightOff?: string | undefined;
  /** Time between readings. */
  readonly every?: string | undefined;
  /** How long the run lasts. */
  readonly length?: string | undefined;
}

export const answerNames = ['template', 'question', 'treatment', 'tanks', 'measure', 'place', 'start', 'lightOff', 'every', 'length'] as const satisfies readonly (keyof NewNoteAnswers)[];
export type AnswerName = typeof answerNames[number];

const parts = (text: string): string[] => text.split(',').map((part) => part.trim()).filter((part) => part !== '');

/** Names of tanks as they stand in heads and formulas: `Left tank` is `left-tank`. Null where nothing usable is left. */
export function tankId(name: string): string | null {
  const id = name.trim().toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^[^\p{L}]+|-+$/gu, '');
  if (id === '' || !isName(id)) return null;
  return isReserved(id) ? `${id}-tank` : id;
}

export interface TankName { readonly id: string; readonly label: string }

/** The named tanks, their labels in the words of the note. */
export function readTankNames(text: string, words: Pick<NewNoteWords, 'tankLabel'>): TankName[] {
  return parts(text).flatMap((name) => { const id = tankId(name); return id === null ? [] : [{ id, label: words.tankLabel(name) }]; });
}

export function readMeasureNames(text: string): LibraryMeasure[] {
  return [...new Set(parts(text).flatMap((name) => libraryMeasure(name) ?? []))];
}

export interface PlaceAnswer { readonly name: string | null; readonly latitude: number | null; readonly longitude: number | null; readonly zone: string | null }

export function readPlaceAnswer(text: string): PlaceAnswer | null {
  let name: string | null = null;
  let zone: string | null = null;
  const numbers: number[] = [];
  for (const part of parts(text)) {
    if (/^[+\-−]?\d+(?:\.\d+)?°?$/.test(part)) numbers.push(Number(part.replace('−', '-').replace('°', '')));
    else if ((part.includes('/') || part === 'UTC') && loadZone(part)) zone = part;
    else if (name === null && !part.includes('/')) name = part;
    else return null;
  }
  const [latitude = null, longitude = null, more] = numbers;
  if (more !== undefined || (latitude !== null && (longitude === null || Math.abs(latitude) > 90 || Math.abs(longitude) > 180))) return null;
  return { name, latitude, longitude, zone };
}

export interface StartAnswer { readonly date: CalendarDate | null; readonly clock: Clock | null }

export function readStartAnswer(text: string): StartAnswer | null {
  const both = readDateTime(text);
  if (both) return { date: both.wall, clock: both.wall };
  const date = readDate(text);
  if (date) return { date, clock: null };
  const clock = readClock(text);
  return clock && { date: null, clock };
}

export const saysNoLights = (text: string): boolean => /^(?:none|no|never|nie|nein|keine?s?|ohne|-|–)$/i.test(text.trim());

/** Readings that one new table lays out at most. */
const mostRows = 2000;

/** What is wrong with an answer; null when it can be read or is empty. */
export function checkAnswer(name: AnswerName, text: string | undefined, length: Duration | null = null): Message | null {
  const answer = text?.trim() ?? '';
  if (answer === '') return null;
  const bad = (example: string): Message => ({ code: 'answer-unreadable', args: { text: answer, example } });
  switch (name) {
    case 'template': return templateByName(answer) ? null : { code: 'answer-not-listed', args: { text: answer, listed: templates.map((each) => each.name) } };
    case 'question': case 'treatment': return null;
    case 'tanks': {
      const ids = parts(answer).flatMap((each) => tankId(each) ?? []);
      return ids.length === parts(answer).length && ids.length > 0 && new Set(ids).size === ids.length ? null : bad('left, right');
    }
    case 'measure': {
      const unknown = parts(answer).find((part) => !libraryMeasure(part));
      return unknown === undefined ? null : { code: 'answer-not-listed', args: { text: unknown, listed: libraryMeasures.map((each) => each.id) } };
    }
    case 'place': return readPlaceAnswer(answer) ? null : bad('Zwolle, 52.51, 6.09, Europe/Amsterdam');
    case 'start': return readStartAnswer(answer) ? null : bad('2026-03-14 20:00');
    case 'lightOff': return saysNoLights(answer) || readClock(answer) ? null : bad('22:00');
    case 'every': {
      const every = readDuration(answer);
      return every === null || every < minute || (length !== null && length / every > mostRows) ? bad('30 min') : null;
    }
    case 'length': {
      const duration = readDuration(answer);
      return duration === null || duration < minute ? bad('14 h') : null;
    }
  }
}
