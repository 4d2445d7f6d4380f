// Cautions chosen from what the plan mentions: what can hurt a keeper or an animal in just this experiment.
// They are reminders, not instructions: local rules and the makers' manuals go before them.
import { languageOf } from '../words/languages.ts';
import { beginsWithNone } from '../words/none.ts';
import { cautionWords, mentions, type CautionWords } from '../words/page.ts';
import type { Protocol } from '../protocol/types.ts';
import { wallTimeOf } from '../time/zone.ts';

export type CautionId = keyof CautionWords['cautions'];
export interface Caution { readonly id: CautionId; readonly title: string; readonly text: string }

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

/** Cautions for a plan, the gravest first. */
export function cautionsOf(protocol: Protocol): Caution[] {
  const words = planWords(protocol);
  const language = languageOf(protocol.language);
  const has = (kind: keyof CautionWords['finds']): boolean => mentions(kind, words, language);
  const found: CautionId[] = [];
  const lamps = protocol.schedule !== null && (protocol.schedule.lightOff.length > 0 || protocol.schedule.lightOn.length > 0);
  if (lamps || has('mains')) found.push('mains');
  if (has('gas')) found.push('gas');
  if (has('chemicals')) found.push('chemicals');
  if (protocol.tanks.some((tank) => !beginsWithNone(tank.animals?.value))) found.push('animals');
  if (has('light')) found.push('light');
  if (has('heat')) found.push('heat');
  if (protocol.tanks.some((tank) => !beginsWithNone(tank.plants?.value) || !beginsWithNone(tank.animals?.value))) found.push('release');
  const slots = protocol.schedule?.slots ?? [];
  if (slots.some((slot) => { const { hour } = wallTimeOf(slot, protocol.zone); return hour >= 23 || hour < 6; })) found.push('night');
  const { cautions } = cautionWords(language);
  return found.map((id) => ({ id, ...cautions[id] }));
}
