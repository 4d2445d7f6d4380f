// On the plan card: what the design can tell apart, from its instruments, readings and tanks.
import { planningFigures, tankFigures } from '../design/planning.ts';
import { shown } from '../design/finding.ts';
import { formatNumber } from '../quantities/format.ts';
import type { Protocol } from '../protocol/types.ts';
import { element, escapeHtml, type Html } from './html.ts';

export function planningHtml(protocol: Protocol): Html {
  const items = planningFigures(protocol).map((each) => {
    const over = each.overPhase ? `; in the mean of ${each.overPhase.readings} readings of the ${each.overPhase.phase} phase ${shown(each.overPhase.difference, each.unit)}` : '';
    return element('li', {}, element('code', {}, escapeHtml(each.quantity)), escapeHtml(`: between two tanks at one time ${shown(each.singleReading, each.unit)}${over}; between the changes of two tanks ${shown(each.change, each.unit)}`));
  });
  const tanks = tankFigures(protocol);
  const words = !tanks ? '' : tanks.inDeviations === null || tanks.smallestP === null
    ? 'With one tank on a side no number of readings can tell the treatment from the tank.'
    : `With ${tanks.treatment} treatment and ${tanks.control} control tanks a difference of ${formatNumber(tanks.inDeviations, 1)} times the spread between tanks treated alike is found four times in five; the smallest p of an exact permutation test is ${formatNumber(tanks.smallestP, 3)}.`;
  if (items.length === 0 && words === '') return '';
  return element('details', { class: 'evenwater-planning' }, element('summary', {}, 'What this design can tell apart'),
    items.length > 0 ? element('p', {}, 'The smallest differences that the instruments resolve (95 %):') + element('ul', {}, ...items) : '', words === '' ? '' : element('p', {}, escapeHtml(words)));
}
