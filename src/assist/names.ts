// Every place of a name in a note: where it is declared, and where heads, lists, formulas and claims use it.
import type { Note } from '../experiment/types.ts';
import { bareNameKinds, derivedPhases, namedTimes } from '../formula/names.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Expression } from '../formula/types.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import { drawnFormulas, drawnTexts } from './drawnTexts.ts';
import { walkPlan, type PlanText, type PlanWalk } from './planWalk.ts';

export type NameKind = 'tank' | 'group' | 'quantity' | 'fact' | 'event' | 'phase' | 'result' | 'word' | 'function';

export interface NamePlace {
  readonly kind: NameKind;
  readonly name: string;
  readonly range: SourceRange;
  readonly declares: boolean;
}

const nameShape = /[\p{L}][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*/gu;

/** Every name of the note with its places, in order of place. */
export function namePlaces(note: Note): NamePlace[] {
  if (!note.protocol) return [];
  const collector = new NameCollector(note, walkPlan(note));
  return collector.collect();
}

/** The formulas of a note: of claims, named results, the plan, figures and summaries. */
export function formulasOf(note: Note, plan: PlanWalk): MappedText[] {
  return [
    ...note.claims.filter((claim) => claim.mark !== 'stated' && claim.syntax.form !== 'stated').map((claim) => claim.syntax.formula),
    ...note.results.map((result) => result.formula),
    ...plan.texts.filter((each) => each.entry.type === 'formula').map((each) => each.text),
    ...drawnFormulas(note.syntax),
  ];
}

class NameCollector {
  private readonly found: NamePlace[] = [];
  private readonly note: Note;
  private readonly plan: PlanWalk;
  private readonly tanks: ReadonlySet<string>;
  private readonly groups: ReadonlySet<string>;
  private readonly quantities: ReadonlySet<string>;
  private readonly facts: ReadonlySet<string>;

  constructor(note: Note, plan: PlanWalk) {
    this.note = note;
    this.plan = plan;
    const { tanks, measure } = note.protocol!;
    this.tanks = new Set(tanks.map((tank) => tank.id));
    this.groups = new Set(tanks.flatMap((tank) => (tank.group ? [tank.group.value] : [])));
    this.quantities = new Set(measure.map((each) => each.id.split('@')[0]!));
    this.facts = new Set(tanks.flatMap((tank) => [...tank.facts.keys()]));
  }

  collect(): NamePlace[] {
    for (const key of this.plan.keys) {
      const [top, , third] = key.path;
      if (top === 'tanks' && key.path.length === 2) this.add('tank', key.key, key.keyRange, true);
      else if (top === 'tanks' && third === 'facts' && key.path.length === 4) this.add('fact', key.key, key.keyRange, true);
      else if (top === 'measure' && key.path.length === 2) this.add('quantity', key.key.split('@')[0]!, { start: key.keyRange.start, end: key.keyRange.start + key.key.split('@')[0]!.length }, true);
      else if (top === 'phases' && key.path.length === 2) this.add('phase', key.key, key.keyRange, true);
    }
    for (const text of this.plan.texts) this.planText(text);
    for (const table of this.note.tables) for (const column of table.columns) this.dotted(column.place, column.quantity, column.range.start);
    for (const result of this.note.results) this.add('result', result.name, result.nameRange, true);
    for (const formula of formulasOf(this.note, this.plan)) this.formula(formula);
    for (const block of this.note.syntax.blocks) {
      if (block.word === 'figure' || block.word === 'summary') {
        for (const { option, text } of drawnTexts(block)) {
          if (block.word === 'summary' && option === 'show') this.add('function', text.text.trim(), toDocumentRange(text, { start: 0, end: text.text.length }));
          else if (/^[\p{L}][\p{L}\p{N}_.@-]*$/u.test(text.text.trim())) this.shown(text);
        }
      } else if (block.word === 'readings' && /^\s*from:/u.test(block.content.text)) this.fileColumns(block.content);
    }
    const sorted = this.found.sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
    return sorted.filter((each, index) => index === 0 || each.range.start !== sorted[index - 1]!.range.start || each.kind !== sorted[index - 1]!.kind);
  }

  /** Keeps a place where the note's text really has the name. */
  private add(kind: NameKind, name: string, range: SourceRange, declares = false): void {
    if (this.note.text.slice(range.start, range.end) === name) this.found.push({ kind, name, range, declares });
  }

  private planText({ entry, text, path }: PlanText): void {
    const whole = toDocumentRange(text, { start: 0, end: text.text.length });
    switch (entry.type) {
      case 'tank': case 'place-of-use': if (this.tanks.has(text.text)) this.add('tank', text.text, whole); break;
      case 'quantity-id': if (this.quantities.has(text.text)) this.add('quantity', text.text, whole); break;
      case 'tank-key': if (this.facts.has(text.text)) this.add('fact', text.text, whole); break;
      case 'choice': if (entry.key === 'role') this.add('word', text.text, whole, true); break;
      case 'window': case 'instant': case 'sampling': this.words(text); break;
      case 'text':
        if (path[0] === 'events' && path.at(-1) === 'id') this.add('event', text.text, whole, true);
        else if (path[0] === 'tanks' && path.at(-1) === 'group') this.add('group', text.text, whole, true);
        break;
      default:
    }
  }

  /** Names in a time of the plan: `feeding + 1 h..end`. */
  private words(text: MappedText): void {
    for (const match of text.text.matchAll(nameShape)) {
      if (/\d\s*$/u.test(text.text.slice(0, match.index)) || /^T\d/u.test(match[0])) continue;
      this.bare(match[0], toDocumentRange(text, { start: match.index, end: match.index + match[0].length }));
    }
  }

  private bare(name: string, range: SourceRange): void {
    const kind = bareNameKinds(this.note.context.names, name)[0];
    const derived = derivedPhases.some((phase) => name === phase || new RegExp(`^${phase}-\\d+$`, 'u').test(name));
    if (derived) this.add('word', name, range);
    else if (kind === 'result' || kind === 'tank' || kind === 'quantity' || kind === 'event' || kind === 'phase') this.add(kind, name, range);
    else if ((namedTimes as readonly string[]).includes(name.replace(/-\d+$/u, '')) || (namedTimes as readonly string[]).includes(name)) this.add('word', name, range);
  }

  /** `place.quantity` that starts at an offset of the note. */
  private dotted(place: string, quantity: string, start: number): void {
    const end = start + place.length;
    if (this.note.text.slice(start, end + 1 + quantity.length) !== `${place}.${quantity}`) return;
    this.parts([place, quantity], [{ start, end }, { start: end + 1, end: end + 1 + quantity.length }]);
  }

  private parts(names: readonly string[], ranges: readonly SourceRange[]): void {
    const [place, quantity] = names as [string, string];
    const tank = this.note.protocol!.tanks.find((each) => each.id === place);
    if (tank) this.add('tank', place, ranges[0]!);
    else if (this.groups.has(place)) this.add('group', place, ranges[0]!);
    else if (['treatment', 'control', 'room'].includes(place)) this.add('word', place, ranges[0]!);
    if (tank?.facts.has(quantity) && !this.quantities.has(quantity)) this.add('fact', quantity, ranges[1]!);
    else if (this.quantities.has(quantity)) this.add('quantity', quantity, ranges[1]!);
  }

  private shown(text: MappedText): void {
    for (const match of text.text.matchAll(/([\p{L}][\p{L}\p{N}_-]*)(?:\.([\p{L}][\p{L}\p{N}_-]*))?/gu)) {
      const place = (start: number, length: number): SourceRange => toDocumentRange(text, { start: match.index + start, end: match.index + start + length });
      if (match[2]) this.parts([match[1]!, match[2]], [place(0, match[1]!.length), place(match[1]!.length + 1, match[2].length)]);
      else if (this.tanks.has(match[1]!)) this.add('tank', match[1]!, place(0, match[1]!.length));
      else if (this.quantities.has(match[1]!)) this.add('quantity', match[1]!, place(0, match[1]!.length));
      else if (this.groups.has(match[1]!)) this.add('group', match[1]!, place(0, match[1]!.length));
    }
  }

  /** Heads to which columns of a data file are mapped. */
  private fileColumns(content: MappedText): void {
    for (const match of content.text.matchAll(/:[ \t]+([\p{L}][\p{L}\p{N}_-]*)\.([\p{L}][\p{L}\p{N}_-]*)(?=[\s@[,}]|$)/gu)) {
      const start = match.index + match[0].indexOf(match[1]!);
      const middle = start + match[1]!.length;
      this.parts([match[1]!, match[2]!], [toDocumentRange(content, { start, end: middle }), toDocumentRange(content, { start: middle + 1, end: middle + 1 + match[2]!.length })]);
    }
  }

  private formula(formula: MappedText): void {
    const visit = (expression: Expression): void => {
      switch (expression.kind) {
        case 'reference': {
          const { start } = expression.range;
          const [first, second] = expression.parts as [string, string | undefined];
          const place = (from: number, length: number): SourceRange => toDocumentRange(formula, { start: from, end: from + length });
          if (second === undefined) this.bare(first, place(start, first.length));
          else this.parts([first, second], [place(start, first.length), place(start + first.length + 1, second.length)]);
          break;
        }
        case 'call':
          this.add('function', expression.name, toDocumentRange(formula, expression.nameRange));
          expression.operands.forEach(visit);
          for (const option of expression.options) visit(option.value);
          break;
        case 'binary': visit(expression.left); visit(expression.right); break;
        case 'unary': case 'convert': visit(expression.operand); break;
        default:
      }
    };
    visit(parseFormula(formula.text).expression);
  }
}
