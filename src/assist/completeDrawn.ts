// Suggestions inside `figure`, `summary` and `limits` blocks: their options, the readings to show, moments.
import type { AssistWords } from '../words/assist.ts';
import type { AskedNote } from './asking.ts';
import { completeFormula } from './completeFormula.ts';
import { seriesNames } from './knownNames.ts';
import { toNote, type BlockPlace } from './place.ts';
import type { Suggestion } from './types.ts';
import { yamlPlace } from './yamlPlace.ts';

const optionsOf: Readonly<Record<string, readonly (keyof AssistWords['optionHelp'])[]>> = {
  figure: ['show', 'from', 'to', 'title', 'caption'],
  limits: ['for'],
};

/** Suggestions at the cursor of a block with options. */
export function completeDrawn(note: AskedNote, place: BlockPlace): Suggestion[] {
  const { protocol } = note;
  const yaml = yamlPlace(place.content.text, place.at);
  if (!yaml || !protocol) return [];
  const offset = toNote(place, place.at);
  const typed = place.content.text.slice(yaml.wordStart, place.at);
  const range = { start: offset - typed.length, end: offset };
  const one = (label: string, kind: Suggestion['kind'], sort: string, rest: Partial<Suggestion> = {}): Suggestion => (
    { label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort, ...rest });
  if (yaml.path.length === 0) {
    return (optionsOf[place.word] ?? []).filter((key) => !yaml.beside.has(key)).map((key, index) => one(key, 'key', String(index), {
      insert: key === 'show' ? 'show: [$0]' : `${key}: $0`, snippet: true, documentation: note.asking.words.optionHelp[key], goesOn: key !== 'title' && key !== 'caption',
    }));
  }
  if (yaml.path.length !== 1 || yaml.at === 'key') return [];
  switch (yaml.path[0]) {
    case 'show': return [
      ...seriesNames(note).filter((each) => note.dataset.series.has(each.name)).map((each, index) => one(each.name, 'series', `0${String(index).padStart(3, '0')}`, { detail: each.detail, documentation: each.documentation })),
      ...protocol.measure.filter((each) => !each.id.includes('@')).map((each) => one(each.id, 'quantity', `1${each.id}`, { detail: each.what ? note.asking.words.quantityWord(each.what.value) : '' })),
      ...protocol.tanks.map((each) => one(each.id, 'tank', `2${each.id}`, { detail: each.label === each.id ? '' : each.label })),
    ];
    case 'from': case 'to': return completeFormula(note, { before: typed, wanted: 'instant', words: null }, offset);
    case 'for': return place.word === 'limits' ? [...new Set(protocol.limits.map((limit) => limit.for))].map((each) => one(each, 'value', each)) : [];
    default: return [];
  }
}
