// The formula under the cursor, while it is being typed: where it starts, and what stands before the cursor in it.
import { schemaAt } from '../protocol/schema.ts';
import { lineAt, placeAt, type BlockPlace, type Place } from './place.ts';
import { yamlPlace } from './yamlPlace.ts';

export interface FormulaPlace {
  /** From the formula's start to the cursor. */
  readonly before: string;
  /** What may stand here as a whole. */
  readonly wanted: 'any' | 'condition' | 'window' | 'instant';
  /** The visible words of the claim that the formula belongs to. */
  readonly words: string | null;
}

/** The formula of a claim in prose: the text from its `{`, and from its separator where there is one. */
export interface ClaimPlace { readonly open: number; readonly words: string; readonly formula: FormulaPlace | null; readonly stated: boolean }

const longestClaim = 2000;

/** The claim that is open at an offset of prose; null where no `{` waits for its `}`. */
export function claimAt(text: string, offset: number): ClaimPlace | null {
  const from = Math.max(0, offset - longestClaim);
  const before = text.slice(from, offset);
  const open = before.lastIndexOf('{');
  if (open < 0 || before[open - 1] === '\\' || before[open - 1] === '{' || /^[{%]/u.test(before.slice(open + 1))) return null;
  const inside = before.slice(open + 1);
  const paragraph = before.slice(Math.max(0, before.lastIndexOf('\n\n', open)), open);
  if ((paragraph.match(/`/gu)?.length ?? 0) % 2 === 1) return null;
  if (/\n[ \t>]*\r?\n/u.test(inside) || /`/u.test(inside)) return null;
  const quoted = inside.replace(/"[^"\n]*(?:"|$)/gu, (string) => '_'.repeat(string.length));
  if (quoted.includes('}')) return null;
  const separator = [...quoted.matchAll(/\s(?:(=)|if)\s/gu)].at(-1);
  const unfilled = /^\s*\?\s*=\s/u.exec(inside);
  const at = unfilled ? unfilled[0].length : separator ? separator.index + separator[0].length : null;
  if (at === null) return { open: from + open, words: inside, formula: null, stated: false };
  const words = unfilled ? '?' : inside.slice(0, separator!.index).trim();
  if (words === '') return null;
  const formula = inside.slice(at);
  const condition = !unfilled && separator![1] === undefined;
  return { open: from + open, words, formula: { before: formula, wanted: condition ? 'condition' : 'any', words }, stated: /^\s*stated\b/u.test(formula) };
}

const valueLine = /^\s*\p{L}[\p{L}\p{N}-]*[ \t]+=[ \t]/u;

/** The formula at a place; null where none is being written. */
export function formulaAt(text: string, offset: number, place: Place = placeAt(text, offset)): FormulaPlace | null {
  if (place.kind === 'prose') {
    const claim = claimAt(text, offset);
    return claim && !claim.stated ? claim.formula : null;
  }
  return place.kind === 'block' ? formulaInBlock(place) : null;
}

function formulaInBlock(place: BlockPlace): FormulaPlace | null {
  const { text } = place.content;
  if (place.word === 'values') {
    const line = lineAt(text, place.at);
    const head = valueLine.exec(line.text);
    if (!head || line.start + head[0].length > place.at || /^\s*#/u.test(line.text)) return null;
    return { before: text.slice(line.start + head[0].length, place.at), wanted: 'any', words: null };
  }
  if (place.word !== 'protocol' && place.word !== 'figure' && place.word !== 'summary') return null;
  const yaml = yamlPlace(text, place.at);
  if (!yaml || yaml.at === 'key') return null;
  const wanted = place.word === 'protocol' ? planFormula(yaml.path) : drawnFormula(place.word, yaml.path);
  if (!wanted) return null;
  let before = text.slice(yaml.wordStart, place.at);
  if (/^["']/u.test(before)) before = before.slice(1);
  if (place.word === 'summary') before = before.replace(/^before-after\s+/u, '');
  return { before, wanted, words: null };
}

function planFormula(path: readonly string[]): FormulaPlace['wanted'] | null {
  switch (schemaAt(path)?.type) {
    case 'formula': return 'condition';
    case 'window': return 'window';
    default: return null;
  }
}

function drawnFormula(word: string, path: readonly string[]): FormulaPlace['wanted'] | null {
  if (path.length !== 1) return null;
  if (path[0] === 'from' || path[0] === 'to') return 'instant';
  if (word === 'summary' && path[0] === 'rows') return 'window';
  return (word === 'figure' && path[0] === 'show') || (word === 'summary' && path[0] === 'of') ? 'any' : null;
}

/** The call around the end of a formula's beginning: function, which operand, and what of the operand is written. */
export interface OpenCall { readonly name: string; readonly index: number; readonly operand: string }

/** The innermost call that is still open at the end of `before`, or null; text in quotation marks is passed over. */
export function openCall(before: string): OpenCall | null {
  const frames: { name: string; index: number; start: number }[] = [];
  for (let i = 0; i < before.length; i += 1) {
    const letter = before[i];
    if (letter === '"') {
      const close = before.indexOf('"', i + 1);
      if (close < 0) break;
      i = close;
    } else if (letter === '(') {
      const name = /([\p{L}][\p{L}\p{N}-]*)\s*$/u.exec(before.slice(0, i))?.[1] ?? '';
      frames.push({ name: ['and', 'or', 'not', 'in', 'if'].includes(name) ? '' : name, index: 0, start: i + 1 });
    } else if (letter === ')') frames.pop();
    else if (letter === ',' && frames.length > 0) {
      const top = frames.at(-1)!;
      top.index += 1;
      top.start = i + 1;
    }
  }
  const top = frames.findLast((frame) => frame.name !== '');
  return top ? { name: top.name, index: top.index, operand: before.slice(top.start) } : null;
}

