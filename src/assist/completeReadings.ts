// Suggestions inside a readings table: heads not used yet, their units and instruments, the next time, words of a scale;
// and the keys of a block that points to a data file.
import type { Protocol } from '../protocol/types.ts';
import { measureFor, placesOf, planUnit, splitHead } from '../readings/heads.ts';
import { splitLines, type Line } from '../readings/lines.ts';
import { fileKeyNames } from '../readings/file/fileKeys.ts';
import { delimiters } from '../readings/file/layout.ts';
import { dateOrders } from '../readings/file/stamps.ts';
import { day } from '../time/instant.ts';
import { formatClock, formatDate } from '../time/text.ts';
import type { AskedNote, Asking } from './asking.ts';
import { units } from './completeFormula.ts';
import { quantityHelp, tankHelp } from './knownNames.ts';
import { toNote, type BlockPlace } from './place.ts';
import type { Suggestion } from './types.ts';
import { startOfLine, yamlPlace } from './yamlPlace.ts';

type CellsLine = Extract<Line, { kind: 'cells' }>;

/** Suggestions at the cursor of a `readings` block. */
export function completeReadings(note: AskedNote, place: BlockPlace): Suggestion[] {
  const { protocol } = note;
  const { text } = place.content;
  if (!protocol) return [];
  if (/^\s*from:/u.test(text)) return completeFile(protocol, place, note.asking);
  const before = text.slice(startOfLine(text, place.at), place.at);
  if (/^\s*#|;/u.test(before)) return [];
  const lines = splitLines(text);
  const head = lines.find((line): line is CellsLine => line.kind === 'cells');
  const token = /\S*$/u.exec(before)![0];
  const offset = toNote(place, place.at);
  const range = { start: offset - token.length, end: offset };
  const isHead = !head || place.at <= head.end;
  if (isHead) return completeHead(protocol, head, before, token, offset, place.at, note.asking);
  const index = before.slice(0, before.length - token.length).trim() === '' ? 0 : before.slice(0, before.length - token.length).trim().split(/\s+/u).length;
  if (index === 0) return nextTimes(note, protocol, range);
  const parts = splitHead(head.tokens[index]?.text ?? '');
  const scale = parts ? measureFor(protocol, parts.quantity, parts.instrument)?.scale ?? null : null;
  return (scale ?? []).map((word, rank) => ({ label: word, kind: 'word', insert: word, snippet: false, range, detail: parts!.quantity, documentation: '', sort: String(rank).padStart(3, '0') }));
}

/** Heads that the plan knows and the table lacks, in the plan's order; units in brackets; the whole line of an empty table. */
function completeHead(protocol: Protocol, head: CellsLine | undefined, before: string, token: string, offset: number, at: number, asking: Asking): Suggestion[] {
  const bracket = /^(\S*)\[([^\]]*)$/u.exec(token);
  if (bracket) {
    const parts = splitHead(bracket[1]!);
    const unit = parts ? planUnit(measureFor(protocol, parts.quantity, parts.instrument)) : null;
    return units({ start: offset - bracket[2]!.length, end: offset }, unit, asking);
  }
  const range = { start: offset - token.length, end: offset };
  const one = (label: string, kind: Suggestion['kind'], sort: string, rest: Partial<Suggestion> = {}): Suggestion => (
    { label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort, ...rest });
  const all = headsOf(protocol, asking);
  if (before.trim() === token && !before.slice(0, -token.length || undefined).trim()) {
    const line = ['time', ...all.map((each) => each.head)].join('  ');
    return [one(line, 'series', '0', { documentation: asking.words.shared.newName }), one('time', 'keyword', '1', { insert: 'time  ', goesOn: true })];
  }
  const used = new Set((head?.tokens ?? []).filter((each) => at < each.start || at > each.end).map((each) => each.text.replace(/\[.*$/u, '')));
  return all.filter((each) => !used.has(each.head)).map((each, index) => one(each.head, 'series', String(index).padStart(3, '0'), { detail: each.unit, documentation: each.documentation }));
}

function headsOf(protocol: Protocol, asking: Asking): { head: string; unit: string; documentation: string }[] {
  const places = [...protocol.tanks.map((tank) => tank.id), 'room'];
  return places.flatMap((place) => protocol.measure.filter((measure) => placesOf(measure, protocol).includes(place)).map((measure) => {
    const tank = protocol.tanks.find((each) => each.id === place);
    return { head: `${place}.${measure.id}`, unit: planUnit(measure)?.print ?? '', documentation: [tank ? tankHelp(tank) : null, quantityHelp(measure, asking)].filter(Boolean).join('\n\n') };
  }));
}

/** The next planned times without a reading. */
function nextTimes(note: AskedNote, protocol: Protocol, range: Suggestion['range']): Suggestion[] {
  const slots = protocol.schedule?.slots ?? [];
  const last = note.dataset.times.at(-1) ?? Number.NEGATIVE_INFINITY;
  const long = slots.length > 0 && slots.at(-1)! - slots[0]! > day;
  return slots.filter((slot) => slot > last).slice(0, 3).map((slot, index) => {
    const text = long ? `${formatDate(slot, protocol.zone)}T${formatClock(slot, protocol.zone)}` : formatClock(slot, protocol.zone);
    return { label: text, kind: 'instant', insert: `${text}  `, snippet: false, range, detail: note.asking.words.shared.next, documentation: '', sort: String(index) };
  });
}

/** Keys of a block that points to a file, and what a column of the file may hold. */
function completeFile(protocol: Protocol, place: BlockPlace, asking: Asking): Suggestion[] {
  const yaml = yamlPlace(place.content.text, place.at);
  if (!yaml) return [];
  const offset = toNote(place, place.at);
  const range = { start: offset - (place.at - yaml.wordStart), end: offset };
  const one = (label: string, kind: Suggestion['kind'], sort: string, rest: Partial<Suggestion> = {}): Suggestion => (
    { label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort, ...rest });
  if (yaml.path.length === 0 && yaml.at !== 'value') {
    return fileKeyNames.filter((key) => !yaml.beside.has(key)).map((key, index) => one(key, 'key', String(index), {
      insert: key === 'columns' ? 'columns:\n  $0' : `${key}: $0`, snippet: true, documentation: asking.words.fileKeyHelp[key],
    }));
  }
  if (yaml.at !== 'value') return [];
  const [key, inner] = yaml.path;
  if (key === 'columns' && inner !== undefined) {
    const taken = new Set(yaml.beside.values());
    return [one('time', 'keyword', '0'), ...headsOf(protocol, asking).filter((each) => !taken.has(each.head)).map((each, index) => one(each.head, 'series', `1${String(index).padStart(3, '0')}`, { detail: each.unit, documentation: each.documentation })), one('remark', 'keyword', '2')];
  }
  if (key === 'time zone') return [...new Set([protocol.zone.name, 'UTC', ...Intl.supportedValuesOf('timeZone')])].map((zone, index) => one(zone, 'value', String(index).padStart(4, '0')));
  if (key === 'decimal') return ['point', 'comma'].map((word, index) => one(word, 'value', String(index)));
  if (key === 'delimiter') return Object.keys(delimiters).map((word, index) => one(word, 'value', String(index)));
  if (key === 'date order') return dateOrders.map((word, index) => one(word, 'value', String(index)));
  return [];
}

