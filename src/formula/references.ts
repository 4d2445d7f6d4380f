// What a name in a formula stands for: results, tanks, quantities, events, phases, built-in times; columns and facts after a dot.
import type { SourceRange } from '../problems/problem.ts';
import { exactValue, isFailure, numberValue, toUnit } from '../quantities/value.ts';
import { parseUnit } from '../quantities/units.ts';
import { evaluateNamedResult } from './results.ts';
import { namedTime } from './instants.ts';
import { bareNameKinds, derivedPhases, namedTimes, nearestName, type NamedTime } from './names.ts';
import { groupSeries, placeSeries } from './seriesValues.ts';
import type { Run } from './run.ts';
import type { Expression, FormulaValue } from './types.ts';

type Reference = Extract<Expression, { kind: 'reference' }>;

/** The value of a reference; a problem at its place where there is none. `functionNames` helps with mistyped calls. */
export function resolveReference(run: Run, reference: Reference, functionNames: readonly string[]): FormulaValue | null {
  return reference.parts.length === 1 ? bareName(run, reference.parts[0]!, reference.range, functionNames) : dotted(run, reference);
}

function bareName(run: Run, name: string, range: SourceRange, functionNames: readonly string[]): FormulaValue | null {
  const { protocol, names } = run.context;
  const kinds = bareNameKinds(names, name);
  if (kinds.length > 1) return run.fail('name-used-twice', range, { name, kind: kinds[1]!, other: kinds[0]! });
  switch (kinds[0]) {
    case 'result': return evaluateNamedResult(run, name, range);
    case 'tank': return { type: 'tank', id: name };
    case 'quantity': return { type: 'quantity', id: name };
    case 'event': {
      const events = protocol!.events.filter((event) => event.id === name);
      if (events.length > 1) return run.fail('name-used-twice', range, { name, kind: 'event', other: 'event' });
      return { type: 'event', id: name, instant: events[0]!.at };
    }
    case 'phase': return phase(run, name, range);
    default:
  }
  if ((namedTimes as readonly string[]).includes(name)) {
    const instant = namedTime(run, name as NamedTime, range);
    return instant === null ? null : { type: 'instant', instant };
  }
  if (name === 'standard-pressure') {
    const unit = parseUnit('hPa');
    return unit ? { ...exactValue(1013.25, unit), decimals: 2 } : null;
  }
  const numbered = protocol?.phases.filter((each) => each.id.startsWith(`${name}-`) && /^\d+$/u.test(each.id.slice(name.length + 1))).map((each) => each.id) ?? [];
  if (numbered.length > 0) return run.fail('ambiguous-phase', range, { name, phases: numbered }, numbered.slice(0, 6).map((each) => run.replace(range, each)));
  if ((derivedPhases as readonly string[]).includes(name)) return run.fail('no-such-phase', range, { name });
  if (names.kinds.get(name)?.includes('group')) return run.fail('quantity-after-group', range, { name });
  if (protocol?.measure.some((each) => each.scale?.includes(name))) return { type: 'word', word: name };
  return unknown(run, name, range, functionNames);
}

function phase(run: Run, name: string, range: SourceRange): FormulaValue | null {
  const { phases, schedule } = run.context.protocol!;
  const found = phases.filter((each) => each.id === name);
  if (found.length > 1) return run.fail('name-used-twice', range, { name, kind: 'phase', other: 'phase' });
  const { window } = found[0]!;
  const dark = /^dark(?:-\d+)?$/u.test(name) || (schedule?.lightOff.includes(window.from) ?? false);
  return { type: 'window', from: window.from, to: window.to, phase: name, ...(dark ? { opensAtLightsOff: true } : {}) };
}

function unknown(run: Run, name: string, range: SourceRange, functionNames: readonly string[]): null {
  if (functionNames.includes(name)) return run.fail('function-without-operands', range, { name });
  const known = [...run.context.names.kinds.keys(), ...functionNames];
  const spaced = hyphenMeantAsMinus(run, name);
  if (spaced) return run.fail('unknown-name', range, { name, nearest: spaced }, [run.replace(range, spaced)]);
  const nearest = nearestName(name, known);
  return run.fail('unknown-name', range, { name, nearest: nearest ?? '' }, nearest ? [run.replace(range, nearest, { preferred: true })] : []);
}

