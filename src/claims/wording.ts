// Words that name a cause in the sentence of a claim, where the plan leaves another explanation open.
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import type { ClaimSyntax, NoteSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { undeclaredDifferences } from '../protocol/derived.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import { claimWords } from '../words/claimWords.ts';
import { languageOf } from '../words/languages.ts';
import type { Phrase } from '../words/phrases.ts';

/**
 * Looks at the sentence around each checked claim. Warns once a word, only where the plan is known to leave another
 * explanation: tanks that differ beyond `differs`, no control, or one tank a side.
 */
export function checkWording(syntax: NoteSyntax, context: FormulaContext): Problem[] {
  const reason = knownConfound(context);
  if (reason === null) return [];
  const problems: Problem[] = [];
  const seen = new Set<number>();
  const { causal, hedged } = claimWords(languageOf(context.protocol?.language));
  const visible = visibleText(syntax);
  for (const claim of syntax.claims) {
    if (claim.form === 'stated') continue;
    const sentence = sentenceAround(visible, claim.range);
    for (const found of visible.slice(sentence.start, sentence.end).matchAll(causal)) {
      const start = sentence.start + found.index;
      if (seen.has(start) || hedged.test(visible.slice(sentence.start, start))) continue;
      seen.add(start);
      problems.push(problem('causal-wording', { start, end: start + found[0].length }, { word: found[0].replace(/\s+/g, ' ').toLowerCase(), reason }));
    }
  }
  return problems;
}

/** Another explanation that the plan is known to leave open; null when none is known. */
function knownConfound(context: FormulaContext): Phrase | null {
  const { protocol } = context;
  if (!protocol || protocol.tanks.length === 0) return null;
  const different = undeclaredDifferences(protocol).map((each) => each.key);
  if (different.length > 0) return ['tanks-also-differ', different.join(', ')];
  const count = (role: string): number => protocol.tanks.filter((tank) => tank.role?.value === role).length;
  const treated = count('treatment');
  const controls = count('control');
  if (treated === 0) return null;
  if (controls === 0) return ['no-control-tank'];
  return treated === 1 && controls === 1 ? ['one-tank-a-side'] : null;
}

/** The note's text with formulas, sources and blocks blanked, so that only what a reader sees is searched. */
export function visibleText(syntax: NoteSyntax): string {
  let text = '';
  let at = 0;
  const hidden: SourceRange[] = [...syntax.blocks.map((block) => block.range), ...syntax.claims.flatMap(hiddenParts)].sort((a, b) => a.start - b.start);
  for (const range of hidden) {
    if (range.start < at) continue;
    text += syntax.text.slice(at, range.start) + syntax.text.slice(range.start, range.end).replace(/[^\n]/g, ' ');
    at = range.end;
  }
  return text + syntax.text.slice(at);
}

function hiddenParts(claim: ClaimSyntax): SourceRange[] {
  const words = toDocumentRange(claim.words, { start: 0, end: claim.words.text.length });
  return [{ start: claim.range.start, end: Math.min(words.start, claim.range.end) }, { start: words.end, end: claim.range.end }].filter((range) => range.end > range.start);
}

function sentenceAround(text: string, claim: SourceRange): SourceRange {
  // No sentence is longer than this; a look at the whole text for each claim would make long notes slow.
  const longest = 3_000;
  const from = Math.max(0, claim.start - longest);
  const before = text.slice(from, claim.start);
  const starts = [...before.matchAll(/[.!?:]["”)\]]?\s+(?=\S)|\n[ \t>]*\n|\n#+ /g)].at(-1);
  const start = from + (starts ? starts.index + starts[0].length : 0);
  const after = text.slice(claim.end, claim.end + longest);
  const stop = /[.!?](?=["”)\]]?(?:\s|$))|\n[ \t>]*\n/.exec(after);
  return { start: Math.min(start, claim.start), end: claim.end + (stop ? stop.index : after.length) };
}
