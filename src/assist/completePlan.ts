// Suggestions inside the plan: keys that may stand here and do not yet, values by the key's type, all from the one schema.
import { problemCodes, type ProblemCode } from '../problems/codes.ts';
import { describeKey } from '../protocol/describedKeys.ts';
import { protocolSchema, schemaAt, schemaKey, type SchemaKey } from '../protocol/schema.ts';
import { allDifferences } from '../protocol/derived.ts';
import type { Protocol } from '../protocol/types.ts';
import { measureByName, measures } from '../quantities/measures.ts';
import { parseUnit } from '../quantities/units.ts';
import { quantityMeans } from '../words/quantityHelp.ts';
import { reasonMarkdown } from '../words/reasons.ts';
import type { AskedNote, Asking } from './asking.ts';
import { completeFormula, units } from './completeFormula.ts';
import { quantityHelp, tankHelp } from './knownNames.ts';
import { toNote, type BlockPlace } from './place.ts';
import { snippetText, stop, type Suggestion } from './types.ts';
import { yamlPlace, type YamlPlace } from './yamlPlace.ts';

/** Suggestions at the cursor of a `protocol` block. */
export function completePlan(note: AskedNote, place: BlockPlace): Suggestion[] {
  const { text } = place.content;
  const yaml = yamlPlace(text, place.at);
  if (!yaml) return [];
  const offset = toNote(place, place.at);
  const entry = yaml.path.length === 0 ? protocolSchema : schemaAt(yaml.path);
  if (!entry) return [];
  const typed = text.slice(yaml.wordStart, place.at);
  const holdsKeys = entry.type === 'map' || entry.type === 'named';
  if (yaml.at === 'key' || (yaml.at === 'item' && holdsKeys)) {
    return holdsKeys ? keys(entry, yaml, { start: offset - typed.length, end: offset }, !place.content.pieces.some((piece) => piece.document !== piece.offset + place.content.pieces[0]!.document), note.asking) : [];
  }
  if (yaml.at === 'value' && holdsKeys) return [];
  return values(note, entry, yaml, typed, offset);
}

type Range = Suggestion['range'];

/** Keys of a map that do not stand there yet, in the order of the schema. `plain`: new lines need no container marks. */
function keys(entry: SchemaKey, yaml: YamlPlace, range: Range, plain: boolean, asking: Asking): Suggestion[] {
  const needsDash = entry.list !== undefined && !yaml.inList && !yaml.flow;
  if (entry.type === 'named') {
    const made = entry.entry!;
    return [{
      label: made.key, kind: 'key', insert: namedSnippet(made, yaml, plain, asking.words), snippet: true, range, detail: asking.words.shared.newName, documentation: help(made, asking), sort: '0', goesOn: false,
    }];
  }
  return (entry.keys ?? []).flatMap((key, index): Suggestion[] => {
    if (yaml.beside.has(key.key)) return [];
    const dash = needsDash ? '- ' : '';
    return [{
      label: key.key, kind: 'key', insert: `${dash}${snippetText(key.key)}:${behindKey(key, yaml, plain)}`, snippet: true, range,
      detail: key.example.includes('\n') ? '' : key.example, documentation: help(key, asking), sort: `${key.required ? 0 : 1}${String(index).padStart(3, '0')}`, goesOn: key.type !== 'text',
    }];
  });
}

/** What follows a key: a space, or the next line where it holds lines of its own. */
function behindKey(key: SchemaKey, yaml: YamlPlace, plain: boolean): string {
  const lines = (key.type === 'map' || key.type === 'named') && !yaml.flow && plain;
  if (!lines) return ' $0';
  return key.list === undefined ? '\n  $0' : '\n  - $0';
}

