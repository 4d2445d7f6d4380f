// On the plan card: what the design can tell apart, from its instruments, readings and tanks.
import { planningFigures, tankFigures } from '../design/planning.ts';
import { shown } from '../design/finding.ts';
import { formatNumber } from '../quantities/format.ts';
import type { Protocol } from '../protocol/types.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import type { Unit } from '../quantities/types.ts';
import { languageOf } from '../words/languages.ts';
import { planWords } from '../words/page.ts';
import { element, escapeHtml, type Html } from './html.ts';

export function planningHtml(protocol: Protocol): Html {
  const words = planWords(languageOf(protocol.language)).planning;
  const mark = decimalMarkOf(protocol.language);
  const amount = (value: number, unit: Unit): string => shown(value, unit, protocol);
  const items = planningFigures(protocol).map((each) => {
    const phase = each.overPhase && { ...each.overPhase, difference: amount(each.overPhase.difference, each.unit) };
    return element('li', {}, element('code', {}, escapeHtml(each.quantity)), escapeHtml(words.figures({ single: amount(each.singleReading, each.unit), phase, change: amount(each.change, each.unit) })));
  });
  const tanks = tankFigures(protocol);
  const said = !tanks ? '' : tanks.inDeviations === null || tanks.smallestP === null
    ? words.oneTank
    : words.tanks({ treatment: tanks.treatment, control: tanks.control, deviations: formatNumber(tanks.inDeviations, 1, mark), smallestP: formatNumber(tanks.smallestP, 3, mark) });
  if (items.length === 0 && said === '') return '';
  return element('details', { class: 'evenwater-planning' }, element('summary', {}, words.summary),
    items.length > 0 ? element('p', {}, words.lead) + element('ul', {}, ...items) : '', said === '' ? '' : element('p', {}, escapeHtml(said)));
}
