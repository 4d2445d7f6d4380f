// The frame that every table has: a numbered caption, and room to scroll sideways on a narrow screen.
import type { PageWords } from '../words/page.ts';
import { element, escapeHtml, type Html } from './html.ts';

export interface TableParts {
  /** null: no number. */
  readonly number: number | null;
  readonly words: PageWords;
  readonly caption: string;
  /** Rows of the head. */
  readonly head: Html;
  readonly rows: readonly Html[];
  readonly className: string;
  readonly notes?: readonly Html[];
  readonly columns?: Html;
}

export function tableHtml(parts: TableParts): Html {
  const label = `${parts.number === null ? '' : `${parts.words.table(parts.number)} `}${parts.caption}`;
  const caption = element('caption', {}, element('span', { class: 'evenwater-caption' },
    ...(parts.number === null ? [] : [element('span', { class: 'evenwater-number-label' }, parts.words.table(parts.number)), ' ']), escapeHtml(parts.caption)));
  const notes = parts.notes && parts.notes.length > 0 ? element('ol', { class: 'evenwater-table-notes', type: 'a' }, ...parts.notes) : '';
  return element('div', { class: `evenwater-table ${parts.className}` },
    element('div', { class: 'evenwater-scroll', role: 'region', tabindex: 0, 'aria-label': label.length > 140 ? `${label.slice(0, 137)}…` : label },
      element('table', {}, caption, parts.columns ?? '', element('thead', {}, parts.head), element('tbody', {}, ...parts.rows))), notes);
}
