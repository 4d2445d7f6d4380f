// Two posts beside each other, word by word and tag by tag: what the given one prints otherwise than the computed one.
// White space is left out of it, unless two numbers run into one without it; everything else counts, drawings and the values
// behind the numbers included.
import type { SourceRange } from '../problems/problem.ts';
import { attributesOf, unescapeHtml } from './embed.ts';

export type DifferenceKind = 'number' | 'words' | 'value' | 'formula' | 'drawing' | 'markup';

export interface PostDifference {
  readonly kind: DifferenceKind;
  /** In the given post. */
  readonly range: SourceRange;
  /** The formula behind the number, where it has one. */
  readonly formula: string | null;
  /** What the given post prints; empty where something is missing. */
  readonly printed: string;
  /** What the computed post prints; empty where the given post has something more. */
  readonly computed: string;
}

interface Token { readonly text: string; readonly at: number }

function tokensOf(html: string, from: number, to: number): Token[] {
  const tokens: Token[] = [];
  const pattern = /<[^>]*>|[^<\s]+|</g;
  pattern.lastIndex = from;
  for (let match = pattern.exec(html); match && match.index < to; match = pattern.exec(html)) {
    tokens.push({ text: runsInto(html, match.index, tokens.at(-1)) ? `${glue}${match[0]}` : match[0], at: match.index });
  }
  return tokens;
}

/** Stands before a tag that follows a digit without a space: `2<data …>5.83` reads as 25.83. */
const glue = '\u2060';

function runsInto(html: string, at: number, previous: Token | undefined): boolean {
  return html.startsWith('<data ', at) && previous !== undefined && !/^\s$/.test(html[at - 1] ?? ' ') && /[\d.,−+-]$/.test(previous.text);
}

/** Past this many insertions and deletions the rest counts as one difference. */
const mostEdits = 800;

interface Hunk { readonly from: number; readonly to: number; readonly otherFrom: number; readonly otherTo: number }

/** Differing stretches of two token lists. Source: Myers 1986, An O(ND) difference algorithm, Algorithmica 1, 251-266. */
function hunksOf(a: readonly Token[], b: readonly Token[]): Hunk[] {
  let start = 0;
  while (start < a.length && start < b.length && a[start]!.text === b[start]!.text) start += 1;
  let endA = a.length;
  let endB = b.length;
  while (endA > start && endB > start && a[endA - 1]!.text === b[endB - 1]!.text) { endA -= 1; endB -= 1; }
  const width = endA - start;
  const height = endB - start;
  if (width === 0 && height === 0) return [];
  const whole: Hunk[] = [{ from: start, to: endA, otherFrom: start, otherTo: endB }];
  if (width === 0 || height === 0) return whole;
  const most = Math.min(mostEdits, width + height);
  const traces: Int32Array[] = [];
  let reach = new Int32Array(2 * most + 3);
  const middle = most + 1;
  for (let edits = 0; edits <= most; edits += 1) {
    traces.push(reach.slice(middle - edits - 1, middle + edits + 2));
    const next = reach.slice();
    for (let diagonal = -edits; diagonal <= edits; diagonal += 2) {
      const down = diagonal === -edits || (diagonal !== edits && reach[middle + diagonal - 1]! < reach[middle + diagonal + 1]!);
      let x = down ? reach[middle + diagonal + 1]! : reach[middle + diagonal - 1]! + 1;
      while (x < width && x - diagonal < height && a[start + x]!.text === b[start + x - diagonal]!.text) x += 1;
      next[middle + diagonal] = x;
      if (x >= width && x - diagonal >= height) return walkBack(traces, edits, width, height, start);
    }
    reach = next;
  }
  return whole;
}

function walkBack(traces: readonly Int32Array[], edits: number, width: number, height: number, start: number): Hunk[] {
  const steps: { x: number; y: number; toX: number; toY: number }[] = [];
  let x = width;
  let y = height;
  for (let edit = edits; edit > 0; edit -= 1) {
    const reach = traces[edit]!;
    const at = (diagonal: number): number => reach[diagonal + edit + 1]!;
    const diagonal = x - y;
    const down = diagonal === -edit || (diagonal !== edit && at(diagonal - 1) < at(diagonal + 1));
    const before = down ? diagonal + 1 : diagonal - 1;
    const beforeX = at(before);
    const beforeY = beforeX - before;
    steps.push({ x: beforeX, y: beforeY, toX: down ? beforeX : beforeX + 1, toY: down ? beforeY + 1 : beforeY });
    x = beforeX;
    y = beforeY;
  }
  const hunks: { from: number; to: number; otherFrom: number; otherTo: number }[] = [];
  for (const step of steps.reverse()) {
    const last = hunks.at(-1);
    if (last && last.to === start + step.x && last.otherTo === start + step.y) { last.to = start + step.toX; last.otherTo = start + step.toY; }
    else hunks.push({ from: start + step.x, to: start + step.toX, otherFrom: start + step.y, otherTo: start + step.toY });
  }
  return hunks;
}

