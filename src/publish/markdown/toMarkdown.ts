// The tool's own HTML as Markdown that forums and blogs read: CommonMark with pipe tables, no HTML in it.
import { languageOf } from '../../words/languages.ts';
import { postWords } from '../../words/post.ts';
import { findAll, hasClass, isElement, type HtmlElement, type HtmlNode } from './htmlTree.ts';

/** Text as Markdown that shows it as it is. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_[\]<>|~]/g, (character) => `\\${character}`).replace(/&(?=#?\w+;)/g, '\\&');
}

const codeMarks = (text: string): string => {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map((match) => match[0].length));
  const mark = '`'.repeat(longest + 1);
  const room = text.startsWith('`') || text.endsWith('`') ? ' ' : '';
  return `${mark}${room}${text}${room}${mark}`;
};

const plainText = (nodes: readonly HtmlNode[]): string => nodes.map((node) => (isElement(node) ? plainText(node.children) : node)).join('');

const skipped = (node: HtmlElement): boolean => node.attributes.has('hidden') || (node.attributes.get('aria-hidden') === 'true' && /^[a-z!?]$/i.test(plainText(node.children).trim())) || ['svg', 'style', 'script'].includes(node.name)
  || ['evenwater-hidden', 'evenwater-alternative', 'evenwater-timeline', 'evenwater-files', 'narrow', 'skip', 'working', 'whole', 'evenwater-mark'].some((name) => hasClass(node, name));

/** Marks around a text, its spaces left outside: `** bold**` would not be bold. */
function marked(mark: string, text: string): string {
  const [, before = '', inner = '', after = ''] = /^(\s*)([\s\S]*?)(\s*)$/.exec(text) ?? [];
  return inner === '' ? text : `${before}${mark}${inner}${mark}${after}`;
}

/** Inline content as one line of Markdown. */
function inlineMarkdown(nodes: readonly HtmlNode[]): string {
  return nodes.map((node) => {
    if (!isElement(node)) return escapeMarkdown(node.replace(/\s+/g, ' '));
    if (skipped(node)) return '';
    const inside = (): string => inlineMarkdown(node.children);
    switch (node.name) {
      case 'strong': case 'b': case 'dt': return marked('**', inside());
      case 'em': case 'i': case 'cite': return marked('*', inside());
      case 's': case 'del': return marked('~~', inside());
      case 'code': return codeMarks(plainText(node.children).replace(/\s+/g, ' '));
      case 'q': return postWords(languageOf(node.attributes.get('lang'))).quotes.join(inside());
      case 'br': return ' ';
      case 'img': return `![${escapeMarkdown(node.attributes.get('alt') ?? '')}](${node.attributes.get('src') ?? ''})`;
      case 'a': {
        const target = node.attributes.get('href') ?? '';
        return /^https?:|^mailto:/.test(target) ? `[${inside()}](<${target}>)` : target.startsWith('#') && inside().trim() === '↩' ? '' : inside();
      }
      case 'sup': { const text = inside(); return text === '' ? '' : `(${text})`; }
      case 'span': { const text = inside(); return hasClass(node, 'evenwater-number-label') ? marked('**', text) : hasClass(node, 'evenwater-caution') ? ` ${text}` : hasClass(node, 'n') ? '' : hasClass(node, 'evenwater-flag') || hasClass(node, 'evenwater-tag') || hasClass(node, 'evenwater-role') || hasClass(node, 'mark') ? ` (${text.trim()})` : text; }
      default: return inside();
    }
  }).join('');
}

const tidyLine = (text: string): string => text.replace(/\s+/g, ' ').replace(/ ([,.;:])(?=\s|$)/g, '$1').trim();
const line = (nodes: readonly HtmlNode[]): string => tidyLine(inlineMarkdown(nodes));

const inlineNames = new Set(['a', 'abbr', 'b', 'br', 'cite', 'code', 'data', 'del', 'em', 'i', 'img', 'q', 's', 'small', 'span', 'strong', 'sub', 'sup', 'time']);

/** A cell on one line: what stood on lines of its own is set off by semicolons. */
function cellMarkdown(cell: HtmlElement): string {
  const lines: HtmlNode[][] = [[]];
  for (const node of cell.children) {
    if (isElement(node) && node.name === 'br') lines.push([]);
    else lines.at(-1)!.push(node);
  }
  return lines.map(line).filter((each) => each !== '').join('; ');
}