/** `a-b` where `a` and `b` are names: a minus without its spaces. */
function hyphenMeantAsMinus(run: Run, name: string): string | null {
  for (let at = name.indexOf('-'); at > 0; at = name.indexOf('-', at + 1)) {
    const left = name.slice(0, at);
    const right = name.slice(at + 1);
    if (run.context.names.kinds.has(left) && run.context.names.kinds.has(right)) return `${left} - ${right}`;
  }
  return null;
}

/** Ids of the tanks that a name before a dot stands for; null when it is no such name. */
export function tanksNamed(run: Run, name: string): { readonly ids: readonly string[]; readonly group: boolean } | null {
  const tanks = run.context.protocol?.tanks ?? [];
  if (name === 'room') return { ids: ['room'], group: false };
  if (name === 'treatment' || name === 'control') return { ids: tanks.filter((tank) => tank.role?.value === name).map((tank) => tank.id), group: true };
  const tank = tanks.find((each) => each.id === name);
  const group = tanks.filter((each) => each.group?.value === name).map((each) => each.id);
  if (tank) return { ids: [tank.id], group: false };
  return group.length > 0 ? { ids: group, group: true } : null;
}

function dotted(run: Run, reference: Reference): FormulaValue | null {
  const [place, quantity] = reference.parts as [string, string];
  const { range, instrument } = reference;
  const placeRange = { start: range.start, end: range.start + place.length };
  const quantityRange = { start: placeRange.end + 1, end: placeRange.end + 1 + quantity.length };
  const { protocol, names, dataset } = run.context;
  const tanks = tanksNamed(run, place);
  if (!tanks) {
    const known = ['room', 'treatment', 'control', ...(protocol?.tanks.flatMap((tank) => [tank.id, tank.group?.value ?? tank.id]) ?? [])];
    const nearest = nearestName(place, known);
    return run.fail('unknown-name', placeRange, { name: place, nearest: nearest ?? '' }, nearest ? [run.replace(placeRange, nearest, { preferred: true })] : []);
  }
  const kinds = names.kinds.get(place) ?? [];
  if (kinds.includes('tank') && kinds.includes('group') && tanks.ids.length > 0) {
    const others = protocol!.tanks.filter((tank) => tank.group?.value === place).map((tank) => tank.id);
    if (others.some((id) => id !== place)) return run.fail('name-used-twice', placeRange, { name: place, kind: 'group', other: 'tank' });
  }
  const measured = protocol?.measure.some((each) => each.id === quantity || each.id.startsWith(`${quantity}@`)) ?? false;
  const logged = tanks.ids.some((id) => [...dataset.series.values()].some((series) => series.place === id && series.quantity === quantity));
  if (measured || logged) {
    return tanks.group ? groupSeries(run, place, tanks.ids, quantity, instrument, range) : placeSeries(run, tanks.ids[0] ?? place, quantity, instrument, range);
  }
  const fact = factOf(run, tanks, quantity);
  if (fact) return fact;
  const facts = protocol?.tanks.filter((tank) => tanks.ids.includes(tank.id)).flatMap((tank) => [...tank.facts.keys()]) ?? [];
  const nearest = nearestName(quantity, [...(protocol?.measure.map((each) => each.id) ?? []), ...facts]);
  return run.fail('unknown-name', quantityRange, { name: quantity, nearest: nearest ?? '' }, nearest ? [run.replace(quantityRange, nearest, { preferred: true })] : []);
}

/** A fact of the tank (`mat.plant-mass`) or its salinity; over a group the mean, where every tank states it. */
function factOf(run: Run, tanks: { readonly ids: readonly string[]; readonly group: boolean }, name: string): FormulaValue | null {
  const all = (run.context.protocol?.tanks ?? []).filter((tank) => tanks.ids.includes(tank.id));
  const values = all.map((tank) => tank.facts.get(name)?.value ?? (name === 'salinity' ? tank.salinity?.value : undefined));
  const first = values[0];
  if (!first || values.some((value) => value === undefined)) return null;
  if (values.length === 1) return first;
  let sum = 0;
  for (const value of values) {
    const same = toUnit(value!, first.unit);
    if (isFailure(same)) return null;
    sum += same.value;
  }
  return numberValue(sum / values.length, first.unit, first.contributions ? new Map(first.contributions) : null);
}
