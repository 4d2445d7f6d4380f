// How a number was computed, for readers: the mark, the formula in words and as written, the value and the steps.
import type { CheckedClaim } from '../claims/types.ts';
import type { RenderContext } from '../render/context.ts';
import { formulaWords } from '../render/context.ts';
import { postWords } from '../words/post.ts';
import { remarksBehind } from '../words/remarks.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';

const tidy = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** A minus before a number as print has it; hyphens in dates and words stay. */
const withMinus = (text: string): string => text.replace(/(?<![\p{L}\d.,)-])-(?=\d)/gu, '−');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The words that the claim makes the reader see; the computed value where the author left it open. */
export function claimWords(claim: CheckedClaim): string {
  return claim.syntax.form === 'unfilled' ? claim.computed ?? '?' : tidy(claim.syntax.words.text);
}

/** The language whose quotation marks a quote has; none where they are English. */
const quoteMarks = (context: RenderContext): { readonly lang?: string } => (context.language === 'en' ? {} : { lang: context.language });

/** What stands behind a claim, without its steps. */
function explanationHtml(claim: CheckedClaim, context: RenderContext): Html {
  const say = postWords(context.language).working;
  const formula = tidy(claim.syntax.formula.text);
  if (claim.syntax.form === 'stated') {
    return claim.syntax.source ? say.statedAfter(element('cite', {}, escapeHtml(claim.syntax.source))) : say.statedAlone;
  }
  const words = formulaWords(context, formula);
  const code = element('code', {}, escapeHtml(formula));
  const value = claim.syntax.form === 'if' || claim.computed === null ? '' : ` = ${escapeHtml(claim.computed)}${claim.approximate ? ` (${say.about})` : ''}`;
  const said = words === formula || words === claim.computed ? '' : `${element('span', { class: 'words' }, escapeHtml(`${claim.syntax.form === 'if' ? say.standsBecause(words) : capital(words)}.`))} `;
  const result = context.note.results.find((each) => each.name === formula);
  const behind = result && tidy(result.formula.text) !== claim.computed ? say.whichIs(element('code', {}, escapeHtml(tidy(result.formula.text)))) : '';
  return `${said}${code}${behind}${value}`;
}

function stepsHtml(claim: CheckedClaim, context: RenderContext): Html {
  const steps = claim.evaluation?.working ?? [];
  if (steps.length < 2) return '';
  const items = steps.slice(0, 12).map((step) => element('li', {}, element('code', {}, escapeHtml(tidy(step.formula))), escapeHtml(` = ${withMinus(step.value)}`),
    step.readings.length > 1 ? escapeHtml(postWords(context.language).working.fromReadings(step.readings.length)) : ''));
  return element('ul', {}, ...items);
}

/** What a reader should know of how the number came about. */
function remarksHtml(claim: CheckedClaim, context: RenderContext): Html {
  const remarks = remarksBehind(claim.evaluation?.working ?? [], context.language);
  return remarks.length === 0 ? '' : element('ul', { class: 'remarks' }, ...remarks.map((each) => element('li', {}, escapeHtml(withMinus(each)))));
}

/** One entry of the appendix. */
function appendixEntry(claim: CheckedClaim, index: number, context: RenderContext): Html {
  return element('li', { id: `how-${index + 1}`, class: 'how-number' }, element('span', { class: 'n' }, String(index + 1)),
    element('div', {}, element('q', quoteMarks(context), escapeHtml(claimWords(claim))), element('span', { class: 'mark' }, context.words.claim.marks[claim.mark]), element('br', {}),
      explanationHtml(claim, context), ' ', element('a', { href: `#claim-${index + 1}`, 'aria-label': postWords(context.language).working.back(index + 1) }, '↩'), stepsHtml(claim, context), remarksHtml(claim, context)));
}

/** The expandable note below a paragraph: the numbers in it. */
export function workingNote(indexes: readonly number[], context: RenderContext): Html {
  const claims = indexes.map((index) => ({ index, claim: context.note.claims[index] })).filter((each): each is { index: number; claim: CheckedClaim } => each.claim !== undefined);
  if (claims.length === 0) return '';
  const items = claims.map(({ claim, index }) => element('li', {}, `${index + 1}. `, element('q', quoteMarks(context), escapeHtml(claimWords(claim))), ' — ', explanationHtml(claim, context)));
  const stated = claims.every(({ claim }) => claim.syntax.form === 'stated');
  const word = postWords(context.language).working.summary(claims.length, stated);
  return element('details', { class: 'working' }, element('summary', {}, word), element('ol', {}, ...items));
}

/** The appendix: every claim in order, and what the marks mean. */
export function appendixHtml(context: RenderContext): Html {
  const { claims } = context.note;
  if (claims.length === 0) return '';
  const used = new Set(claims.map((claim) => claim.mark));
  const { meanings, heading } = postWords(context.language).working;
  const legend = (Object.keys(meanings) as (keyof typeof meanings)[]).filter((mark) => used.has(mark))
    .map((mark) => element('dt', {}, element('span', { class: `evenwater-claim evenwater-${mark}` }, capital(context.words.claim.marks[mark]))) + element('dd', {}, meanings[mark])).join('');
  return element('section', { class: 'how', 'aria-labelledby': 'how' }, element('h2', { id: 'how' }, heading),
    element('dl', { class: 'legend' }, legend), element('ol', {}, ...claims.map((claim, index) => appendixEntry(claim, index, context))));
}
