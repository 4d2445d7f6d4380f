// Rechecks a post: takes out its note and data, verifies the hashes, makes the post again and compares the two whole;
// and evaluates each formula that the post shows beside a number.
import type { SourceRange } from '../problems/problem.ts';
import { readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import { evaluate } from '../formula/evaluate.ts';
import { machineValue } from '../formula/show.ts';
import { mappedText } from '../note/mappedText.ts';
import { decodeText, detectEncoding } from '../readings/file/decode.ts';
import { comparePosts, textOf, type DifferenceKind, type PostDifference } from './compare.ts';
import { attributesOf, readEmbedded, unescapeHtml, type EmbeddedFile, type EmbedFault } from './embed.ts';
import { publishPost } from './post.ts';

export interface RecheckReport {
  /** The version that the post says it was made with; empty where it says none. */
  readonly madeWith: string;
  readonly sameVersion: boolean;
  readonly published: string | null;
  readonly files: readonly EmbeddedFile[];
  readonly faults: readonly EmbedFault[];
  /** The note that the post carries, read again; null when it could not be taken out. */
  readonly note: Note | null;
  readonly claims: number;
  /** Numbers of the post that stand beside their formula. */
  readonly values: number;
  readonly differences: readonly PostDifference[];
  /** Only where the post was made with another version: differences of generated wording, layout or drawing, which may come from that. */
  readonly unjudged: number;
  readonly holds: boolean;
}

interface PrintedValue { readonly range: SourceRange; readonly formula: string; readonly value: string; readonly text: string }

/** Every number of a post that stands beside its formula. */
export function printedValues(html: string): PrintedValue[] {
  return [...html.matchAll(/(<data [^>]*>)([\s\S]*?)<\/data>/g)].map((match) => {
    const attributes = attributesOf(match[1]!);
    return {
      range: { start: match.index, end: match.index + match[0].length }, formula: attributes.get('data-formula') ?? '', value: attributes.get('value') ?? '',
      text: unescapeHtml(match[2]!.replace(/<[^>]*>/g, '')).replace(/\s+/g, ' ').trim(),
    };
  });
}

const sameNumber = (a: string, b: string): boolean => {
  const [x, y] = [Number(a), Number(b)];
  return a === b || (a.trim() !== '' && b.trim() !== '' && Number.isFinite(x) && Number.isFinite(y) && Math.abs(x - y) <= 1e-9 * Math.max(1, Math.abs(x), Math.abs(y)));
};

/** Values whose formula, evaluated now, gives something else. */
function recompute(values: readonly PrintedValue[], note: Note): PostDifference[] {
  const known = new Map<string, string | null>();
  const differences: PostDifference[] = [];
  for (const each of values) {
    if (!known.has(each.formula)) {
      const { value } = evaluate(mappedText(each.formula), note.context);
      known.set(each.formula, value === null ? null : machineValue(value, note.context));
    }
    const machine = known.get(each.formula) ?? null;
    if (machine === null ? each.value !== '' : !sameNumber(machine, each.value)) {
      differences.push({ kind: 'value', range: each.range, formula: each.formula, printed: each.value, computed: machine ?? '' });
    }
  }
  return differences;
}

/** A page's text without its embedded styles; white space does not count in it. */
const shownText = (html: string): string => textOf(html.replace(/<style>[\s\S]*?<\/style>/g, ' ')).replace(/\s+/g, '');

/**
 * What the author wrote and the post does not say as often as it should: claims and prose come from the note, whatever version made the
 * post, and the working below the text repeats them. Only what this version's own post shows word by word is looked for.
 */
function missingWords(html: string, computed: string, note: Note): PostDifference[] {
  const [given, made] = [shownText(html), shownText(computed)];
  const written = [...note.syntax.prose.map((each) => each.text.text), ...note.syntax.claims.map((each) => each.words.text)];
  return written.filter((words) => {
    const bare = words.replace(/\s+/g, '');
    return bare.length > 2 && made.split(bare).length > given.split(bare).length;
  }).map((words) => ({ kind: 'words', range: { start: 0, end: 0 }, formula: null, printed: '', computed: words.replace(/\s+/g, ' ').trim() }));
}

const judged: readonly DifferenceKind[] = ['number', 'value', 'formula'];

/** Rechecks a post with this version of the tool. Never throws on any text. */
export async function recheckPost(html: string, toolVersion: string): Promise<RecheckReport> {
  const { source, faults } = readEmbedded(html);
  const sameVersion = source.toolVersion === toolVersion;
  const base = { madeWith: source.toolVersion, sameVersion, published: source.published, files: source.files, faults };
  const file = source.files.find((each) => each.role === 'note');
  if (!file || detectEncoding(file.bytes) !== 'utf-8') return { ...base, note: null, claims: 0, values: 0, differences: [], unjudged: 0, holds: false };
  const contents = new Map(source.files.filter((each) => each.role === 'data').map((each) => [each.path, each.bytes]));
  const note = readNote(decodeText(file.bytes, 'utf-8'), contents, undefined, { fileIsNote: true });
  const { html: computed } = await publishPost(note, {
    stem: source.stem, toolVersion: source.toolVersion, noteName: file.path, noteBytes: file.bytes, ...(source.published === null ? {} : { published: source.published }),
  });
  const values = printedValues(html);
  const compared = comparePosts(html, computed);
  const found = sameVersion ? compared : [...missingWords(html, computed, note), ...compared.filter((each) => judged.includes(each.kind))];
  const overlaps = (a: SourceRange, b: SourceRange): boolean => a.start <= b.end && b.start <= a.end;
  const differences = [...found, ...recompute(values, note).filter((each) => !found.some((other) => overlaps(each.range, other.range)))]
    .sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
  const broken = note.protocol === null || note.problems.some((each) => each.severity === 'error');
  return {
    ...base, note, claims: note.claims.length, values: values.length, differences, unjudged: sameVersion ? 0 : compared.filter((each) => !judged.includes(each.kind)).length,
    holds: faults.length === 0 && differences.length === 0 && !broken,
  };
}
