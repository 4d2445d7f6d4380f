// The moments and stretches that the words around a number name: clock times, dates, lights-off, events, "the first two hours".
import type { FormulaContext } from '../../formula/context.ts';
import { convert, isTimeUnit, parseUnit } from '../../quantities/units.ts';
import { day, hour, minute, type Instant } from '../../time/instant.ts';
import { instantOf, utc, wallTimeOf } from '../../time/zone.ts';
import type { FindWords } from '../../words/findWords.ts';
import type { AnyMention } from '../mentions.ts';
import type { Moments } from './moments.ts';
import { formPattern, related, wordsIn, wordsOf } from './wordForms.ts';
import type { NamedDay, NamedMoment, NamedStretch, WeightAt } from './types.ts';

interface DateMentioned { readonly start: number; readonly end: number; readonly month: number; readonly day: number; used: boolean }
interface Times { readonly moments: NamedMoment[]; readonly days: NamedDay[]; readonly stretches: NamedStretch[] }

export function readTimes(words: string, number: { start: number; end: number }, others: readonly AnyMention[], weightAt: WeightAt, context: FormulaContext, moments: Moments): Times {
  const found: Times = { moments: [], days: [], stretches: [] };
  if (!Number.isFinite(moments.start)) return found;
  const say = wordsIn(context);
  const dates = datesIn(words, others, say);
  clockTimes(words, number, others, dates, weightAt, context, moments, found);
  namedTimes(words, weightAt, context, moments, found);
  for (const date of dates) if (!date.used) addDay(date, weightAt(date.start, date.end), context, moments, found);
  phases(words, weightAt, moments, found, say);
  amounts(words, others, weightAt, moments, found, say);
  return found;
}

function datesIn(words: string, others: readonly AnyMention[], { dayPair, shortMonths }: FindWords): DateMentioned[] {
  const dates: DateMentioned[] = [];
  for (const each of others) {
    if (each.kind === 'date') dates.push({ start: each.start, end: each.end, month: each.month, day: each.day, used: false });
    else if (each.kind === 'clock' && each.date) continue;
  }
  for (const each of words.matchAll(dayPair)) dates.push({ start: each.index, end: each.index + each[1]!.length, month: shortMonths.indexOf(each[2]!) + 1, day: Number(each[1]), used: false });
  return dates;
}

/** Every instant of the run at that time of day; on one date where one is given. */
function instantsAt(clock: { hour: number; minute: number; second?: number | null }, date: { month: number; day: number } | null, context: FormulaContext, moments: Moments): Instant[] {
  const zone = context.protocol?.zone ?? utc;
  const found = new Set<Instant>();
  const days = Math.min(400, Math.ceil((moments.end - moments.start) / day) + 1);
  for (let step = 0; step <= days; step += 1) {
    const around = wallTimeOf(moments.start + step * day, zone);
    if (date && (around.month !== date.month || around.day !== date.day)) continue;
    const meaning = instantOf({ ...around, hour: clock.hour, minute: clock.minute, second: clock.second ?? 0 }, zone);
    for (const instant of meaning.kind === 'single' ? [meaning.instant] : meaning.kind === 'repeated' ? [meaning.earlier, meaning.later] : []) {
      if (instant >= moments.start && instant <= moments.end) found.add(instant);
    }
  }
  return [...found];
}

function clockTimes(
  words: string, number: { start: number; end: number }, others: readonly AnyMention[], dates: DateMentioned[], weightAt: WeightAt, context: FormulaContext, moments: Moments, found: Times,
): void {
  const say = wordsIn(context);
  const nearestDate = (start: number, end: number): DateMentioned | null => {
    const near = dates.map((date) => ({ date, distance: date.start >= end ? date.start - end : start - date.end })).sort((a, b) => a.distance - b.distance)[0];
    return near ? near.date : null;
  };
  const taken: { start: number; end: number }[] = [number];
  const add = (start: number, end: number, clocks: readonly { hour: number; minute: number; second?: number | null }[], own: { month: number; day: number } | null, share: number): void => {
    const date = own ?? nearestDate(start, end);
    let instants = clocks.flatMap((clock) => instantsAt(clock, date, context, moments));
    if (instants.length === 0 && date && !own) instants = clocks.flatMap((clock) => instantsAt(clock, null, context, moments));
    else if (date && 'used' in date) (date as DateMentioned).used = true;
    const weight = weightAt(start, end) * share;
    if (instants.length > 0 && weight > 0) found.moments.push({ instants, weight, digits: true });
    taken.push({ start, end });
  };
  for (const each of others) if (each.kind === 'clock') add(each.start, each.end, [each], each.date, 1);
  for (const each of others) if (each.kind !== 'clock') taken.push(each);
  for (const each of words.matchAll(say.spoken)) {
    const start = each.index;
    const end = start + each[0].length;
    if (taken.some((other) => start < other.end && end > other.start && !(other as AnyMention).kind?.startsWith('number'))) continue;
    const before = say.spokenBefore.exec(words.slice(Math.max(0, start - 10), start));
    const half = each[1] ?? '';
    if (!half && !each[3] && !(before && !say.spokenNotAfter.test(words.slice(end)))) continue;
    if (/^\d/u.test(each[2]!) && !half && !each[3]) continue;
    const read = /^\d/u.test(each[2]!) ? Number(each[2]) : say.hourNumbers.indexOf(each[2]!);
    if (read > 24) continue;
    const shift = say.spokenMinutes[half] ?? 0;
    const base = shift < 0 ? (read + 23) % 24 : read % 24;
    const minutes = shift < 0 ? 60 + shift : shift;
    const part = each[3] ?? '';
    const half12 = say.spokenHours[part] ?? 'both';
    const hours = half12 === 'first' ? [base % 12] : half12 === 'second' ? [base % 12 + 12] : base > 12 ? [base] : [base % 12, base % 12 + 12];
    add(start, end, hours.map((value) => ({ hour: value, minute: minutes })), null, part || half ? 0.9 : 0.75);
  }
}

