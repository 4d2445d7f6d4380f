// Suggestions inside blocks with options (`figure`, `summary`, `limits`, `methods`): options, series, moments, functions, and
// the keys of a specification of one's own.
import { facetKinds, figureKeys } from '../experiment/figureBlock.ts';
import { momentFunctions, summaryKeys, windowFunctions } from '../experiment/summaryBlock.ts';
import { specWords } from '../experiment/chartSpec.ts';
import { functionByName } from '../formula/catalogue.ts';
import type { Protocol } from '../protocol/types.ts';
import type { AssistWords } from '../words/assist.ts';
import type { AskedNote } from './asking.ts';
import { completeFormula } from './completeFormula.ts';
import { functionHelp, seriesNames } from './knownNames.ts';
import { toNote, type BlockPlace } from './place.ts';
import type { Suggestion } from './types.ts';
import { yamlPlace, type YamlPlace } from './yamlPlace.ts';

const optionsOf: Readonly<Record<string, readonly string[]>> = { figure: figureKeys, summary: summaryKeys, limits: ['for'], methods: ['checklist'] };
const lists = ['show', 'of'];
const ownWords = ['title', 'caption', 'alt'];

type One = (label: string, kind: Suggestion['kind'], sort: string, rest?: Partial<Suggestion>) => Suggestion;

/** Suggestions at the cursor of a block with options. */
export function completeDrawn(note: AskedNote, place: BlockPlace): Suggestion[] {
  const { protocol } = note;
  const yaml = yamlPlace(place.content.text, place.at);
  if (!yaml || !protocol) return [];
  const offset = toNote(place, place.at);
  const typed = place.content.text.slice(yaml.wordStart, place.at);
  const range = { start: offset - typed.length, end: offset };
  const one: One = (label, kind, sort, rest = {}) => ({ label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort, ...rest });
  if (yaml.path.length === 0) return options(note, place.word, yaml, one);
  if (place.word === 'figure' && yaml.path[0] === 'spec') return specification(yaml, one);
  if (yaml.path.length !== 1 || yaml.at === 'key') return [];
  const formula = (wanted: 'any' | 'instant' | 'window'): Suggestion[] => completeFormula(note, { before: typed.replace(/^["']|^before-after\s+/u, ''), wanted, words: null }, offset);
  switch (`${place.word}.${yaml.path[0]!}`) {
    case 'figure.show': case 'summary.of': return /[(\s]/u.test(typed) ? formula('any') : series(note, protocol, one);
    case 'figure.from': case 'figure.to': case 'summary.from': case 'summary.to': return formula('instant');
    case 'figure.facets': return facetKinds.map((kind, index) => one(kind, 'value', String(index)));
    case 'figure.uncertainty': case 'methods.checklist': return ['yes', 'no'].map((word, index) => one(word, 'value', String(index)));
    case 'summary.rows': return [...rowWords(yaml, typed, one), ...formula(typed.startsWith('before-after ') ? 'instant' : 'window')];
    case 'summary.show': return shown(note, place.content.text, one);
    case 'limits.for': return [...new Set(protocol.limits.map((limit) => limit.for))].map((each) => one(each, 'value', each));
    default: return [];
  }
}

function options(note: AskedNote, word: string, yaml: YamlPlace, one: One): Suggestion[] {
  return (optionsOf[word] ?? []).filter((key) => !yaml.beside.has(key)).map((key, index) => one(key, 'key', String(index).padStart(2, '0'), {
    insert: lists.includes(key) ? `${key}: [$0]` : key === 'spec' ? 'spec:\n  mark: line\n  encoding:\n    x: {field: time}\n    y: {field: value}\n    color: {field: label}$0' : `${key}: $0`,
    snippet: true, documentation: note.asking.words.optionHelp[`${word}.${key}` as keyof AssistWords['optionHelp']], goesOn: !ownWords.includes(key) && key !== 'spec',
  }));
}

function series(note: AskedNote, protocol: Protocol, one: One): Suggestion[] {
  const { words } = note.asking;
  return [
    ...seriesNames(note).filter((each) => note.dataset.series.has(each.name)).map((each, index) => one(each.name, 'series', `0${String(index).padStart(3, '0')}`, { detail: each.detail, documentation: each.documentation })),
    ...protocol.measure.filter((each) => !each.id.includes('@')).map((each) => one(each.id, 'quantity', `1${each.id}`, { detail: each.what ? words.quantityWord(each.what.value) : '' })),
    ...protocol.tanks.map((each) => one(each.id, 'tank', `2${each.id}`, { detail: each.label === each.id ? '' : each.label })),
    ...note.results.filter((each) => each.evaluation.value?.type === 'series').map((each) => one(each.name, 'result', `3${each.name}`, { documentation: `\`${each.formula.text.trim()}\`` })),
  ];
}

/** Words for the rows as a whole; behind `before-after` the moments follow. */
function rowWords(yaml: YamlPlace, typed: string, one: One): Suggestion[] {
  return yaml.inList || /\s/u.test(typed) ? [] : ['phases', 'tanks', 'before-after light-off'].map((word, index) => one(word, 'keyword', `0${index}`));
}

/** Functions that can make a column, those for moments where the rows are moments. */
function shown(note: AskedNote, text: string, one: One): Suggestion[] {
  const rows = /^rows[ \t]*:[ \t]*(\S.*)$/mu.exec(text)?.[1] ?? '';
  const moments = /^\[/u.test(rows) && /\d:\d|light-|start|end|sun|dawn|dusk/u.test(rows) && !rows.includes('..');
  const names = moments ? momentFunctions : windowFunctions;
  return names.map((name, index) => one(name, 'function', String(index).padStart(3, '0'), { documentation: functionHelp(functionByName(name)!, note.asking) }));
}

/** Keys and values of a specification of one's own. */
function specification(yaml: YamlPlace, one: One): Suggestion[] {
  const path = yaml.path.slice(1).filter((key) => key !== 'layer');
  const keys = (words: readonly string[]): Suggestion[] => words.filter((key) => !yaml.beside.has(key)).map((key, index) => one(key, 'key', String(index).padStart(2, '0'), { insert: `${key}: `, goesOn: true }));
  const last = path.at(-1);
  const values = last !== undefined && Object.hasOwn(specWords.values, last) ? specWords.values[last as keyof typeof specWords.values] : null;
  if (values && (yaml.at === 'value' || (yaml.at === 'item' && yaml.inList))) return values.map((value, index) => one(value, 'value', String(index).padStart(2, '0')));
  if (yaml.at === 'value') return [];
  if (path.length === 0) return keys(yaml.path.includes('layer') ? specWords.layer : specWords.top);
  if (path[0] === 'encoding') return keys(path.length === 1 ? specWords.channels : path.length === 2 ? specWords.channel : []);
  return path[0] === 'transform' && path.length === 1 ? keys(specWords.transform) : [];
}
