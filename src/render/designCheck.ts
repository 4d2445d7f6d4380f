// The design check on the plan card: what a reviewer would say of the plan, each point with its reason.
import { isDesignCode } from '../design/checkDesign.ts';
import type { Problem } from '../problems/problem.ts';
import { reasonOf } from '../words/reasons.ts';
import { pageWords, planWords } from '../words/page.ts';
import { problemSentence } from '../words/words.ts';
import type { RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';

const rank = { error: 0, warning: 1, information: 2, hint: 3 } as const;
const signs = { error: '✕', warning: '!', information: 'i', hint: 'i' } as const;

function item(each: Problem, accepted: boolean, context: RenderContext): Html {
  const { design } = planWords(context.problemLanguage);
  const why = reasonOf(each.code, context.problemLanguage);
  return element('li', { class: `evenwater-design-point evenwater-${accepted ? 'accepted' : each.severity}` },
    element('span', { class: 'evenwater-sign', 'aria-hidden': 'true' }, accepted ? '✓' : signs[each.severity]),
    element('div', {}, element('span', { class: 'evenwater-hidden' }, escapeHtml(accepted ? design.accepted : `${pageWords(context.problemLanguage).severities[each.severity]}: `)),
      escapeHtml(problemSentence(each, context.problemLanguage)), accepted ? element('span', { class: 'evenwater-tag' }, design.acceptedByAuthor) : '',
      element('div', { class: 'evenwater-why' }, escapeHtml(why))));
}

/** The points of the design check, the gravest first; what the author accepts by name stands last and says so. */
export function designCheckHtml(context: RenderContext): Html {
  const standing = context.note.problems.filter((each) => isDesignCode(each.code)).sort((a, b) => rank[a.severity] - rank[b.severity]);
  const accepted = context.note.accepted.filter((each) => isDesignCode(each.code));
  if (standing.length + accepted.length === 0) return element('p', { class: 'evenwater-design-fine' }, element('span', { class: 'evenwater-kept' }, '✓ '), context.plan.design.fine);
  return element('ul', { class: 'evenwater-design', role: 'list' }, ...standing.map((each) => item(each, false, context)), ...accepted.map((each) => item(each, true, context)));
}
