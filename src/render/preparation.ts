// What has to be at hand before the run, and what is to be done before the first reading: both follow from the plan.
import { calibrationDays } from '../design/instruments.ts';
import type { Protocol } from '../protocol/types.ts';
import { waterVolume } from '../protocol/derived.ts';
import { formatValue } from '../quantities/format.ts';
import { wallTimeOf } from '../time/zone.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { listWords } from '../charts/panels.ts';

export interface Preparation { readonly materials: readonly string[]; readonly steps: readonly string[] }

const none = /^\s*(?:none|no|nothing|-|–|0)?\s*$/i;
const nameOf = (protocol: Protocol, id: string): string => protocol.tanks.find((tank) => tank.id === id)?.label ?? id;

/** Texts of a key with the tanks that have them, in order: `sponge filter (both tanks)`. */
function byText(protocol: Protocol, key: string): string[] {
  const tanks = new Map<string, string[]>();
  for (const tank of protocol.tanks) {
    const text = tank.written.get(key)?.value.trim() ?? '';
    if (!none.test(text)) tanks.set(text, [...(tanks.get(text) ?? []), tank.label]);
  }
  return [...tanks].map(([text, labels]) => `${text} (${labels.length === protocol.tanks.length && labels.length > 1 ? 'every tank' : listWords(labels, protocol)})`);
}

export function preparationOf(protocol: Protocol): Preparation {
  const { schedule, tanks } = protocol;
  const materials: string[] = [];
  const sizes = new Map<string, number>();
  for (const tank of tanks) {
    const volume = waterVolume(tank);
    const text = [tank.written.get('size')?.value, volume ? `${formatValue(volume, { uncertainty: false })} of water` : null].filter(Boolean).join(', ');
    sizes.set(text, (sizes.get(text) ?? 0) + 1);
  }
  for (const [text, count] of sizes) materials.push(`${count} ${count === 1 ? 'tank' : 'tanks'}${text === '' ? '' : ` (${text}${count > 1 ? ' each' : ''})`}`);
  for (const key of ['equipment', 'plants', 'animals']) materials.push(...byText(protocol, key));
  materials.push(...new Set(protocol.measure.flatMap((measure) => (measure.with ? [`${measure.with.value}, for ${measure.what?.value ?? measure.id}`] : []))));
  const lamps = (schedule?.lightOff.length ?? 0) + (schedule?.lightOn.length ?? 0) > 0;
  if (lamps) materials.push('a timer for the lamps');
  const slots = schedule?.slots ?? [];
  const night = slots.some((slot) => { const { hour } = wallTimeOf(slot, protocol.zone); return hour >= 23 || hour < 6; });
  materials.push(night ? 'a clock with an alarm, a torch, pencil and a printed plan' : 'a clock, pencil and a printed plan');

  const steps: string[] = [];
  const probes = protocol.measure.filter((measure) => measure.scale === null && /\b(?:meter|probe|electrode|sensor|refractometer)\b/i.test(measure.with?.value ?? ''));
  if (probes.length > 0) steps.push(`Calibrate within ${calibrationDays} days of the start: ${listWords([...new Set(probes.map((measure) => measure.with!.value))], protocol)}; write the date under “calibrated”.`);
  if (lamps) steps.push('Set the timers of all lamps to the same times and watch one change.');
  for (const step of protocol.equalise) if (!step.done) steps.push(`${step.step.replace(/\.$/, '')}.`);
  const order = protocol.orderRule?.value;
  if (order) steps.push('Read first the tank that the printed plan names for each time; it changes from one to the next.');
  else if (protocol.order.length > 1) steps.push(`Read in this order: ${listWords(protocol.order.map((tank) => nameOf(protocol, tank.value)), protocol)}.`);
  for (const action of new Set(protocol.stopRules.flatMap((rule) => rule.do ?? []))) steps.push(`Have at hand what the stop rule asks for: ${action.charAt(0).toLowerCase()}${action.slice(1).replace(/\.$/, '')}.`);
  return { materials, steps };
}

/** Two lists: at hand, and before the first reading. */
export function preparationHtml(protocol: Protocol, open: boolean): Html {
  const { materials, steps } = preparationOf(protocol);
  const list = (texts: readonly string[]): Html => element('ul', { class: 'evenwater-checklist' }, ...texts.map((text) => element('li', {}, escapeHtml(text))));
  return element('details', { class: 'evenwater-preparation', open },
    element('summary', {}, element('strong', {}, 'Materials and preparation'), escapeHtml(`: ${materials.length} things, ${steps.length} ${steps.length === 1 ? 'step' : 'steps'}`)),
    element('p', {}, element('strong', {}, 'At hand')), list(materials),
    ...(steps.length > 0 ? [element('p', {}, element('strong', {}, 'Before the first reading')), list(steps)] : []));
}
