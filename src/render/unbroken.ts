// What must not part over the end of a line: a number and its unit, a time, a symbol behind its hyphen.
import { parseUnit } from '../quantities/units.ts';
import { element, escapeHtml, type Html } from './html.ts';

/** Characters that a narrow phone shows on one line with room to spare. */
const longest = 22;
const unbroken = 'evenwater-unbroken';

/** A number with what stands behind it, `5.8 ± 0.1 mg/L`; and a single letter behind a hyphen, as in `permutation-p`. */
const together = /[+−-]?\d[\d.,:]*(?: ± \d[\d.,]*)? (?<unit>[^\s,;:()]*[^\s,;:().!?])|\p{L}+-\p{L}(?![\p{L}\p{N}-])/gu;

/** The class of a value that is short enough to stand on one line; null for a longer one. */
export const unbrokenClass = (text: string): string | null => (text.length <= longest && /\d/.test(text) ? unbroken : null);

/** Text as HTML, its amounts kept whole. The text itself stays as it is. */
export function unbrokenHtml(text: string): Html {
  let html = '';
  let at = 0;
  for (const match of text.matchAll(together)) {
    const unit = match.groups?.['unit'];
    if (unit !== undefined && !parseUnit(unit)) continue;
    html += escapeHtml(text.slice(at, match.index)) + element('span', { class: unbroken }, escapeHtml(match[0]));
    at = match.index + match[0].length;
  }
  return html + escapeHtml(text.slice(at));
}