/** A table as pipes: rows of the head joined into one, cells that span filled up. */
function tableMarkdown(table: HtmlElement): string {
  const rowsOf = (part: string): HtmlElement[] => findAll(findAll(table.children, (node) => node.name === part).flatMap((each) => each.children), (node) => node.name === 'tr');
  const cellsOf = (row: HtmlElement): HtmlElement[] => row.children.filter(isElement).filter((node) => node.name === 'th' || node.name === 'td');
  const span = (cell: HtmlElement, name: string): number => Math.max(1, Number(cell.attributes.get(name) ?? '1') || 1);
  const heads: string[][] = [];
  const hanging: number[] = [];
  for (const row of rowsOf('thead')) {
    let column = 0;
    const skipHanging = (): void => { while ((hanging[column] ?? 0) > 0) { hanging[column]! -= 1; column += 1; } };
    for (const cell of cellsOf(row)) {
      skipHanging();
      const text = line(cell.children);
      for (let step = 0; step < span(cell, 'colspan'); step += 1) {
        (heads[column] ??= []).push(text);
        if (span(cell, 'rowspan') > 1) hanging[column] = span(cell, 'rowspan') - 1;
        column += 1;
      }
    }
    skipHanging();
  }
  const head = heads.map((texts) => texts.filter((text) => text !== '').join(': '));
  const numbers: boolean[] = [];
  const rows = rowsOf('tbody').map((row) => {
    const cells = cellsOf(row);
    const texts: string[] = [];
    for (const cell of cells) {
      if (hasClass(cell, 'evenwater-number')) numbers[texts.length] = true;
      const text = cellMarkdown(cell);
      texts.push(cells.length === 1 && text !== '' ? marked('**', text) : cell.name === 'th' && cells.length > 1 && hasClass(table, 'evenwater-tanks') ? text : text);
      for (let step = 1; step < span(cell, 'colspan'); step += 1) texts.push('');
    }
    return texts;
  });
  const width = Math.max(head.length, ...rows.map((row) => row.length), 1);
  const write = (texts: readonly string[]): string => `| ${Array.from({ length: width }, (_, index) => texts[index] ?? '').join(' | ')} |`;
  const rule = `|${Array.from({ length: width }, (_, index) => (numbers[index] ? ' ---: ' : ' --- ')).join('|')}|`;
  const captionNode = findAll(table.children, (node) => node.name === 'caption')[0];
  const caption = captionNode && !hasClass(captionNode, 'evenwater-hidden') ? line(captionNode.children) : '';
  return `${caption === '' ? '' : `${caption}\n\n`}${[write(head), rule, ...rows.map(write)].join('\n')}`;
}

function listMarkdown(list: HtmlElement): string {
  const ordered = list.name === 'ol';
  const letters = list.attributes.get('type') === 'a';
  return list.children.filter(isElement).filter((node) => node.name === 'li').map((item, index) => {
    const mark = letters ? `- ${String.fromCharCode(97 + (index % 26))}: ` : ordered ? `${index + 1}. ` : '- ';
    const indent = ' '.repeat(letters ? 2 : mark.length);
    // A number that the item itself begins with is the list's own.
    const text = toMarkdown(item.children, '\n').replace(ordered && !letters ? new RegExp(`^${index + 1}\\. `) : /^$/, '');
    return mark + text.split('\n').map((each, place) => (place === 0 || each === '' ? each : indent + each)).join('\n');
  }).join('\n');
}

/** Markup as Markdown. `between` stands between blocks. */
export function toMarkdown(nodes: readonly HtmlNode[], between = '\n\n'): string {
  const blocks: string[] = [];
  let run: HtmlNode[] = [];
  const flush = (): void => {
    const text = line(run);
    if (text !== '') blocks.push(text);
    run = [];
  };
  for (const node of nodes) {
    if (!isElement(node)) { run.push(node); continue; }
    if (skipped(node)) continue;
    if (inlineNames.has(node.name)) { run.push(node); continue; }
    flush();
    const made = blockMarkdown(node, between);
    if (made.trim() !== '') blocks.push(made);
  }
  flush();
  return blocks.join(between);
}

function blockMarkdown(node: HtmlElement, between: string): string {
  switch (node.name) {
    case 'h1': case 'h2': case 'h3': case 'h4': case 'h5': case 'h6': return `${'#'.repeat(Number(node.name[1]))} ${line(node.children)}`;
    case 'p': {
      const text = line(node.children);
      return hasClass(node, 'evenwater-label') ? `**${text}**` : text.replace(/^([-+#]|\d+[.)])(?=\s)/, '\\$1');
    }
    case 'ul': case 'ol': return listMarkdown(node);
    case 'table': return tableMarkdown(node);
    case 'pre': { const text = plainText(node.children).replace(/^\n|\n$/g, ''); const fence = '`'.repeat(Math.max(3, ...[...text.matchAll(/`+/g)].map((match) => match[0].length + 1))); return `${fence}\n${text}\n${fence}`; }
    case 'blockquote': return toMarkdown(node.children).split('\n').map((each) => `> ${each}`.trimEnd()).join('\n');
    case 'dl': return definitions(node);
    case 'summary': return marked('**', line(node.children).replace(/\*\*/g, ''));
    case 'figcaption': return line(node.children);
    case 'hr': return '---';
    default: return toMarkdown(node.children, between);
  }
}

function definitions(list: HtmlElement): string {
  const lines: string[] = [];
  for (const node of list.children.filter(isElement)) {
    if (node.name === 'dt') lines.push(`- **${line(node.children)}**: `);
    else if (node.name === 'dd' && lines.length > 0) lines[lines.length - 1] += line(node.children);
  }
  return lines.join('\n');
}
