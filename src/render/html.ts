// HTML as text, safely: everything that comes from a note goes through `escapeHtml` or `element`.

/** Markup that is already safe. Only this file and callers that built it from escaped parts make it. */
export type Html = string;

/**
 * Characters that no page shows as they are become U+FFFD: control characters, and the marks that turn the direction of
 * all text after them (a name could hide its ending behind one).
 */
export function tameText(text: string): string {
  return text.replace(/[\0-\x08\x0B\x0C\x0E-\x1F\x7F\u202A-\u202E\u2066-\u2069]/g, '\uFFFD');
}

/** Text for element content and quoted attributes. */
export function escapeHtml(text: string): Html {
  return tameText(text)
    .replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;').replace(/'/g, '&#39;');
}

export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>;

/** Attributes with a leading space; those that are null, undefined or false are left out. */
export function attributesHtml(attributes: Attributes): Html {
  let html = '';
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    html += value === true ? ` ${name}` : ` ${name}="${escapeHtml(String(value))}"`;
  }
  return html;
}

const empty = new Set(['br', 'col', 'hr', 'img', 'line', 'rect', 'path', 'circle', 'meta', 'link']);

/** One element. `content` is markup; use `text` for plain text. */
export function element(name: string, attributes: Attributes, ...content: readonly Html[]): Html {
  const open = `<${name}${attributesHtml(attributes)}>`;
  return empty.has(name) && content.length === 0 ? (/^(?:line|rect|path|circle)$/.test(name) ? `${open.slice(0, -1)}/>` : open) : `${open}${content.join('')}</${name}>`;
}

/** JSON for an attribute or for `<script type=…>`-free embedding: valid JSON without characters that HTML could read. */
export function jsonText(value: unknown): string {
  return JSON.stringify(value).replace(/</g, '\\u003c').replace(/\u2028/g, '\\u2028').replace(/\u2029/g, '\\u2029');
}
