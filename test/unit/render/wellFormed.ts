// Checks that HTML is well formed: elements closed in order, attributes quoted, ids unique, no stray `<`.

const empty = new Set(['br', 'col', 'hr', 'img', 'meta', 'link', 'input', 'wbr']);

/** What is wrong with a piece of HTML; empty when it is well formed. */
export function htmlFaults(html: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const ids = new Set<string>();
  const body = html.replace(/<!doctype html>/i, '').replace(/<style>[\s\S]*?<\/style>/g, '');
  const tag = /<(\/?)([A-Za-z][A-Za-z0-9-]*)((?:\s+[A-Za-z_:][-A-Za-z0-9_:.]*(?:="[^"<]*")?)*)\s*(\/?)>/y;
  for (let at = body.indexOf('<'); at >= 0; at = body.indexOf('<', at)) {
    tag.lastIndex = at;
    const match = tag.exec(body);
    if (!match) {
      faults.push(`not a tag: ${body.slice(at, at + 60)}`);
      at += 1;
      continue;
    }
    at = tag.lastIndex;
    const [, closing, rawName, attributes, selfClosing] = match as unknown as [string, string, string, string, string];
    const name = rawName.toLowerCase();
    for (const [, id] of attributes.matchAll(/\sid="([^"]*)"/g)) {
      if (ids.has(id!)) faults.push(`id twice: ${id}`);
      ids.add(id!);
    }
    if (closing) {
      const last = open.pop();
      if (last !== name) faults.push(`</${name}> closes <${last}> near ${body.slice(Math.max(0, at - 80), at)}`);
    } else if (!selfClosing && !empty.has(name)) {
      // Block elements that a browser would throw out of a paragraph.
      if (open.includes('p') && /^(?:div|p|ul|ol|table|section|figure|details|pre|h[1-6]|blockquote)$/.test(name) && !open.slice(open.lastIndexOf('p')).includes('svg')) faults.push(`<${name}> inside <p>`);
      open.push(name);
    }
    if (faults.length > 5) break;
  }
  if (open.length > 0) faults.push(`never closed: ${open.join(' ')}`);
  for (const [, target] of body.matchAll(/\shref="#([^"]*)"/g)) if (!ids.has(target!)) faults.push(`no place called ${target}`);
  return faults;
}
