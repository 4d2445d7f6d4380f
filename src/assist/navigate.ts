// Definition, references, highlights and rename of the names of a note.
import { functionByName } from '../formula/catalogue.ts';
import type { Note } from '../experiment/types.ts';
import { isName, isReserved } from '../protocol/names.ts';
import type { SourceRange, TextEdit } from '../problems/problem.ts';
import type { NameKind, RenameRefusal } from '../words/assist.ts';
import { namePlaces, type NamePlace } from './names.ts';
import { walkPlan } from './planWalk.ts';

export interface Refusal { readonly refusal: RenameRefusal; readonly args: { readonly name: string; readonly other?: NameKind } }
export interface Renaming { readonly range: SourceRange; readonly name: string }

/** The name under an offset; at a seam the one that starts there. */
export function nameAt(places: readonly NamePlace[], offset: number): NamePlace | null {
  const near = places.filter((each) => each.range.start <= offset && offset <= each.range.end);
  return near.find((each) => each.range.start <= offset && offset < each.range.end) ?? near[0] ?? null;
}

const same = (a: NamePlace, b: NamePlace): boolean => a.kind === b.kind && a.name === b.name;

/** Where the name under the offset is declared: in the plan, in a `values` block; for words of the language, the key they come from. */
export function definitions(note: Note, offset: number): { readonly origin: SourceRange; readonly targets: readonly SourceRange[] } | null {
  const places = namePlaces(note);
  const at = nameAt(places, offset);
  if (!at) return null;
  const declared = places.filter((each) => each.declares && same(each, at)).map((each) => each.range);
  const targets = declared.length > 0 ? declared : wordSource(note, at);
  return targets.length > 0 ? { origin: at.range, targets } : null;
}

/** The key of the plan that a word such as `light-off` or `dark` comes from. */
function wordSource(note: Note, { kind, name }: NamePlace): SourceRange[] {
  if (kind !== 'word') return [];
  const bare = name.replace(/-\d+$/u, '');
  const key = ['light-off', 'baseline', 'dark'].includes(bare) ? 'light off' : ['light-on', 'recovery'].includes(bare) ? 'light on'
    : bare === 'start' || bare === 'end' ? bare : ['sunrise', 'sunset', 'dawn', 'dusk'].includes(bare) ? 'latitude' : null;
  const top = key === 'latitude' ? 'place' : 'schedule';
  return walkPlan(note).keys.filter((each) => each.path.length === 2 && each.path[0] === top && each.key === key).map((each) => each.keyRange);
}

/** Every place of the name under the offset. */
export function references(note: Note, offset: number): NamePlace[] {
  const places = namePlaces(note);
  const at = nameAt(places, offset);
  return at ? places.filter((each) => same(each, at)) : [];
}

/** What would be renamed at the offset, or why it cannot be. */
export function prepareRename(note: Note, offset: number): Renaming | Refusal {
  const at = nameAt(namePlaces(note), offset);
  if (!at) return { refusal: 'no-name', args: { name: '' } };
  const { name, range } = at;
  if (at.kind === 'word') return { refusal: 'built-in', args: { name } };
  if (at.kind === 'function') return { refusal: 'function', args: { name } };
  const places = references(note, offset);
  const sealed = note.tables.filter((table) => table.sealed).map((table) => note.syntax.blocks[table.block]?.range);
  if (places.some((place) => sealed.some((block) => block && block.start <= place.range.start && place.range.end <= block.end))) return { refusal: 'sealed-readings', args: { name } };
  const { protocol } = note;
  if (protocol?.sealed && at.kind !== 'result') return { refusal: 'sealed-plan', args: { name } };
  return { range, name };
}

/** The edits that give the name under the offset another name everywhere in the note, or why that cannot be. */
export function rename(note: Note, offset: number, newName: string): { readonly edits: readonly TextEdit[] } | Refusal {
  const prepared = prepareRename(note, offset);
  if ('refusal' in prepared) return prepared;
  const places = references(note, offset);
  const { kind } = places[0]!;
  const name = newName.trim();
  if (name === prepared.name) return { edits: [] };
  if (!isName(name) || name.endsWith('-')) return { refusal: 'not-a-name', args: { name } };
  if (kind !== 'quantity' && kind !== 'fact' && (isReserved(name) || functionByName(name) !== null)) return { refusal: 'reserved', args: { name } };
  const taken = takenBy(note, name);
  if (taken) return { refusal: 'taken', args: { name, other: taken } };
  return { edits: places.map((place) => ({ range: place.range, newText: name })) };
}

/**
 * The places of a named result that may be edited as one while typing; empty for other names. Only a result is the note's own
 * label: tanks, quantities, events and phases also stand in tables, seals and repeats, where a half-typed name does harm.
 */
export function linkedPlaces(note: Note, offset: number): readonly SourceRange[] {
  const at = nameAt(namePlaces(note), offset);
  return at?.kind === 'result' && !('refusal' in prepareRename(note, offset)) ? references(note, offset).map((place) => place.range) : [];
}

function takenBy(note: Note, name: string): NameKind | null {
  const kind = note.context.names.kinds.get(name)?.[0];
  if (kind) return kind;
  return note.protocol?.tanks.some((tank) => tank.facts.has(name)) ? 'fact' : null;
}
