// The comparison: is there a control, how many tanks a side, and do the sides differ in what they are meant to differ in only?
import { fix, type Problem, type SourceRange } from '../problems/problem.ts';
import { inWindow, readingAt, seriesFor } from '../dataset/series.ts';
import { undeclaredDifferences } from '../protocol/derived.ts';
import type { Protocol, Tank } from '../protocol/types.ts';
import type { NumberValue } from '../quantities/types.ts';
import { differenceUnit, parseUnit } from '../quantities/units.ts';
import { formatDate } from '../time/text.ts';
import { addToList, addToPlan, addUnderKey } from './planEdits.ts';
import { languageOf } from '../words/languages.ts';
import { saysNone } from '../words/none.ts';
import { planTexts } from '../words/planTexts.ts';
import { baselineEnd, finding, shown, type Design } from './finding.ts';

const ofRole = (protocol: Protocol, role: 'treatment' | 'control'): Tank[] => protocol.tanks.filter((tank) => tank.role?.value === role);

/** No tank to compare with. A single tank without a role is an observation, and says no more than it is. */
export function checkControl(design: Design): Problem[] {
  const { protocol, text } = design;
  const { tanks } = protocol;
  const treated = ofRole(protocol, 'treatment');
  if (ofRole(protocol, 'control').length > 0 || (treated.length === 0 && tanks.length < 2)) return [];
  const free = tanks.filter((tank) => tank.role === null);
  const place = (treated[0] ?? tanks[0])!.idRange;
  const fixes = treated.length > 0 ? free.slice(0, 3).map((tank) => fix('make-control', { tank: tank.id }, addUnderKey(text, tank.idRange, 'role: control'), { preferred: free.length === 1 })) : [];
  return [finding(design, 'no-control', place, { tanks: (treated.length > 0 ? treated : tanks).map((tank) => tank.label) }, fixes)];
}

/** One tank a side: what one can and cannot conclude. */
export function checkReplicates(design: Design): Problem[] {
  const { protocol } = design;
  const treated = ofRole(protocol, 'treatment');
  const controls = ofRole(protocol, 'control');
  const alone = [...(treated.length === 1 ? treated : []), ...(controls.length === 1 ? controls : [])];
  if (treated.length === 0 || controls.length === 0 || alone.length === 0) return [];
  return [finding(design, 'one-tank-per-role', alone[0]!.idRange, { tanks: alone.map((tank) => tank.label), both: alone.length === 2 ? 'yes' : 'no' })];
}

/** Keys whose absence says nothing: an unstated size is unknown, not another size. */
const silentKeys = new Set(['size', 'water depth', 'volume', 'running since', 'salinity']);

const amountOf = (value: NumberValue | null | undefined): number | null => (value ? value.value * value.unit.factor : null);

/** True where the tanks' values of a key are the same amount written in two ways. */
function sameAmount(protocol: Protocol, key: string): boolean {
  const amounts = protocol.tanks.map((tank): readonly (number | null)[] => {
    switch (key) {
      case 'size': return tank.size ? [tank.size.length, tank.size.width, tank.size.height].map(amountOf) : [null];
      case 'water depth': return [amountOf(tank.waterDepth)];
      case 'volume': return [amountOf(tank.volume)];
      case 'salinity': return [amountOf(tank.salinity?.value)];
      default: return [amountOf(tank.facts.get(key)?.value)];
    }
  });
  const [first] = amounts;
  return amounts.every((each) => each.length === first!.length && each.every((amount, index) => {
    const other = first![index] ?? null;
    return amount !== null && other !== null && Math.abs(amount - other) <= 1e-9 * Math.max(Math.abs(amount), Math.abs(other));
  }));
}