/** Where the text around a place begins and ends: two equal posts around one change share all the rest. */
function commonEnds(given: string, computed: string): { start: number; endGiven: number; endComputed: number } {
  const most = Math.min(given.length, computed.length);
  let start = 0;
  for (let step = 4096; start + step <= most && given.slice(start, start + step) === computed.slice(start, start + step);) start += step;
  while (start < most && given.charCodeAt(start) === computed.charCodeAt(start)) start += 1;
  let end = 0;
  for (const step = 4096; end + step <= most - start && given.slice(given.length - end - step, given.length - end) === computed.slice(computed.length - end - step, computed.length - end);) end += step;
  while (end < most - start && given.charCodeAt(given.length - end - 1) === computed.charCodeAt(computed.length - end - 1)) end += 1;
  return { start, endGiven: given.length - end, endComputed: computed.length - end };
}

/** Widens a stretch to whole tags and words, so that both texts are cut at the same kind of place. */
function boundaryBefore(html: string, at: number): number {
  const tag = html.lastIndexOf('<', Math.max(0, at - 1));
  return tag < 0 ? 0 : tag;
}
function boundaryAfter(html: string, at: number): number {
  // Past the tag that the stretch may end inside, to the start of the next.
  const next = html.indexOf('<', at + 1);
  return next < 0 ? html.length : next;
}

const short = (text: string): string => (text.length > 160 ? `${text.slice(0, 120)} … ${text.slice(-24)}` : text);
/** What a page shows as text, in one line. */
export const textOf = (html: string): string => unescapeHtml(html.replace(/<[^>]*>/g, ' ')).replace(/\s+/g, ' ').trim();

/** The `<data>` element that a place stands in, its tag included. */
function dataAround(html: string, at: number): { tag: string; text: string; start: number } | null {
  const start = html.lastIndexOf('<data ', at);
  if (start < 0) return null;
  const close = html.indexOf('</data>', start);
  if (close < 0 || close < at) return null;
  const tagEnd = html.indexOf('>', start) + 1;
  return { tag: html.slice(start, tagEnd), text: textOf(html.slice(tagEnd, close)), start };
}

function isInside(html: string, at: number, name: string): boolean {
  const open = html.lastIndexOf(`<${name}`, at);
  return open >= 0 && html.lastIndexOf(`</${name}>`, at) < open;
}

function describe(hunk: Hunk, a: readonly Token[], b: readonly Token[], given: string, computed: string): PostDifference {
  const mine = a.slice(hunk.from, hunk.to);
  const theirs = b.slice(hunk.otherFrom, hunk.otherTo);
  const at = mine[0]?.at ?? a[hunk.from]?.at ?? given.length;
  const last = mine.at(-1);
  const range = { start: at, end: last ? last.at + last.text.replace(glue, '').length : at };
  const otherAt = theirs[0]?.at ?? b[hunk.otherFrom]?.at ?? computed.length;
  const around = dataAround(given, at);
  const truth = dataAround(computed, otherAt);
  const formula = (truth && attributesOf(truth.tag).get('data-formula')) ?? (around && attributesOf(around.tag).get('data-formula')) ?? null;
  const join = (tokens: readonly Token[]): string => tokens.map((token) => token.text).join(' ');
  if (mine.length === 1 && theirs.length === 1 && mine[0]!.text.startsWith('<data ') && theirs[0]!.text.startsWith('<data ')) {
    const [was, is] = [attributesOf(mine[0]!.text), attributesOf(theirs[0]!.text)];
    for (const [kind, name] of [['formula', 'data-formula'], ['value', 'value']] as const) {
      if (was.get(name) !== is.get(name)) return { kind, range, formula, printed: short(was.get(name) ?? ''), computed: short(is.get(name) ?? '') };
    }
  }
  const words = [...mine, ...theirs].filter((token) => !token.text.startsWith('<'));
  const kind: DifferenceKind = isInside(given, at, 'svg') || isInside(computed, otherAt, 'svg') ? 'drawing'
    : words.some((token) => /\d/.test(token.text)) ? 'number' : words.length > 0 ? 'words' : 'markup';
  if (around && truth && words.length > 0) return { kind, range, formula, printed: short(around.text), computed: short(truth.text) };
  const shown = (tokens: readonly Token[]): string => short(kind === 'markup' || (kind === 'drawing' && words.length === 0) ? join(tokens) : unescapeHtml(join(tokens.filter((token) => !token.text.startsWith('<')))));
  return { kind, range, formula, printed: shown(mine), computed: shown(theirs) };
}

/** Everything that `given` prints otherwise than `computed`, in order of place; empty when they are the same but for white space. */
export function comparePosts(given: string, computed: string): PostDifference[] {
  if (given === computed) return [];
  const ends = commonEnds(given, computed);
  const start = boundaryBefore(given, ends.start);
  const a = tokensOf(given, start, boundaryAfter(given, ends.endGiven));
  const b = tokensOf(computed, start, boundaryAfter(computed, ends.endComputed));
  return hunksOf(a, b).map((hunk) => describe(hunk, a, b, given, computed));
}
