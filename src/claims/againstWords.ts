// Words around a claim that say something else than its formula: `rose` beside a fall, one tank's name beside another's reading.
// Only the clause of the claim is looked at, and only where it can be read in one way.
import { problem, type Problem } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax, NoteSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { claimWords, type ClaimWords } from '../words/claimWords.ts';
import { languageOf } from '../words/languages.ts';
import type { Tank } from '../protocol/types.ts';
import { everyExpression, partOf } from './formulaShape.ts';
import { readClaimWords } from './claimWords.ts';
import { withoutMarkup } from './markup.ts';
import type { CheckedClaim } from './types.ts';
import { visibleText } from './wording.ts';

/** The visible words of a claim's clause: from the last mark or claim before it to the end of its own words, and the few words after it. */
interface Clause { readonly words: string; readonly next: string }

/** Warnings for claims whose own clause names another direction or another tank than the formula. */
export function checkAgainstWords(syntax: NoteSyntax, claims: readonly CheckedClaim[], context: FormulaContext): Problem[] {
  if (!context.protocol || claims.length === 0) return [];
  const say = claimWords(languageOf(context.protocol.language));
  const names = context.protocol.tanks.filter((tank) => tank.label.trim() !== '').map((tank) => ({ tank, form: say.nameForms(tank.label) }));
  const visible = visibleText(syntax);
  let before = 0;
  return claims.flatMap((claim) => {
    const clause = clauseOf(visible, before, claim.syntax);
    before = claim.syntax.range.end;
    if (claim.syntax.form === 'stated' || claim.state !== 'holds') return [];
    const turned = claim.syntax.form === 'equals' ? otherDirection(claim, clause, say, context) : [];
    return [...turned, ...otherTank(claim, clause, names, say, context)];
  });
}

const longestClause = 300;

function clauseOf(visible: string, previous: number, { range, words }: ClaimSyntax): Clause {
  const inside = toDocumentRange(words, { start: 0, end: words.text.length });
  const from = Math.max(previous, range.start - longestClause);
  const lead = visible.slice(from, range.start);
  const cut = [...lead.matchAll(/[.,;:!?—–()|](?=\s)|\n[ \t>]*\n|\n#+ /gu)].at(-1);
  const start = cut ? cut.index + cut[0].length : 0;
  return { words: `${withoutMarkup(lead.slice(start))} ${withoutMarkup(visible.slice(inside.start, inside.end))}`, next: visible.slice(range.end, range.end + 40) };
}

const upwards: Readonly<Record<string, 1 | -1>> = {
  fall: -1, 'percent-fall': -1, 'steepest-fall': -1, rise: 1, 'percent-rise': 1, 'steepest-rise': 1, change: 1, 'percent-change': 1, rate: 1, slope: 1,
};

/** `rose by 2.27 mg/L` for a fall, and `fell by −2.27 mg/L`, which takes the fall back. */
function otherDirection(claim: CheckedClaim, { words, next }: Clause, say: ClaimWords, context: FormulaContext): Problem[] {
  const found = [...words.matchAll(say.directions)].at(-1) ?? say.directionNouns.exec(next);
  if (!found) return [];
  const { expression } = partOf(claim.syntax.formula, context);
  const inner = expression.kind === 'convert' ? expression.operand : expression;
  const value = claim.evaluation?.value;
  const way = inner.kind === 'call' ? upwards[inner.name] : undefined;
  if (way === undefined || value?.type !== 'number' || value.value === 0) return [];
  const number = readClaimWords(claim.syntax.words.text, context).find((each) => each.kind === 'number');
  const negative = number?.kind === 'number' && number.value < 0;
  const said = (found.groups?.['up'] ? 1 : -1) * (negative ? -1 : 1);
  if (said === Math.sign(value.value) * way) return [];
  return [problem('direction-differs', wordsRange(claim), { word: found[0].trim().toLowerCase().replace(/\s+/g, ' '), formula: oneLine(claim.syntax.formula.text), value: claim.computed ?? '' })];
}

/** A tank of the plan and the pattern that finds its label in a sentence. */
interface NamedTank { readonly tank: Tank; readonly form: RegExp }

/** A clause that names one tank, with a formula over one other. */
function otherTank(claim: CheckedClaim, { words }: Clause, names: readonly NamedTank[], say: ClaimWords, context: FormulaContext): Problem[] {
  const [only, ...more] = names.filter(({ form }) => form.test(words));
  if (!only || more.length > 0 || say.othersNamed.test(words)) return [];
  const tanks = context.protocol?.tanks ?? [];
  const ids = new Set(tanks.map((tank) => tank.id));
  const part = partOf(claim.syntax.formula, context);
  const used = new Set(everyExpression(part, context).flatMap((each) => (each.kind === 'reference' && ids.has(each.parts[0] ?? '') ? [each.parts[0]!] : [])));
  if (used.size !== 1 || used.has(only.tank.id)) return [];
  const other = tanks.find((tank) => used.has(tank.id));
  return [problem('other-tank-named', wordsRange(claim), { named: only.tank.label, used: other?.label ?? '', formula: oneLine(claim.syntax.formula.text) })];
}

const oneLine = (text: string): string => text.trim().replace(/\s+/g, ' ');
const wordsRange = ({ syntax }: CheckedClaim): { start: number; end: number } => toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length });
