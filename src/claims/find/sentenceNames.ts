// The tanks, groups and quantities that the words around a number name: by label, by parts of a label, by role, by group.
import type { FormulaContext } from '../../formula/context.ts';
import type { FindWords } from '../../words/findWords.ts';
import { languageOf } from '../../words/languages.ts';
import { quantityName } from '../../words/quantities.ts';
import { formPattern, related, wordsIn, wordsOf } from './wordForms.ts';
import type { WeightAt } from './types.ts';

interface PlaceWords { readonly id: string; readonly phrases: readonly string[]; readonly tokens: readonly { readonly text: string; readonly weight: number }[] }

/** Words of a text that can name something; of a word that is put together with a noun of ours, what it is put together with. */
function tokensOf(text: string, { emptyWords, labelParts }: FindWords): string[] {
  return wordsOf(text.toLowerCase()).map((each) => (labelParts ? each.text.replace(labelParts, '') : each.text))
    .filter((each) => !emptyWords.includes(each) && !/^\d+$/u.test(each) && each.length > 2);
}

function placesOf(context: FormulaContext): PlaceWords[] {
  const tanks = context.protocol?.tanks ?? [];
  const say = wordsIn(context);
  const found: PlaceWords[] = tanks.map((tank) => {
    const strong = [...tokensOf(tank.id, say), ...tokensOf(tank.label, say)];
    const weak = ['plants', 'animals', 'equipment'].flatMap((key) => tokensOf(tank.written.get(key)?.value ?? '', say)).filter((each) => !strong.includes(each));
    const alone = tanks.filter((other) => other.role?.value === tank.role?.value).length === 1;
    const role = alone && tank.role ? say.roles[tank.role.value].alone : [];
    return { id: tank.id, phrases: [tank.label.toLowerCase(), tank.id.toLowerCase(), ...role], tokens: [
      ...[...new Set(strong)].map((text) => ({ text, weight: 1 })), ...[...new Set(weak)].map((text) => ({ text, weight: 0.6 }))] };
  });
  const roles = ['treatment', 'control'] as const;
  for (const role of roles) {
    if (tanks.filter((tank) => tank.role?.value === role).length < 2) continue;
    found.push({ id: role, phrases: say.roles[role].several, tokens: [] });
  }
  for (const group of new Set(tanks.flatMap((tank) => tank.group?.value ?? []))) {
    if (tanks.some((tank) => tank.id === group)) continue;
    found.push({ id: group, phrases: [group.toLowerCase()], tokens: tokensOf(group, say).map((text) => ({ text, weight: 1 })) });
  }
  if ([...context.dataset.series.values()].some((series) => series.place === 'room')) found.push({ id: 'room', phrases: say.room, tokens: [] });
  return found;
}