/** Keys that differ and are not named in `differs`. */
export function checkUndeclared(design: Design): Problem[] {
  const { protocol, text } = design;
  return undeclaredDifferences(protocol).flatMap((difference): Problem[] => {
    const { key } = difference;
    const stated = difference.texts.filter((each) => each.text !== null);
    const present = silentKeys.has(key) ? stated : difference.texts.map((each) => ({ ...each, text: saysNone(each.text) ? null : each.text }));
    if (new Set(present.map((each) => each.text?.trim().toLowerCase() ?? '')).size < 2 || sameAmount(protocol, key)) return [];
    const at = protocol.tanks.filter((tank) => tank.written.has(key)).at(-1);
    const range: SourceRange = at?.written.get(key)?.range ?? protocol.tanks[0]!.idRange;
    const sides = difference.texts.map((each) => `${protocol.tanks.find((tank) => tank.id === each.tank)?.label ?? each.tank}: ${each.text ?? ''}`);
    return [finding(design, 'tanks-differ-undeclared', range, { key, sides }, [
      fix('declare-difference', { key }, addToList(text, protocol, 'differs', protocol.differs, key)),
    ])];
  });
}

/**
 * How far two tanks may stand apart before the treatment and still count as alike, by quantity: in the unit, or as a part of
 * the reading. Common practice, no source.
 */
const levels: Readonly<Record<string, { readonly unit: string; readonly amount: number } | { readonly part: number }>> = {
  'water temperature': { unit: 'degC', amount: 0.5 }, 'salinity': { unit: 'PSU', amount: 0.5 }, 'specific gravity': { unit: 'SG', amount: 0.001 },
  'conductivity': { part: 0.05 }, 'specific conductance': { part: 0.05 },
};

/** Tanks that the readings before the treatment tell apart, where no equalisation step watches that quantity. */
export function checkLevel(design: Design): Problem[] {
  const { protocol } = design;
  const { schedule } = protocol;
  if (!schedule) return [];
  const until = baselineEnd(protocol) ?? schedule.start;
  const found: Problem[] = [];
  for (const measure of protocol.measure) {
    const level = levels[measure.what?.value ?? ''];
    if (!level || !measure.unit || measure.id.includes('@') || protocol.differs.some((each) => each.value === measure.what?.value)) continue;
    if (protocol.equalise.some((step) => step.accept?.text.includes(`.${measure.id}`))) continue;
    for (const one of ofRole(protocol, 'treatment')) {
      for (const other of ofRole(protocol, 'control')) {
        const apart = meanDifference(design, one.id, other.id, measure.id, schedule.start, until);
        if (!apart) continue;
        const unit = differenceUnit(measure.unit);
        const stated = 'part' in level ? null : parseUnit(level.unit);
        const most = 'part' in level ? level.part * Math.abs(apart.level) : level.amount * (stated?.factor ?? 1) / measure.unit.factor;
        const accuracy = measure.accuracy && measure.accuracy.unit.kind !== 'percentage' ? measure.accuracy.value * measure.accuracy.unit.factor / measure.unit.factor : 0;
        if (Math.abs(apart.difference) <= Math.max(most, accuracy) * (1 + 1e-9)) continue;
        found.push(finding(design, 'tanks-differ-in-readings', one.idRange, {
          what: measure.what!.value, tank: one.label, other: other.label, difference: shown(Math.abs(apart.difference), unit, protocol),
          most: shown(Math.max(most, accuracy), unit, protocol),
        }, [fix('equalise-quantity', { what: measure.what!.value }, protocol.equalise.length > 0 ? [] : addToPlan(design.text, protocol, [
          'equalise:', `  - step: ${planTexts(languageOf(protocol.language)).levelTanks(measure.what!.value)}`, `    accept: abs(${one.id}.${measure.id} - ${other.id}.${measure.id}) <= ${Number(Math.max(most, accuracy).toPrecision(2))} ${measure.unit.symbol}`,
        ]))], [{ range: other.idRange, message: 'other-tank', args: { tank: other.label } }]));
      }
    }
  }
  return found;
}