function namedSnippet(made: SchemaKey, yaml: YamlPlace, plain: boolean, { fillers }: Asking['words']): string {
  if (made.key === 'TANK' && plain && !yaml.flow) return `${stop(1, fillers.tank)}:\n  role: \${2|treatment,control|}\n  label: ${stop(3, fillers.label)}\n  size: ${stop(4, '50 x 30 x 32 cm')}\n  water depth: ${stop(5, '28 cm')}`;
  if (made.key === 'QUANTITY') return `${stop(1, 'DO')}: {what: ${stop(2, 'dissolved oxygen')}, unit: ${stop(3, 'mg/L')}, with: ${stop(4, fillers.instrument)}, accuracy: ${stop(5, '0.1 mg/L')}}`;
  return `${stop(1, made.key.toLowerCase())}: ${stop(2, made.example.trim().split('\n')[0]!)}`;
}

const help = (key: SchemaKey, { language }: Asking): string => `${describeKey(language, key)}${key.example === '' ? '' : `\n\n\`\`\`yaml\n${key.key}:${key.example.startsWith('\n') ? '' : ' '}${key.example}\n\`\`\``}`;

/** Values by the type of the key. */
function values(note: AskedNote, entry: SchemaKey, yaml: YamlPlace, typed: string, offset: number): Suggestion[] {
  const { protocol } = note;
  const range = { start: offset - typed.length, end: offset };
  const one = (label: string, kind: Suggestion['kind'], sort: string, rest: Partial<Suggestion> = {}): Suggestion => (
    { label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort: `${sort}${label}`, ...rest });
  const tanks = (): Suggestion[] => (protocol?.tanks ?? []).filter((tank) => tank.id !== yaml.path.at(-2)).map((tank) => one(tank.id, 'tank', '0', { detail: tank.label === tank.id ? '' : tank.label, documentation: tankHelp(tank) }));
  switch (entry.type) {
    case 'choice': case 'yes-no': return (entry.values ?? []).map((value, index) => one(value, 'value', String(index)));
    case 'measure': return measures.map((each) => one(each.name, 'value', '0', { detail: each.unit ?? '', documentation: quantityMeans(note.asking.language, each) }));
    case 'unit': {
      const what = measureByName(yaml.beside.get('what') ?? '');
      const first = what?.units ?? [];
      const all = units(range, null, note.asking, first);
      return what ? all.filter((each) => each.sort.startsWith('0')) : all;
    }
    case 'zone': return zones().map((zone) => one(zone, 'value', '0'));
    case 'tank': return [...tanks(), ...(yaml.path[0] === 'order' ? [one('alternate', 'keyword', '1'), one('random', 'keyword', '1')] : [])];
    case 'place-of-use': return [...tanks(), one('room', 'value', '1')];
    case 'quantity-id': return (protocol?.measure ?? []).map((each) => one(each.id, 'quantity', '0', { detail: each.unit?.print ?? '', documentation: quantityHelp(each, note.asking) }));
    case 'tank-key': return tankKeys(protocol, note.asking).map(({ key, differs, documentation }) => one(key, 'key', differs ? '0' : '1', { documentation }));
    case 'problem-code': return codes(note, one);
    case 'language': return ['en', 'de', 'nl', 'fr', 'es', 'it', 'pt', 'da', 'sv', 'nb', 'fi', 'et', 'pl', 'cs', 'ja', 'zh'].map((code, index) => one(code, 'value', String(index).padStart(2, '0')));
    case 'formula': return completeFormula(note, { before: typed.replace(/^["']/u, ''), wanted: 'condition', words: null }, offset);
    case 'window': return completeFormula(note, { before: typed.replace(/^["']/u, ''), wanted: 'window', words: null }, offset);
    case 'quantity': case 'size': return quantity(note, entry, yaml, typed, offset);
    case 'sampling': case 'duration': return /\d\s*$/u.test(typed) ? units({ start: offset, end: offset }, parseUnit('h'), note.asking) : examples(entry, typed, one, note.asking);
    case 'instant': return instants(note, entry, typed, offset, one);
    default: return examples(entry, typed, one, note.asking);
  }
}

type One = (label: string, kind: Suggestion['kind'], sort: string, rest?: Partial<Suggestion>) => Suggestion;

/** The schema's example, where nothing is typed yet. */
function examples(entry: SchemaKey, typed: string, one: One, { language, words: { shared } }: Asking): Suggestion[] {
  return typed === '' && entry.example !== '' && !entry.example.includes('\n') ? [one(entry.example, 'value', '5', { detail: shared.example, documentation: describeKey(language, entry) })] : [];
}

/** Behind a number its units; before one the example. */
function quantity(note: AskedNote, entry: SchemaKey, yaml: YamlPlace, typed: string, offset: number): Suggestion[] {
  const number = /^\s*[-−]?[\d.]+(?:\s*x\s*[\d.]+)*\s+(\S*)$/u.exec(typed);
  if (!number) {
    const range = { start: offset - typed.length, end: offset };
    return typed === '' ? [{ label: entry.example, kind: 'value', insert: entry.example, snippet: false, range, detail: note.asking.words.shared.example, documentation: describeKey(note.asking.language, entry), sort: '5' }] : [];
  }
  const range = { start: offset - number[1]!.length, end: offset };
  const ownUnit = parseUnit(yaml.beside.get('unit') ?? '');
  const id = yaml.beside.get('quantity');
  const planned = note.protocol?.measure.find((each) => each.id === id)?.unit ?? null;
  const like = ownUnit ?? planned ?? parseUnit(/[^\d\s.]\S*$/u.exec(entry.example)?.[0] ?? '');
  const rate = entry.key === 'rate' && like ? parseUnit(`${like.symbol}/h`) : null;
  const found = units(range, rate ?? like, note.asking, ownUnit ? [ownUnit.symbol, '%'] : rate ? [rate.symbol] : like ? [like.symbol] : []);
  return found;
}

function instants(note: AskedNote, entry: SchemaKey, typed: string, offset: number, one: One): Suggestion[] {
  const schedule = note.protocol?.schedule;
  if (entry.key === 'at' && schedule) return completeFormula(note, { before: typed, wanted: 'instant', words: null }, offset);
  if (entry.key === 'end' && typed === '') return [one('start + 14 h', 'value', '6'), ...examples(entry, typed, one, note.asking)];
  return examples(entry, typed, one, note.asking);
}

/** Keys of tanks; those in which the tanks do differ come first. */
function tankKeys(protocol: Protocol | null, { language }: Asking): { key: string; differs: boolean; documentation: string }[] {
  const tank = schemaKey(schemaAt(['tanks'])!, 'TANK')!;
  const differing = new Set(protocol ? allDifferences(protocol).map((each) => each.key) : []);
  const declared = new Set(protocol?.differs.map((each) => each.value));
  const own = (tank.keys ?? []).filter((key) => !['role', 'group', 'label', 'like', 'facts'].includes(key.key)).map((key) => ({ key: key.key, documentation: describeKey(language, key) }));
  const facts = [...new Set(protocol?.tanks.flatMap((each) => [...each.facts.keys()]))].map((key) => ({ key, documentation: '' }));
  return [...own, ...facts].filter(({ key }) => !declared.has(key)).map((each) => ({ ...each, differs: differing.has(each.key) }));
}

/** Codes that can be accepted: warnings and information; those of this note first. */
function codes(note: AskedNote, one: One): Suggestion[] {
  const here = new Set<string>(note.problems.map((problem) => problem.code));
  const accepted = new Set(note.protocol?.accepted.map((each) => each.value));
  return Object.entries(problemCodes).filter(([code, each]) => each.severity !== 'error' && !accepted.has(code))
    .map(([code, each]) => one(code, 'value', here.has(code) ? '0' : '1', { detail: note.asking.words.severities[each.severity], documentation: reasonMarkdown(code as ProblemCode, note.asking.language) }));
}

/** Names of time zones that the platform knows. */
function zones(): string[] {
  return ['UTC', ...Intl.supportedValuesOf('timeZone')];
}
