// A stated claim: its source must be named, and it should not stand in for a quantity that this note measures.
import { problem, type Problem } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { convertible } from '../quantities/units.ts';
import { needsNoUnit } from './compareNumber.ts';
import { readClaimWords } from './claimWords.ts';
import type { CheckedClaim } from './types.ts';

export function checkStated(syntax: ClaimSyntax, context: FormulaContext): CheckedClaim {
  const problems: Problem[] = [];
  const sourced = syntax.source !== null && syntax.source.trim() !== '';
  if (!sourced) problems.push(problem('claim-source-missing', syntax.range));
  const measured = context.protocol?.measure ?? [];
  for (const mention of readClaimWords(syntax.words.text, context)) {
    if (mention.kind !== 'number' || mention.unit === null || needsNoUnit(mention.unit)) continue;
    const unit = mention.unit;
    const quantity = measured.find((each) => each.unit !== null && convertible(each.unit, unit));
    if (!quantity) continue;
    problems.push(problem('stated-measured', toDocumentRange(syntax.words, mention),
      { shown: syntax.words.text.slice(mention.start, mention.end).replace(/\s+/g, ' '), quantity: quantity.what?.value ?? quantity.id }));
    break;
  }
  return { syntax, mark: sourced ? 'stated' : 'unchecked', state: sourced ? 'holds' : 'failed', evaluation: null, computed: null, machine: null, approximate: false, problems };
}
