// Reads a claim's words with what the plan knows: the language, and labels that hold numbers.
import type { FormulaContext } from '../formula/context.ts';
import type { AnyMention } from './mentions.ts';
import { readMentions } from './readMentions.ts';
import { withoutMarkup } from './markup.ts';
import { literal } from '../words/literal.ts';

/** Names in the plan that are not to be read as numbers when they stand in prose: `tank 2`. */
export function plannedNames(context: FormulaContext): string[] {
  const { protocol } = context;
  if (!protocol) return [];
  return [
    ...protocol.tanks.flatMap((tank) => [tank.id, tank.label, ...(tank.group ? [tank.group.value] : [])]),
    ...protocol.measure.map((each) => each.id),
    ...context.results.map((each) => each.name),
    ...protocol.phases.map((each) => each.id),
    ...protocol.events.flatMap((each) => (each.id ? [each.id] : [])),
  ];
}

export function readClaimWords(words: string, context: FormulaContext): AnyMention[] {
  return readMentions(words, { language: context.protocol?.language ?? 'en', names: plannedNames(context) });
}

/** True when the words hold the name as whole words, whatever its case. */
export function saysName(words: string, name: string): boolean {
  if (name.trim() === '') return false;
  const pattern = literal(name.trim()).replace(/\s+/g, '\\s+');
  return new RegExp(`(?<![\\p{L}\\p{N}])${pattern}(?![\\p{L}\\p{N}])`, 'iu').test(withoutMarkup(words));
}
