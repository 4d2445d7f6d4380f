// The methods' first paragraphs: question, tanks, what differs and what is alike, the equal start.
import type { EqualiseCheck, Note } from '../experiment/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import { levelStretch, type LevelStretch } from '../experiment/conditions.ts';
import { parseFormula } from '../formula/parse.ts';
import { plainWords } from '../formula/plainWords.ts';
import type { Protocol, Tank } from '../protocol/types.ts';
import { allDifferences } from '../protocol/derived.ts';
import { saysNone } from '../words/none.ts';
import { inPlaces, inUnits, isLong, momentWords, placeName, plannedDate, quantityName, tanksName, valueWords, withMark, wordsOf } from './facts.ts';
import { readTimes } from './sampling.ts';
import { figure, numberFigure, type RunPieces } from './figures.ts';
import type { Run } from './types.ts';

const degrees = (value: number, protocol: Protocol): string => withMark(String(Number(Math.abs(value).toFixed(4))), protocol);

function describePlace(protocol: Protocol): RunPieces | null {
  const { name, latitude, longitude, elevation } = protocol.place;
  if (!name) return null;
  const { design: designWords } = wordsOf(protocol);
  return designWords.place({
    name: name.value, latitude: latitude ? designWords.latitude(degrees(latitude.value, protocol), latitude.value < 0) : '',
    longitude: longitude ? designWords.longitude(degrees(longitude.value, protocol), longitude.value < 0) : '', elevation: elevation ? valueWords(elevation.value, protocol) : '',
  });
}

export function describeDesign(note: Note, protocol: Protocol): RunPieces[] {
  const { tanks } = protocol;
  const { design: designWords } = wordsOf(protocol);
  const tankName = (tank: Tank): string => placeName(tank.id, protocol);
  const sentences: RunPieces[] = [];
  if (protocol.question) sentences.push(designWords.question(protocol.question.value));
  if (protocol.hypothesis) sentences.push(designWords.hypothesis(protocol.hypothesis.value));
  if (tanks.length === 0) return sentences;
  const place = describePlace(protocol);
  const treated = tanks.filter((tank) => tank.role?.value === 'treatment').map(tankName);
  const controls = tanks.filter((tank) => tank.role?.value === 'control').map(tankName);
  sentences.push(treated.length > 0 ? designWords.comparison({ treated, controls, place }) : designWords.observed({ tanks: tanks.map(tankName), place }));
  sentences.push(...describeSizes(tanks, protocol, note.context), ...describeAlike(protocol));
  return sentences;
}

/** Tanks of the same size together, in the protocol's order. */
function describeSizes(tanks: readonly Tank[], protocol: Protocol, context: FormulaContext): RunPieces[] {
  const groups = new Map<string, Tank[]>();
  for (const tank of tanks) {
    const key = ['size', 'water depth', 'volume'].map((each) => tank.written.get(each)?.value ?? '').join('|');
    groups.set(key, [...(groups.get(key) ?? []), tank]);
  }
  return [...groups.values()].flatMap((alike): RunPieces[] => {
    const [first] = alike;
    if (!first) return [];
    const name = tanksName(alike.map((tank) => tank.id), protocol);
    const several = alike.length > 1;
    const { design: designWords } = wordsOf(protocol);
    const volume = numberFigure(`volume(${first.id})`, context)?.run ?? null;
    if (first.size) {
      const { length, width, height } = first.size;
      const sides = length.unit.symbol === width.unit.symbol && width.unit.symbol === height.unit.symbol
        ? `${[length, width, height].map((side) => valueWords(side, protocol, { withUnit: false })).join(' × ')} ${inUnits(length.unit.print, protocol)}`
        : [length, width, height].map((side) => valueWords(side, protocol)).join(' × ');
      return [designWords.size({ tanks: name, measured: sides, volume, depth: first.waterDepth ? valueWords(first.waterDepth, protocol) : '', several, each: several && alike.length < tanks.length })];
    }
    return volume ? [designWords.volumeOnly({ tanks: name, volume, each: several && alike.length < tanks.length })] : [];
  });
}

const compared = ['plants', 'animals', 'equipment', 'salinity'];
const sizes = new Set(['size', 'water depth', 'volume']);