function addDay(date: DateMentioned, weight: number, context: FormulaContext, moments: Moments, found: Times): void {
  const zone = context.protocol?.zone ?? utc;
  const days = Math.min(400, Math.ceil((moments.end - moments.start) / day) + 1);
  for (let step = 0; step <= days && weight > 0; step += 1) {
    const around = wallTimeOf(moments.start + step * day, zone);
    if (around.month !== date.month || around.day !== date.day) continue;
    const meaning = instantOf({ ...around, hour: 0, minute: 0, second: 0 }, zone);
    const from = meaning.kind === 'single' ? meaning.instant : meaning.kind === 'repeated' ? meaning.earlier : meaning.after;
    found.days.push({ from, to: from + day - 1, weight });
    return;
  }
}

function strongest(words: string, forms: readonly string[], weightAt: WeightAt): number {
  let weight = 0;
  for (const each of words.matchAll(formPattern(forms))) weight = Math.max(weight, weightAt(each.index, each.index + each[0].length));
  return weight;
}

function namedTimes(words: string, weightAt: WeightAt, context: FormulaContext, moments: Moments, found: Times): void {
  for (const [name, forms] of Object.entries(wordsIn(context).momentForms)) {
    const instants = (moments.all.get(name) ?? []).filter((each) => each >= moments.start && each <= moments.end + day);
    const weight = instants.length > 0 ? strongest(words, forms, weightAt) : 0;
    if (weight > 0) found.moments.push({ instants, weight, digits: false });
  }
  const ends = [{ cue: 'first', instant: moments.start }, { cue: 'last', instant: moments.end }] as const;
  for (const { cue, instant } of ends) {
    const weight = strongest(words, wordsIn(context).cueForms[cue], weightAt);
    if (weight > 0) found.moments.push({ instants: [instant], weight: weight * 0.8, digits: false });
  }
  events(words, weightAt, context, found);
}

/** An event is named by its id, or by the words that the plan describes it with; words that no other event has tell most. */
function events(words: string, weightAt: WeightAt, context: FormulaContext, found: Times): void {
  const say = wordsIn(context);
  const empty = new Set(say.emptyWords);
  const all = (context.protocol?.events ?? []).filter((event) => event.id !== null);
  const tokens = all.map((event) => {
    const text = `${event.id!} ${event.what}`.toLowerCase();
    return [...new Set(wordsOf(text).map((each) => each.text))].filter((each) => each === 'on' || each === 'off' || (!empty.has(each) && each.length > 2));
  });
  const spokenWords = wordsOf(words);
  all.forEach((event, index) => {
    let sum = 0;
    let most = 0;
    let place = 0;
    for (const token of tokens[index]!) {
      const shared = tokens.some((other, at) => at !== index && other.includes(token));
      const share = token === 'on' || token === 'off' ? 0.5 : shared ? 0.4 : 1;
      const hits = spokenWords.filter((word) => (token === 'on' || token === 'off' ? word.text === token : related(word.text, token, say)));
      const weight = Math.max(0, ...hits.map((word) => weightAt(word.start, word.end)));
      if (weight > 0 && token !== 'on' && token !== 'off') place = Math.max(place, weight);
      sum += share * (weight > 0 ? 1 : 0);
      most += share;
    }
    const part = most > 0 ? sum / Math.min(most, 1.6) : 0;
    if (place > 0 && part >= 0.45) found.moments.push({ instants: [event.at], weight: place * Math.min(1, part), digits: false });
  });
}

