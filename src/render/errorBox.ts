// Problems shown where they are: a box in the place of the block, with the line, the sentence and how bad it is.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { Note } from '../experiment/types.ts';
import type { Block } from '../note/syntax.ts';
import { isDesignCode } from '../design/checkDesign.ts';
import type { Language } from '../words/languages.ts';
import { pageWords } from '../words/page.ts';
import { problemSentence } from '../words/words.ts';
import type { RenderTarget } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';

/** Line in the note's text, from 1. */
export function lineOf(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line += 1;
  return line;
}

/** Characters before an offset on its line. */
const characterOf = (text: string, offset: number): number => offset - (text.lastIndexOf('\n', offset - 1) + 1);

/** For the line's button, which opens the menu itself: nothing to copy or paste there. */
const onlyOurMenu = JSON.stringify({ preventDefaultContextMenuItems: true });

const signs = { error: '✕', warning: '!', information: 'i', hint: '?' } as const;

/** Problems that stand inside a range, those of claims left to the claims. */
export function problemsIn(note: Note, range: SourceRange, least: 'error' | 'warning'): Problem[] {
  return note.problems.filter((each) => each.range.start >= range.start && each.range.end <= range.end
    && (each.severity === 'error' || (least === 'warning' && each.severity === 'warning')));
}

/**
 * A list of problems as a box; nothing where there is none. In the preview each names its line by a button, and carries that
 * line for scrolling, for src/preview/reveal.ts, which shows it in the editor, and its place for the menu that goes there.
 */
function problemsHtml(note: Note, problems: readonly Problem[], language: Language, target: RenderTarget): Html {
  if (problems.length === 0) return '';
  const most = 8;
  const words = pageWords(language);
  const live = target === 'preview';
  const items = problems.slice(0, most).map((each) => {
    const line = lineOf(note.text, each.range.start);
    const place = escapeHtml(words.atLine(words.severities[each.severity], line));
    const menu = live ? JSON.stringify({ webviewSection: 'evenwater-problem', line: line - 1, character: characterOf(note.text, each.range.start) }) : null;
    return element('li', { class: `evenwater-problem evenwater-${each.severity}${live ? ' code-line' : ''}`, 'data-line': live ? line - 1 : null, 'data-vscode-context': menu },
      element('span', { class: 'evenwater-sign', 'aria-hidden': 'true' }, escapeHtml(signs[each.severity])),
      element('span', { class: 'evenwater-problem-words' },
        live ? element('button', { type: 'button', class: 'evenwater-to-source', title: words.toLine, 'data-vscode-context': onlyOurMenu }, place) : element('strong', {}, place), escapeHtml(problemSentence(each, language))));
  });
  if (problems.length > most) items.push(element('li', { class: 'evenwater-more' }, escapeHtml(words.moreProblems(problems.length - most))));
  return element('ul', { class: 'evenwater-problems', role: 'list', lang: live ? language : null }, ...items);
}

/** The problems of a block as a box. */
export function blockProblemsHtml(note: Note, block: Block, language: Language, target: RenderTarget): Html {
  // The footnotes of a summary table give these reasons already; a reader of a post needs them once.
  const own = problemsIn(note, block.range, 'warning').filter((each) => target === 'preview' || each.code !== 'summary-cell-empty');
  // The plan card has a place of its own for these.
  return problemsHtml(note, block.word === 'protocol' && note.protocol ? own.filter((each) => !isDesignCode(each.code) && each.code !== 'stop-rule-crossed') : own, language, target);
}