function describeAlike(protocol: Protocol): RunPieces[] {
  const { tanks } = protocol;
  const { design: designWords, names } = wordsOf(protocol);
  const declared = new Set(protocol.differs.map((each) => each.value));
  const differences = allDifferences(protocol);
  const sides = (key: string): RunPieces => {
    const byText = new Map<string, string[]>();
    for (const tank of tanks) {
      const text = tank.written.get(key)?.value ?? designWords.notStated;
      byText.set(text, [...(byText.get(text) ?? []), tank.id]);
    }
    const shown = (text: string): string => (key === 'running since' ? plannedDate(text, protocol) : text);
    return designWords.difference({ key: names.tankKey(key), sides: [...byText].map(([text, ids]) => ({ text: shown(text), tanks: inPlaces(ids, protocol) })) });
  };
  const meant = differences.filter((each) => declared.has(each.key));
  const other = differences.filter((each) => !declared.has(each.key) && !sizes.has(each.key));
  const sentences: RunPieces[] = [];
  if (meant.length > 0) sentences.push(designWords.differed(meant.map((each) => sides(each.key))));
  else if (tanks.length > 1 && other.length === 0) sentences.push(designWords.nothingDiffers());
  if (other.length > 0) sentences.push(designWords.alsoDiffered(other.map((each) => sides(each.key))));
  const different = new Set(differences.map((each) => each.key));
  const same = compared.filter((key) => !different.has(key) && tanks[0]?.written.has(key)).map((key) => ({ key, text: tanks[0]!.written.get(key)!.value }));
  const none = same.filter((each) => each.text.trim() !== '' && saysNone(each.text));
  const some = same.filter((each) => !none.includes(each));
  const described = some.map(({ key, text }) => ({ key: names.tankKey(key), text }));
  if (some.length > 0) sentences.push(tanks.length > 1 ? designWords.alike(described) : designWords.held(described));
  if (none.length > 0) sentences.push(designWords.without({ keys: none.map((each) => names.tankKey(each.key)), tanks: tanks.length }));
  const since = tanks[0]?.written.get('running since')?.value;
  if (since && !different.has('running since')) {
    sentences.push(designWords.runningSince({ tanks: tanksName(tanks.map((tank) => tank.id), protocol), date: plannedDate(since, protocol), several: tanks.length > 1 }));
  }
  return sentences;
}

export function describeEqualStart(note: Note, protocol: Protocol): RunPieces[] {
  const { equalise } = protocol;
  if (equalise.length === 0) return [];
  const { equal: equalWords } = wordsOf(protocol);
  const lone = equalise.length === 1;
  const stretch = levelStretch(protocol, note.context);
  const steps = equalise.map((step, index) => {
    const check = note.equalise.find((each) => each.step === index) ?? null;
    const rest = step.accept ? describeAccept(step.accept.text, check, protocol, note, stretch)
      : step.done ? equalWords.done<never>(plannedDate(step.done.value, protocol)) : equalWords.unknown<never>();
    return equalWords.step({ number: lone ? null : index + 1, step: step.step, why: step.why, rest });
  });
  return lone ? steps : [equalWords.opening({ steps: equalise.length }), ...steps];
}

/** `abs(a.Q - b.Q) <= x` in words with its largest figure; any other condition as it reads. */
function describeAccept(text: string, check: EqualiseCheck | null, protocol: Protocol, note: Note, stretch: LevelStretch | null): RunPieces {
  const { context } = note;
  const { equal: equalWords } = wordsOf(protocol);
  const { expression } = parseFormula(text);
  const window = stretch ? `, ${stretch.formula}` : '';
  const end = endWords(stretch, protocol, note);
  const holds = check?.holds ?? null;
  const checked = check?.checkedAt.length ?? 0;
  const met = holds === false ? figure(`count(${text.trim()}${window})`, context)?.run ?? null : null;
  const cut = (range: { start: number; end: number }): string => text.slice(range.start, range.end);
  if (expression.kind === 'binary' && (expression.operator === '<=' || expression.operator === '<') && expression.left.kind === 'call' && expression.left.name === 'abs') {
    const inner = expression.left.operands[0];
    if (inner?.kind === 'binary' && inner.operator === '-' && inner.left.kind === 'reference' && inner.right.kind === 'reference'
      && inner.left.parts.length === 2 && inner.left.parts[1] === inner.right.parts[1]) {
      const limit = limitRun(cut(expression.right.range), context, protocol);
      const worst = figure(`max(${cut(expression.left.range)}${window})`, context)?.run ?? null;
      return equalWords.atMost({ quantity: quantityName(inner.left.parts[1]!, protocol), limit, strict: expression.operator === '<', checked, met, worst, holds, end });
    }
  }
  return equalWords.condition({ condition: plainWords(text.trim(), context), checked, met, holds, end });
}

/** The limit of a difference: one of two pH is in pH units. */
function limitRun(text: string, context: FormulaContext, protocol: Protocol): Run | string {
  const run = figure(text, context)?.run;
  if (!run) return withMark(text, protocol);
  return /^pH /.test(run.text) ? { ...run, text: inUnits(run.text.replace(/^pH (.*)$/, '$1 pH units'), protocol) } : run;
}

/** What ends the time in which the tanks have to be level. */
function endWords(stretch: LevelStretch | null, protocol: Protocol, note: Note): string {
  const { end } = wordsOf(protocol).equal;
  if (!stretch) return end.run;
  if (stretch.until === 'light-off') return end.lightsOff;
  if (stretch.until === 'first-reading') return end.firstReading;
  return end.event({ time: momentWords(stretch.until.at, protocol, isLong(protocol, readTimes(note))), what: stretch.until.what });
}
