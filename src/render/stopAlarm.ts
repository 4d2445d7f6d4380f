// A crossed stop rule: the loudest thing on the page until its outcome is written up, and in plain sight after that.
import type { Protocol } from '../protocol/types.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { dateWords } from '../charts/chartWords.ts';
import type { RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';

export function stopAlarmHtml(protocol: Protocol, context: RenderContext): Html {
  const words = context.plan.stop;
  const crossed = context.note.stopRules.filter((check) => check.crossedAt.length > 0);
  return crossed.map((check): Html => {
    const rule = protocol.stopRules[check.rule];
    if (!rule) return '';
    const first = check.crossedAt[0]!;
    const outcome = rule.outcome?.value.trim() || null;
    const later = check.crossedAt.length - 1;
    return element('div', { class: `evenwater-alarm${outcome ? ' evenwater-written-up' : ''}`, role: outcome ? null : 'alert' },
      element('p', { class: 'evenwater-alarm-head' }, escapeHtml(outcome ? words.wasCrossed : words.alarm)),
      element('p', {}, element('code', {}, escapeHtml(rule.when?.text.trim() ?? '')), escapeHtml(words.at({ clock: formatClock(first, protocol.zone), day: formatDate(first, protocol.zone), date: dateWords(first, protocol), later }))),
      rule.do ? element('p', { class: 'evenwater-alarm-do' }, escapeHtml(outcome ? words.planSaid(rule.do) : rule.do)) : '',
      element('p', {}, escapeHtml(outcome ? words.wasDone(outcome) : words.writeOutcome)));
  }).join('');
}
