// Where TeX maths stands in Markdown text: `$…$` and `$$…$$`. Claims and loose numbers are not looked for in it.

function isWordCharacter(character: string | undefined): boolean {
  return character !== undefined && /[\p{L}\p{N}_]/u.test(character);
}

/**
 * The end of the maths that opens with the `$` at `position`, or -1. A single `$` opens before a character that is no space and after one
 * that is no word character, and closes after one that is no space and before one that is no word character; so `$5 and $6` is money.
 */
export function mathsEnd(source: string, position: number, limit = source.length): number {
  if (source[position] !== '$') return -1;
  const mark = source[position + 1] === '$' ? '$$' : '$';
  const inner = position + mark.length;
  if (mark === '$' && (isWordCharacter(source[position - 1]) || source[position - 1] === '$' || /\s/.test(source[inner] ?? ' '))) return -1;
  for (let at = source.indexOf(mark, inner); at >= 0 && at < limit; at = source.indexOf(mark, at + 1)) {
    let slashes = 0;
    while (source[at - 1 - slashes] === '\\') slashes++;
    if (slashes % 2 === 1) continue;
    const end = at + mark.length;
    if (end > limit || at === inner) return -1;
    if (mark === '$' && (/\s/.test(source[at - 1]!) || isWordCharacter(source[end]) || source[end] === '$')) return -1;
    return end;
  }
  return -1;
}

/** How often an unescaped `$$` stands in the text. */
function doubleMarks(source: string): number {
  let count = 0;
  for (let at = source.indexOf('$$'); at >= 0; at = source.indexOf('$$', at + 2)) if (source[at - 1] !== '\\') count++;
  return count;
}

/** What `displayMaths` needs of a markdown-it token. */
interface BlockToken { readonly type: string; readonly content: string; readonly level: number }

/**
 * The texts of paragraphs that stand inside display maths with a blank line in it: from a paragraph that opens with `$$` to the one of the
 * same level that closes it. Without a closing paragraph the `$$` is plain text.
 */
export function displayMaths(tokens: readonly BlockToken[]): ReadonlySet<string> {
  const texts = new Set<string>();
  const paragraphs: BlockToken[] = [];
  for (const token of tokens) if (token.type === 'inline' || token.type === 'fence') paragraphs.push(token);
  let open = -1;
  for (let index = 0; index < paragraphs.length; index++) {
    const token = paragraphs[index]!;
    if (token.type === 'fence' || (open >= 0 && token.level !== paragraphs[open]!.level)) { open = -1; continue; }
    if (!token.content.includes('$$')) continue;
    if (open < 0) {
      if (token.content.startsWith('$$') && doubleMarks(token.content) % 2 === 1) open = index;
    } else if (token.content.endsWith('$$') && doubleMarks(token.content) === 1) {
      for (let inside = open; inside <= index; inside++) texts.add(paragraphs[inside]!.content);
      open = -1;
    } else open = -1;
  }
  return texts;
}
