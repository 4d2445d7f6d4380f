// A rename that goes on into the notes that repeat a run: the same tank has the same name there, and the link to the first
// run's plan is renewed, so that a new name alone does not look like another plan.
import type { Note } from '../experiment/types.ts';
import { repeatFacts, repeatsText } from '../protocol/planSeal.ts';
import { protocolDigest } from '../protocol/digest.ts';
import type { TextEdit } from '../problems/problem.ts';
import { rename } from './navigate.ts';
import { namePlaces, type NamePlace } from './names.ts';

/** True where a text may be a repeat of the note in this file. Cheap enough for every note of a workspace. */
export function mayRepeat(text: string, fileName: string): boolean {
  return text.includes('repeats:') && text.includes(fileName);
}

/**
 * What the rename of a name in the first run's note changes in a repeat of it. Empty where the repeat does not use the name,
 * refuses the new one (a sealed plan, a name that is taken), or repeats another state of the plan than the one renamed.
 * @param before the first run's note as it stands
 * @param after the same with the new name
 */
export function renameInRepeat(repeat: Note, before: Note, after: Note, renamed: Pick<NamePlace, 'kind' | 'name'>, newName: string): readonly TextEdit[] {
  const link = repeat.protocol?.repeats;
  const facts = repeat.protocol && repeatFacts(repeat.protocol);
  if (!link || !facts || !before.protocol || !after.protocol) return [];
  const [place] = namePlaces(repeat).filter((each) => each.kind === renamed.kind && each.name === renamed.name);
  if (!place) return [];
  const inPlan = protocolDigest(before.protocol) !== protocolDigest(after.protocol);
  if (inPlan && facts.digest !== null && facts.digest !== protocolDigest(before.protocol)) return [];
  const found = rename(repeat, place.range.start, newName);
  if ('refusal' in found) return [];
  const renewed = repeatsText(after.protocol, facts.name);
  const written = repeat.text.slice(link.range.start, link.range.end);
  // In quotation marks the range holds them or not; only the plain form is rewritten whole.
  const at = written.indexOf(link.value.trim());
  if (!inPlan || facts.digest === null || at < 0) return found.edits;
  const start = link.range.start + at;
  return [...found.edits, { range: { start, end: start + link.value.trim().length }, newText: renewed }];
}