/** Mean of paired differences, and the mean level, over a window; null with fewer than one pair. */
function meanDifference(design: Design, one: string, other: string, quantity: string, from: number, to: number): { difference: number; level: number } | null {
  const a = seriesFor(design.context.dataset, one, quantity);
  const b = seriesFor(design.context.dataset, other, quantity);
  if (!a || !b || a.unit.symbol !== b.unit.symbol) return null;
  let count = 0;
  let difference = 0;
  let level = 0;
  for (const index of inWindow(a, { from, to })) {
    const partner = readingAt(b, a.times[index]!);
    if (partner === null) continue;
    count += 1;
    difference += a.values[index]! - b.values[partner]!;
    level += (a.values[index]! + b.values[partner]!) / 2;
  }
  return count === 0 ? null : { difference: difference / count, level: level / count };
}

/** Something done to one side in the middle of the run that is not the treatment itself. */
export function checkEvents(design: Design): Problem[] {
  const { protocol, text } = design;
  const { schedule, tanks } = protocol;
  if (!schedule || tanks.length < 2) return [];
  const treated = ofRole(protocol, 'treatment').map((tank) => tank.id);
  return protocol.events.flatMap((event): Problem[] => {
    const touched = event.tanks.map((tank) => tank.value);
    if (touched.length === 0 || tanks.every((tank) => touched.includes(tank.id))) return [];
    if (event.at <= schedule.start || (schedule.end !== null && event.at >= schedule.end)) return [];
    // With a name of its own and in exactly the treated tanks, the event is the treatment.
    const isTreatment = event.id !== null && treated.length > 0 && touched.length === treated.length && treated.every((id) => touched.includes(id));
    if (isTreatment) return [];
    const first = event.tanks[0]!.range;
    const last = event.tanks.at(-1)!.range;
    const bracketed = /\[\s*$/.test(text.slice(Math.max(0, first.start - 8), first.start));
    const all = tanks.map((tank) => tank.id).join(', ');
    const others = tanks.filter((tank) => !touched.includes(tank.id)).map((tank) => tank.label);
    return [finding(design, 'event-in-one-tank', event.range, { what: event.what, tanks: tanks.filter((tank) => touched.includes(tank.id)).map((tank) => tank.label), others }, [
      fix('event-in-all', {}, [{ range: { start: first.start, end: last.end }, newText: bracketed ? all : `[${all}]` }]),
    ])];
  });
}

/** Instruments that read all tanks at once have no order. */
const manyAtOnce = /\b(?:channels?|loggers?|sensors|probes|thermometers|meters|each tank|own)\b/i;

/** One instrument carried from tank to tank, always in the same order. */
export function checkOrder(design: Design): Problem[] {
  const { protocol, text } = design;
  if (protocol.orderRule || protocol.tanks.length < 2 || ofRole(protocol, 'control').length === 0 || (protocol.schedule?.slots.length ?? 0) < 2) return [];
  const carried = protocol.measure.find((measure) => {
    const places = measure.in.map((place) => place.value);
    const inTanks = places.length === 0 ? protocol.tanks.length : protocol.tanks.filter((tank) => places.includes(tank.id)).length;
    return inTanks > 1 && measure.scale === null && measure.with !== null && !manyAtOnce.test(measure.with.value);
  });
  if (!carried) return [];
  const [first] = protocol.order;
  const last = protocol.order.at(-1);
  const range = first && last ? { start: first.range.start, end: last.range.end } : carried.idRange;
  const name = first?.value ?? protocol.tanks[0]!.id;
  const start = protocol.schedule!.start;
  const seed = protocol.seed ? [] : [`seed: ${formatDate(start, protocol.zone).replaceAll('-', '')}`];
  return [finding(design, 'same-tank-first', range, { tank: protocol.tanks.find((tank) => tank.id === name)?.label ?? name, instrument: carried.with!.value }, first ? [] : [
    fix('order-alternate', {}, addToPlan(text, protocol, ['order: alternate']), { preferred: true }),
    fix('order-random', {}, addToPlan(text, protocol, ['order: random', ...seed])),
  ])];
}
