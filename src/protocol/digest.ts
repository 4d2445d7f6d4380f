// The plan's digest: a hash over its facts, the same however the block is laid out.
import type { NumberValue } from '../quantities/types.ts';
import { day } from '../time/instant.ts';
import { formatClock, formatInstant } from '../time/text.ts';
import { sha256Of } from './sha256.ts';
import type { Placed, Protocol } from './types.ts';

const flat = (text: string | null | undefined): string | null => (text == null ? null : text.replace(/\s+/g, ' ').trim());
const placed = (fact: Placed<string> | null): string | null => flat(fact?.value);
const amount = (value: NumberValue | null | undefined): string | null => (value == null ? null : `${value.value} ${value.unit.symbol}`);

/**
 * The facts that were decided before the run, as plain data in a fixed order. What is filled in afterwards (`done`,
 * `outcome`, `accepted`, `sealed`, `repeats`) and how the post is signed (`title`, `by`, `licence`, `language`) are no part of the plan.
 * With `from`, times are given as the day (from 0) and clock time after that instant's day, so that plans of other dates compare.
 */
export function planFacts(protocol: Protocol, from: number | null = null): unknown {
  const { zone } = protocol;
  const dayOf = (instant: number): number => Math.floor((instant + zone.offsetAt(instant)) / day);
  const time = (instant: number | null): string | null => (instant === null ? null
    : from === null ? formatInstant(instant, zone) : `${dayOf(instant) - dayOf(from)} ${formatClock(instant, zone)}`);
  const { schedule } = protocol;
  return {
    question: placed(protocol.question),
    hypothesis: placed(protocol.hypothesis),
    place: {
      name: placed(protocol.place.name), latitude: protocol.place.latitude?.value ?? null, longitude: protocol.place.longitude?.value ?? null,
      elevation: amount(protocol.place.elevation?.value), zone: zone.name, daylight: protocol.place.daylight,
    },
    tanks: protocol.tanks.map((tank) => [tank.id, [...tank.written].filter(([key]) => key !== 'like')
      .map(([key, text]) => [key, flat(text.value)] as const).sort((a, b) => (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0))]),
    differs: protocol.differs.map((each) => each.value).sort(),
    schedule: schedule && {
      start: time(schedule.start), end: time(schedule.end), lightOff: schedule.lightOff.map(time), lightOn: schedule.lightOn.map(time),
      sampling: schedule.sampling.map((each) => [each.every, time(each.from), time(each.to), each.days ?? null]),
    },
    events: protocol.events.map((event) => [event.id, time(event.at), flat(event.what), event.tanks.map((tank) => tank.value)]),
    measure: protocol.measure.map((each) => [each.id, placed(each.what), each.unit?.symbol ?? null, placed(each.with), each.in.map((where) => where.value),
      amount(each.accuracy), amount(each.resolution), placed(each.calibrated), each.level?.value ?? null, each.scale, ...(each.correctedBy ? [each.correctedBy.value] : []),
      ...(each.referenceTemperature ? [amount(each.referenceTemperature.value)] : [])]),
    equalise: protocol.equalise.map((each) => [flat(each.step), flat(each.why), flat(each.accept?.text)]),
    phases: protocol.phases.filter((phase) => phase.typed !== null).map((phase) => [phase.id, time(phase.window.from), time(phase.window.to)]),
    limits: protocol.limits.map((each) => [flat(each.for), placed(each.quantity), amount(each.atLeast?.value), amount(each.atMost?.value), flat(each.source)]),
    stop: protocol.stopRules.map((each) => [flat(each.when?.text), flat(each.do)]),
    order: protocol.orderRule ? protocol.orderRule.value : protocol.order.map((each) => each.value),
    seed: placed(protocol.seed),
    pairWithin: protocol.pairWithin,
    // Left out where the plan expects nothing, so that plans from before this key keep their digest.
    ...(protocol.expect ? { expect: protocol.expect.map((each) => [each.quantity.value, amount(each.effect), amount(each.rate)]) } : {}),
  };
}

/** SHA-256 over the plan's facts, as 64 hexadecimal digits. Layout, comments, quotes and the order of keys change nothing. */
export function protocolDigest(protocol: Protocol): string {
  return sha256Of(JSON.stringify(planFacts(protocol)));
}
