// The animals' side of the plan: a rule for when to stop, somebody awake where a limit could be crossed, and steps that can be shown
// to have been taken.
import { fix, type Problem, type SourceRange } from '../problems/problem.ts';
import type { Protocol, Tank } from '../protocol/types.ts';
import { formatDuration } from '../time/text.ts';
import { hour, type Instant } from '../time/instant.ts';
import { wallTimeOf } from '../time/zone.ts';
import { addToEntry, addToPlan } from './planEdits.ts';
import { languageOf } from '../words/languages.ts';
import { saysNone } from '../words/none.ts';
import { planTexts } from '../words/planTexts.ts';
import { finding, sayTime, type Design } from './finding.ts';
import { literal } from '../words/literal.ts';

const withAnimals = (protocol: Protocol): Tank[] => protocol.tanks.filter((tank) => !saysNone(tank.animals?.value));

/** Whether a rule's condition looks at a tank: by its name, its group, its role, or its kind of animal's scale. */
function looksAt(condition: string, tank: Tank): boolean {
  const names = [tank.id, tank.group?.value, tank.role?.value].filter((name): name is string => name != null);
  return names.some((name) => new RegExp(`(?:^|[^\\w-])${literal(name)}\\.`).test(condition));
}

/** Animals in a tank that no stop rule looks at. */
export function checkStopRulesForAnimals(design: Design): Problem[] {
  const { protocol, text } = design;
  const rules = protocol.stopRules.flatMap((rule) => rule.when?.text ?? []);
  return withAnimals(protocol).filter((tank) => !rules.some((rule) => looksAt(rule, tank))).map((tank) => {
    const limit = protocol.limits.find((each) => each.quantity && (each.atLeast ?? each.atMost));
    const level = limit?.atLeast ?? limit?.atMost ?? null;
    const rule = limit?.quantity && level ? `${tank.id}.${limit.quantity.value} ${limit.atLeast ? '<' : '>'} ${level.value.value} ${level.value.unit.symbol}` : null;
    const edits = rule === null || protocol.stopRules.length > 0 ? [] : addToPlan(text, protocol, ['stop if:', `  - when: ${rule}`, `    do: ${planTexts(languageOf(protocol.language)).endTheRun}`]);
    return finding(design, 'animals-without-stop-rule', tank.animals?.range ?? tank.idRange, { tank: tank.label, animals: tank.animals?.value ?? '' },
      [fix('add-stop-rule', { condition: rule ?? '' }, edits, { preferred: true })]);
  });
}

/** Quantities that can turn within a night. Others (salinity, nitrate) take days. */
const quick = new Set(['dissolved oxygen', 'oxygen saturation', 'water temperature', 'carbon dioxide']);
/** Longest stretch of a night without a look that the check lets pass. Common practice, no source. */
const longestSleep = 2 * hour;
const isNight = (instant: Instant, protocol: Protocol): boolean => { const { hour: clock } = wallTimeOf(instant, protocol.zone); return clock >= 23 || clock < 6; };

/** A limit or stop rule on something quick, animals in the tanks, and hours of the night without a planned reading. */
export function checkAwake(design: Design): Problem[] {
  const { protocol } = design;
  const { schedule } = protocol;
  if (!schedule || schedule.slots.length === 0 || withAnimals(protocol).length === 0) return [];
  const watched = protocol.measure.filter((measure) => quick.has(measure.what?.value ?? '')).map((measure) => measure.id.split('@')[0]!);
  const limit = protocol.limits.find((each) => each.quantity !== null && watched.includes(each.quantity.value));
  const rule = protocol.stopRules.find((each) => each.when && watched.some((id) => each.when!.text.includes(`.${id}`)));
  const place: SourceRange | undefined = rule?.range ?? limit?.range;
  if (!place) return [];
  const gap = unwatchedNight(protocol, schedule.slots);
  if (!gap) return [];
  const quantity = limit?.quantity?.value ?? watched.find((id) => rule?.when?.text.includes(`.${id}`)) ?? '';
  return [finding(design, 'limit-while-asleep', place, { quantity, from: sayTime(gap.from, protocol), to: sayTime(gap.to, protocol), length: formatDuration(gap.to - gap.from) })];
}

/** The first pair of neighbouring readings more than two hours apart with night between them. */
function unwatchedNight(protocol: Protocol, slots: readonly Instant[]): { from: Instant; to: Instant } | null {
  for (let index = 1; index < slots.length; index += 1) {
    const from = slots[index - 1]!;
    const to = slots[index]!;
    if (to - from <= longestSleep) continue;
    for (let at = from + hour / 2; at < to; at += hour / 2) if (isNight(at, protocol)) return { from, to };
  }
  return null;
}

/** Steps that nobody could show to have worked. */
export function checkEqualiseSteps(design: Design): Problem[] {
  const { protocol, text } = design;
  const [one, other] = protocol.tanks;
  return protocol.equalise.filter((step) => !step.accept && !step.done).map((step) => {
    const named = protocol.measure.find((measure) => measure.what && measure.unit && step.step.toLowerCase().includes(measure.what.value.replace(/^(?:water|dissolved) /, '')));
    const amount = named?.accuracy && named.accuracy.unit.kind !== 'percentage' && named.unit ? named.accuracy.value * named.accuracy.unit.factor / named.unit.factor : null;
    const condition = named && one && other && amount ? `abs(${one.id}.${named.id} - ${other.id}.${named.id}) <= ${Number((2 * amount).toPrecision(3))} ${named.unit!.symbol}` : null;
    return finding(design, 'equalise-without-condition', step.range, { step: step.step },
      condition === null ? [] : [fix('add-condition', { condition }, addToEntry(text, step.range, `accept: ${condition}`))]);
  });
}