function phases(words: string, weightAt: WeightAt, moments: Moments, found: Times, say: FindWords): void {
  const { ordinals, nightForms, phaseForms, dayForms, wholeForms } = say;
  const add = (from: Instant, to: Instant, weight: number): void => { if (weight > 0) found.stretches.push({ from, to, weight }); };
  const ordinal = new RegExp(`(?<![\\p{L}])(${Object.keys(ordinals).join('|')})${say.ordinalOf}`, 'gu');
  const asked = [...words.matchAll(ordinal)].map((each) => ordinals[each[1]!]!);
  const chosen = (index: number, count: number): number => (asked.length === 0 || asked.includes(index + 1) || (asked.includes(-1) && index === count - 1) ? 1 : 0.1);
  const night = strongest(words, nightForms, weightAt);
  const derived = ['dark', 'baseline', 'recovery'];
  for (const name of derived) {
    const own = moments.phases.filter((phase) => phase.text === name || phase.text.startsWith(`${name}-`));
    own.forEach((phase, index) => add(phase.from, phase.to, strongest(words, phaseForms[name]!, weightAt) * chosen(index, own.length)));
  }
  for (const phase of moments.phases) {
    if (derived.includes(phase.text.replace(/-\d+$/u, ''))) continue;
    const tokens = wordsOf(phase.text.toLowerCase()).map((each) => each.text);
    const hits = wordsOf(words).filter((word) => tokens.some((token) => related(word.text, token, say)));
    add(phase.from, phase.to, Math.max(0, ...hits.map((word) => weightAt(word.start, word.end))) * 0.8);
  }
  const off = moments.all.get('light-off') ?? [];
  const on = moments.all.get('light-on') ?? [];
  const pair = (froms: readonly Instant[], tos: readonly Instant[], weight: number): void => froms.forEach((from, index) => {
    const to = tos.find((each) => each > from);
    if (to !== undefined) add(from, to, weight * chosen(index, froms.length));
  });
  pair(off, on, night);
  pair(on, off, strongest(words, dayForms, weightAt));
  const whole = strongest(words, wholeForms, weightAt);
  if (whole > 0) add(moments.start, moments.end, whole * 0.7);
}

/** Lengths of time: "the first two hours", "six hours after the heaters stopped", "half an hour later", "the last hour". */
function amounts(words: string, others: readonly AnyMention[], weightAt: WeightAt, moments: Moments, found: Times, say: FindWords): void {
  const hours = parseUnit('h');
  const lengths: { start: number; end: number; length: number }[] = [];
  for (const each of others) {
    if (each.kind === 'duration') lengths.push({ start: each.start, end: each.end, length: each.duration });
    else if (each.kind === 'number' && each.unit && hours && isTimeUnit(each.unit)) lengths.push({ start: each.start, end: each.end, length: Math.round(convert(each.value, each.unit, hours) * 60) * minute });
  }
  for (const each of words.matchAll(say.single)) {
    if (say.singleNotAfter.test(words.slice(0, each.index)) || lengths.some((other) => each.index < other.end && each.index + each[0].length > other.start)) continue;
    const length = (say.singleSizes[each[1]!.replace(/\s+/gu, ' ')] ?? 0) * hour;
    lengths.push({ start: each.index, end: each.index + each[0].length, length });
  }
  const named = [...found.moments];
  for (const { start, end, length } of lengths) {
    const weight = weightAt(start, end);
    if (weight <= 0 || length <= 0 || length > moments.end - moments.start) continue;
    const before = words.slice(Math.max(0, start - 14), end);
    const last = say.last.test(before);
    const first = say.first.test(before);
    if (last) { found.stretches.push({ from: moments.end - length, to: moments.end, weight }); continue; }
    const mentioned = named.flatMap((moment) => moment.instants.map((instant) => ({ instant, weight: moment.weight, digits: moment.digits })));
    const usual = [...(moments.all.get('light-off') ?? []), ...[...moments.names].filter(([, name]) => !['end', 'sunrise', 'sunset', 'dawn', 'dusk'].includes(name)).map(([instant]) => instant)];
    const anchors = [...mentioned, ...usual.filter((instant) => !mentioned.some((each) => each.instant === instant)).map((instant) => ({ instant, weight: mentioned.some((each) => each.weight >= 0.9) ? 0.3 : instant === moments.start ? 0.5 : 0.7, digits: false }))];
    for (const anchor of anchors) {
      const to = anchor.instant + length;
      const strength = weight * Math.min(1, anchor.weight + (first ? 0.1 : 0));
      if (to <= moments.end) {
        found.stretches.push({ from: anchor.instant, to, weight: strength });
        if (!first) found.moments.push({ instants: [to], weight: strength * 0.7, digits: false });
      }
      if (anchor.digits && anchor.instant - length >= moments.start) found.stretches.push({ from: anchor.instant - length, to: anchor.instant, weight: strength * 0.6 });
    }
  }
}
