// A claim in the text: the author's words, the formula behind them, and a mark that says how far it was checked.
import type { CheckedClaim } from '../claims/types.ts';
import { cautionsBehind } from '../words/remarks.ts';
import { problemSentence } from '../words/words.ts';
import type { RenderContext } from './context.ts';
import { formulaWords, previewLanguage } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { unbrokenClass, unbrokenHtml } from './unbroken.ts';

/** The sign of each of the four marks, whose words are `claim.marks`: told by shape and text, never by colour alone. */
const signs = { computed: '=', condition: '✓', stated: '”', unchecked: '?' } as const;

function titleOf(claim: CheckedClaim, context: RenderContext): string {
  const formula = claim.syntax.formula.text.replace(/\s+/g, ' ').trim();
  if (claim.syntax.form === 'stated') return `${context.words.claim.marks.stated}${claim.syntax.source ? `: ${claim.syntax.source}` : ''}`;
  const words = formulaWords(context, formula);
  const says = claim.syntax.form === 'if' ? context.words.claim.standsWhile(words) : words;
  const start = claim.state === 'holds' ? `${context.words.claim.marks[claim.mark]}: ` : '';
  const value = claim.computed !== null && claim.state === 'holds' && claim.syntax.form !== 'if' ? `\n= ${claim.computed}` : '';
  const cautions = cautionsBehind(claim.evaluation?.working ?? [], context.language).map((each) => `\n${each}`).join('');
  return `${start}${says}${words === formula ? '' : `\n${formula}`}${value}${cautions}`;
}

/** What is said loudly beside a claim that does not hold. */
function complaint(claim: CheckedClaim, context: RenderContext): string | null {
  const { claim: words, cannotBeComputed } = context.words;
  switch (claim.state) {
    case 'holds': return null;
    case 'mismatch': return claim.computed === null ? words.mismatch : words.readingsGive(claim.computed);
    case 'false': return words.notTrue;
    case 'unfilled': return claim.computed === null ? cannotBeComputed : words.notFilled;
    case 'failed': {
      const problem = claim.problems.find((each) => each.severity === 'error') ?? claim.problems[0];
      return problem ? problemSentence(problem, context.problemLanguage) : cannotBeComputed;
    }
  }
}

/** Number of a claim in the appendix of a post, from 1: its place among the claims. */
export function claimHtml(claim: CheckedClaim, words: string, index: number, context: RenderContext): Html {
  const formula = claim.syntax.formula.text.replace(/\s+/g, ' ').trim();
  const shown = claim.state === 'unfilled' && claim.computed !== null ? claim.computed : words;
  const whole = unbrokenClass(shown);
  const said = whole === null ? unbrokenHtml(shown) : escapeHtml(shown);
  const classes = `evenwater-claim evenwater-${claim.mark}${claim.state === 'holds' ? '' : ` evenwater-loud evenwater-${claim.state}`}${claim.approximate ? ' evenwater-approximate' : ''}${whole === null ? '' : ` ${whole}`}`;
  const post = context.target === 'post';
  const title = post ? null : titleOf(claim, context);
  const body = claim.syntax.form === 'stated'
    ? element('span', { class: classes, title }, said)
    : element('data', { class: classes, value: claim.machine ?? '', 'data-formula': formula, title }, said);
  const trouble = complaint(claim, context);
  const markWords = context.words.claim.marks[claim.mark];
  const loud = trouble === null ? '' : element('strong', { class: 'evenwater-complaint', lang: previewLanguage(context, claim.state === 'failed' ? context.problemLanguage : context.language) }, escapeHtml(` ${claim.state === 'unfilled' ? '○' : '✕'} ${trouble}`));
  const mark = post
    ? element('sup', { class: 'evenwater-mark' }, element('a', { href: `#how-${index + 1}`, id: `claim-${index + 1}`, 'aria-label': context.words.claim.note(markWords, index + 1) }, String(index + 1)))
    : element('sup', { class: 'evenwater-mark', title, role: 'img', lang: context.language, 'aria-label': markWords }, escapeHtml(signs[claim.mark]));
  return `${body}${trouble === null || claim.state === 'unfilled' ? mark : ''}${loud}`;
}
