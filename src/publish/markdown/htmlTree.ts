// The tool's own HTML as a tree: only what `element` of src/render/html.ts writes, no error recovery.
import { unescapeHtml } from '../embed.ts';

export interface HtmlElement { readonly name: string; readonly attributes: ReadonlyMap<string, string>; readonly children: readonly HtmlNode[] }
/** An element, or text with its characters as the reader sees them. */
export type HtmlNode = HtmlElement | string;

const empty = new Set(['br', 'col', 'hr', 'img', 'meta', 'link']);

interface OpenElement { readonly name: string; readonly attributes: ReadonlyMap<string, string>; readonly children: HtmlNode[] }

/** Parses markup. A closing tag that closes nothing is left out; what stays open ends with the text. */
export function parseHtml(html: string): HtmlNode[] {
  const root: OpenElement = { name: '', attributes: new Map(), children: [] };
  const open: OpenElement[] = [root];
  for (const match of html.matchAll(/<(\/?)([A-Za-z][\w:-]*)((?:\s+[^\s=>"']+(?:="[^"]*")?)*)\s*(\/?)>|[^<]+|</g)) {
    const top = open.at(-1)!;
    const name = match[2];
    if (name === undefined) { top.children.push(unescapeHtml(match[0])); continue; }
    if (match[1] === '/') {
      const place = open.findLastIndex((each) => each.name === name);
      if (place > 0) open.length = place;
      continue;
    }
    const attributes = new Map<string, string>();
    for (const [, key, value] of match[3]!.matchAll(/\s+([^\s=>"']+)(?:="([^"]*)")?/g)) attributes.set(key!, unescapeHtml(value ?? ''));
    const made: OpenElement = { name, attributes, children: [] };
    top.children.push(made);
    if (match[4] !== '/' && !empty.has(name)) open.push(made);
  }
  return root.children;
}

export const isElement = (node: HtmlNode): node is HtmlElement => typeof node !== 'string';

export const hasClass = (node: HtmlElement, name: string): boolean => (node.attributes.get('class') ?? '').split(' ').includes(name);

/** The elements that satisfy a condition, in order, those inside a found one not looked at. */
export function findAll(nodes: readonly HtmlNode[], test: (node: HtmlElement) => boolean): HtmlElement[] {
  return nodes.flatMap((node) => (!isElement(node) ? [] : test(node) ? [node] : findAll(node.children, test)));
}