export function readPlaces(words: string, number: { start: number; end: number; sentence: number }, weightAt: WeightAt, context: FormulaContext): { places: Map<string, number>; nearest: string | null } {
  const known = placesOf(context);
  const say = wordsIn(context);
  const empty = new Set(say.emptyWords);
  const places = new Map<string, number>();
  const seen: { id: string; start: number; end: number; weight: number }[] = [];
  const see = (id: string, start: number, end: number, share: number): void => {
    const weight = weightAt(start, end) * share;
    if (weight <= 0) return;
    seen.push({ id, start, end, weight });
    if (weight > (places.get(id) ?? 0)) places.set(id, weight);
  };
  let left = words;
  // Whole labels first, the longest before its parts: `tank without gas` is not `gas`.
  const phrases = known.flatMap(({ id, phrases: all }) => all.map((phrase) => ({ id, phrase }))).filter(({ phrase }) => phrase !== '').sort((a, b) => b.phrase.length - a.phrase.length);
  for (const { id, phrase } of phrases) {
    for (const each of left.matchAll(formPattern([phrase]))) see(id, each.index, each.index + each[0].length, 1);
    left = left.replace(formPattern([phrase]), (found) => ' '.repeat(found.length));
  }
  numberedTanks(left, context, see);
  for (const word of wordsOf(left)) {
    if (empty.has(word.text)) continue;
    const owners = known.flatMap(({ id, tokens }) => { const token = tokens.find((each) => related(word.text, each.text, say)); return token ? [{ id, weight: token.weight }] : []; });
    // A word that several tanks share tells none of them.
    if (owners.length === 1) see(owners[0]!.id, word.start, word.end, owners[0]!.weight);
    // A group's name hides in the names of its tanks: `the littered tanks`.
    else if (owners.length > 1) {
      const group = owners.find((each) => context.protocol?.tanks.some((tank) => tank.group?.value === each.id) ?? false);
      if (group) see(group.id, word.start, word.end, group.weight);
    }
  }
  // "It" is the tank that the sentence before spoke of last.
  if (say.pronoun.test(words.slice(number.sentence, number.start)) && !seen.some((each) => each.start >= number.sentence && each.end <= number.start)) {
    const spoken = seen.filter((each) => each.end <= number.sentence).sort((a, b) => b.end - a.end)[0];
    if (spoken) { spoken.weight = 0.9; places.set(spoken.id, 0.9); return { places, nearest: spoken.id }; }
  }
  const before = seen.filter((each) => each.end <= number.start && each.weight > 0.3).sort((a, b) => b.end - a.end)[0];
  const after = seen.filter((each) => each.start >= number.end && each.weight > 0.3).sort((a, b) => a.start - b.start)[0];
  return { places, nearest: before && (!after || before.weight >= after.weight) ? before.id : after?.id ?? before?.id ?? null };
}

/** `tanks 1 and 2`, `tanks 1, 2 and 4` for labels such as `tank 1`. */
function numberedTanks(words: string, context: FormulaContext, see: (id: string, start: number, end: number, share: number) => void): void {
  const { plural, conjunctions } = wordsIn(context);
  for (const tank of context.protocol?.tanks ?? []) {
    const label = /^(\p{L}+)\s+(\d+|[a-z])$/iu.exec(tank.label);
    if (!label) continue;
    const list = new RegExp(`(?<![\\p{L}])${label[1]!.toLowerCase()}${plural}\\s+((?:(?:\\d+|[a-z])(?:\\s*,\\s*|\\s*(?:${conjunctions})\\s*)?)+)`, 'gu');
    for (const each of words.matchAll(list)) {
      if (new RegExp(`(?<![\\p{L}\\p{N}])${label[2]!.toLowerCase()}(?![\\p{L}\\p{N}])`, 'u').test(each[1]!)) see(tank.id, each.index, each.index + each[0].length, 1);
    }
  }
}

export function readQuantities(words: string, weightAt: WeightAt, context: FormulaContext): Map<string, number> {
  const { quantityForms } = wordsIn(context);
  const language = languageOf(context.protocol?.language);
  const found = new Map<string, number>();
  const look = (id: string, forms: readonly string[]): void => {
    for (const each of words.matchAll(formPattern(forms))) {
      const weight = weightAt(each.index, each.index + each[0].length);
      if (weight > (found.get(id) ?? 0)) found.set(id, weight);
    }
  };
  for (const measure of context.protocol?.measure ?? []) {
    const what = measure.what?.value ?? '';
    const forms = [measure.id.toLowerCase(), what.toLowerCase(), quantityName(what, language).toLowerCase(), ...(quantityForms[what] ?? [])].filter((each) => each !== '' && each.length > 1);
    if (forms.length > 0) look(measure.id.split('@')[0]!, forms);
  }
  for (const derived of ['saturation', 'deficit', 'solubility', 'carbon-dioxide', 'un-ionised-ammonia']) look(derived, [derived, ...(quantityForms[derived] ?? [])]);
  return found;
}
