// Cautions chosen from what the plan mentions: what can hurt a keeper or an animal in just this experiment.
// They are reminders, not instructions: local rules and the makers' manuals go before them.
import type { Protocol } from '../protocol/types.ts';
import { wallTimeOf } from '../time/zone.ts';

export type CautionId = 'mains' | 'gas' | 'chemicals' | 'animals' | 'release' | 'night' | 'light' | 'heat' | 'glass';
export interface Caution { readonly id: CautionId; readonly title: string; readonly text: string }

const cautions: Readonly<Record<CautionId, Caution>> = {
  mains: {
    id: 'mains', title: 'Mains electricity beside water',
    text: 'Run every plug through a residual-current device of 30 mA or less and test it, hang each cable in a drip loop below its socket, and unplug before hands go into the water.',
  },
  gas: {
    id: 'gas', title: 'Pressurised gas',
    text: 'Chain the cylinder upright, check the regulator and every joint with soapy water, and air the room: carbon dioxide gathers low and gives no warning.',
  },
  chemicals: {
    id: 'chemicals', title: 'Chemicals and reagents',
    text: 'Read the safety data sheet first, wear gloves and goggles, label every bottle, keep reagents out of the tanks, and collect used ones as your local rules ask.',
  },
  animals: {
    id: 'animals', title: 'Live animals',
    text: 'Look at the animals at every reading, end the run as soon as a stop rule or their behaviour asks for it, and call a veterinarian when they look unwell. Experiments with vertebrates, cephalopods and decapod crustaceans can need a licence: find out before you start.',
  },
  release: {
    id: 'release', title: 'Nothing goes into open water',
    text: 'Never pour plants, animals or tank water into ditches, ponds or drains that lead there. Some floating plants may not be kept or passed on in some countries.',
  },
  night: {
    id: 'night', title: 'Working at night, alone',
    text: 'Keep the floor dry and the way lit, tell somebody, and leave a reading out rather than take a risk: a missing reading is written “-” and does no harm.',
  },
  light: {
    id: 'light', title: 'Ultraviolet and strong lamps',
    text: 'Switch ultraviolet lamps off before opening their housing, and do not look into strong lamps.',
  },
  heat: {
    id: 'heat', title: 'Heaters',
    text: 'Switch a heater off a quarter of an hour before it leaves the water, and do not rely on one thermostat alone to keep animals safe.',
  },
  glass: {
    id: 'glass', title: 'Weight',
    text: 'A litre of water weighs a kilogram: check the stand and the floor, and never move a filled tank.',
  },
};

/** Everything the plan says in words, in lower case. */
function planWords(protocol: Protocol): string {
  const parts: string[] = [];
  const add = (text: string | null | undefined): void => { if (text) parts.push(text); };
  for (const tank of protocol.tanks) for (const [key, text] of tank.written) if (key !== 'animals' && key !== 'label') add(text.value);
  for (const tank of protocol.tanks) add(tank.equipment?.value);
  for (const event of protocol.events) add(event.what);
  for (const measure of protocol.measure) add(measure.with?.value);
  for (const step of protocol.equalise) { add(step.step); add(step.done?.value); }
  for (const rule of protocol.stopRules) add(rule.do);
  add(protocol.question?.value);
  add(protocol.title?.value);
  return parts.join(' \n ').toLowerCase();
}

const none = /^(?:none|no|nothing|-|–|0)\b/i;
const kept = (text: string | null | undefined): boolean => text !== null && text !== undefined && text.trim() !== '' && !none.test(text.trim());

/** Cautions for a plan, the gravest first. */
export function cautionsOf(protocol: Protocol): Caution[] {
  const words = planWords(protocol);
  const has = (pattern: RegExp): boolean => pattern.test(words);
  const found: CautionId[] = [];
  const lamps = protocol.schedule !== null && (protocol.schedule.lightOff.length > 0 || protocol.schedule.lightOn.length > 0);
  if (lamps || has(/\b(?:heaters?|heating|pumps?|lamps?|leds?|lights?|filters?|chillers?|mains|skimmers?|powerheads?|stirrers?|fans?|thermostats?|sockets?)\b/)) found.push('mains');
  if (has(/\b(?:co2|carbon dioxide|cylinders?|regulators?|pressuri[sz]ed|compressed|nitrogen gas|oxygen gas|bottled gas|solenoid)\b/)) found.push('gas');
  if (has(/\b(?:reagents?|titrat\w*|test kits?|drop tests?|acids?|hydrochloric|sulph?uric|bleach|chlorine|hypochlorite|permanganate|peroxide|ammonium|ammonia chloride|formalin|copper|medication|dos(?:e|ed|ing)|winkler|sodium \w+|calcium chloride)\b/)) found.push('chemicals');
  if (protocol.tanks.some((tank) => kept(tank.animals?.value))) found.push('animals');
  if (has(/\b(?:uv|ultraviolet|metal halide|laser)\b/)) found.push('light');
  if (has(/\bheaters?\b/)) found.push('heat');
  if (protocol.tanks.some((tank) => kept(tank.plants?.value) || kept(tank.animals?.value))) found.push('release');
  const slots = protocol.schedule?.slots ?? [];
  if (slots.some((slot) => { const { hour } = wallTimeOf(slot, protocol.zone); return hour >= 23 || hour < 6; })) found.push('night');
  return found.map((id) => cautions[id]);
}

export const cautionPreface = 'Chosen from what this plan mentions; they are reminders and not complete. The rules of your country, your landlord and the makers of your equipment go before them.';
