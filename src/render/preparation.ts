// What has to be at hand before the run, and what is to be done before the first reading: both follow from the plan.
import { calibrationDays } from '../design/instruments.ts';
import type { Protocol } from '../protocol/types.ts';
import { waterVolume } from '../protocol/derived.ts';
import { formatValue } from '../quantities/format.ts';
import { wallTimeOf } from '../time/zone.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { quantityWords } from '../charts/panels.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { languageOf } from '../words/languages.ts';
import { saysNone } from '../words/none.ts';
import { mentions, planWords } from '../words/page.ts';

export interface Preparation { readonly materials: readonly string[]; readonly steps: readonly string[] }

const nameOf = (protocol: Protocol, id: string): string => protocol.tanks.find((tank) => tank.id === id)?.label ?? id;

/** Texts of a key with the tanks that have them, in order: `sponge filter (both tanks)`. */
function byText(protocol: Protocol, key: string): string[] {
  const tanks = new Map<string, string[]>();
  for (const tank of protocol.tanks) {
    const text = tank.written.get(key)?.value.trim() ?? '';
    if (!saysNone(text)) tanks.set(text, [...(tanks.get(text) ?? []), tank.label]);
  }
  const words = planWords(languageOf(protocol.language));
  return [...tanks].map(([text, labels]) => `${text} (${labels.length === protocol.tanks.length && labels.length > 1 ? words.preparation.every : words.ofTanks(labels)})`);
}

export function preparationOf(protocol: Protocol): Preparation {
  const { schedule, tanks } = protocol;
  const language = languageOf(protocol.language);
  const words = planWords(language).preparation;
  const materials: string[] = [];
  const sizes = new Map<string, { readonly facts: readonly string[]; readonly count: number }>();
  for (const tank of tanks) {
    const volume = waterVolume(tank);
    const facts = [tank.written.get('size')?.value, volume ? words.ofWater(formatValue(volume, { uncertainty: false, decimalMark: decimalMarkOf(protocol.language) })) : null].filter((each): each is string => Boolean(each));
    const known = sizes.get(facts.join());
    sizes.set(facts.join(), { facts, count: (known?.count ?? 0) + 1 });
  }
  for (const { facts, count } of sizes.values()) materials.push(words.tanks(count, facts));
  for (const key of ['equipment', 'plants', 'animals']) materials.push(...byText(protocol, key));
  materials.push(...new Set(protocol.measure.flatMap((measure) => (measure.with ? [words.instrumentFor(measure.with.value, quantityWords(protocol, measure.id))] : []))));
  const lamps = (schedule?.lightOff.length ?? 0) + (schedule?.lightOn.length ?? 0) > 0;
  if (lamps) materials.push(words.timer);
  const slots = schedule?.slots ?? [];
  const night = slots.some((slot) => { const { hour } = wallTimeOf(slot, protocol.zone); return hour >= 23 || hour < 6; });
  materials.push(night ? words.nightTools : words.dayTools);

  const steps: string[] = [];
  const probes = protocol.measure.filter((measure) => measure.scale === null && mentions('probe', measure.with?.value ?? '', language));
  if (probes.length > 0) steps.push(words.calibrate(calibrationDays, [...new Set(probes.map((measure) => measure.with!.value))]));
  if (lamps) steps.push(words.setTimers);
  for (const step of protocol.equalise) if (!step.done) steps.push(`${step.step.replace(/\.$/, '')}.`);
  const order = protocol.orderRule?.value;
  if (order) steps.push(words.readNamedFirst);
  else if (protocol.order.length > 1) steps.push(words.readInOrder(protocol.order.map((tank) => nameOf(protocol, tank.value))));
  for (const action of new Set(protocol.stopRules.flatMap((rule) => rule.do ?? []))) steps.push(words.haveReady(action));
  return { materials, steps };
}

/** Two lists: at hand, and before the first reading. */
export function preparationHtml(protocol: Protocol, open: boolean): Html {
  const { materials, steps } = preparationOf(protocol);
  const words = planWords(languageOf(protocol.language)).preparation;
  const list = (texts: readonly string[]): Html => element('ul', { class: 'evenwater-checklist' }, ...texts.map((text) => element('li', {}, escapeHtml(text))));
  return element('details', { class: 'evenwater-preparation', open },
    element('summary', {}, element('strong', {}, words.summary), escapeHtml(words.counts(materials.length, steps.length))),
    element('p', {}, element('strong', {}, words.atHand)), list(materials),
    ...(steps.length > 0 ? [element('p', {}, element('strong', {}, words.beforeFirst)), list(steps)] : []));
}
