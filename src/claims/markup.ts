// Blanks out markup inside a claim's words or a run of prose, so that only what a reader sees is read.
// Every replacement keeps the length, so that offsets stay true.
import { literal } from '../words/literal.ts';

const blank = (text: string): string => text.replace(/[^\n]/g, ' ');

/** The character an entity stands for goes to the end of its place, next to the digits that follow it. */
const entities: Readonly<Record<string, string>> = {
  '&nbsp;': ' ', '&thinsp;': ' ', '&ensp;': ' ', '&emsp;': ' ', '&minus;': '−', '&ndash;': '–', '&mdash;': '—', '&deg;': '°', '&plusmn;': '±',
  '&micro;': 'µ', '&asymp;': '≈', '&lt;': '<', '&gt;': '>', '&percnt;': '%', '&amp;': '&', '&times;': '×', '&middot;': '·',
};

/** The words with code, tags, link targets and emphasis marks as spaces, and entities as their characters. */
export function withoutMarkup(words: string): string {
  return words
    .replace(/(`+)(?!`)[\s\S]*?[^`]\1(?!`)/g, blank)
    .replace(/<(su[bp])>[^<]*<\/\1>/gi, blank)
    .replace(/<\/?[A-Za-z][^<>]*>/g, blank)
    .replace(/\]\([^()\s]*(?:\s+"[^"]*")?\)/g, blank)
    .replace(/&[a-z]{2,6};/gi, (entity) => {
      const character = entities[entity.toLowerCase()];
      return character === undefined ? blank(entity) : character.padStart(entity.length, ' ');
    })
    .replace(/\\([!-/:-@[-`{-~])/g, ' $1')
    .replace(/[*[\]]/g, ' ')
    .replace(/(^|[^\p{L}\p{N}])_+|_+(?=$|[^\p{L}\p{N}])/gu, (match) => match.replace(/_/g, ' '));
}

/** Blanks every occurrence of the given names (a tank's label with a number in it, say) that stands as a whole word. */
export function withoutNames(words: string, names: readonly string[]): string {
  let result = words;
  for (const name of [...names].sort((a, b) => b.length - a.length)) {
    if (!/\d/.test(name) && !/\b(?:one|two|three|four|five|six|seven|eight|nine|ten|half|double)\b/i.test(name)) continue;
    const pattern = new RegExp(`(?<![\\p{L}\\p{N}])${literal(name)}(?![\\p{L}\\p{N}])`, 'giu');
    result = result.replace(pattern, blank);
  }
  return result;
}
