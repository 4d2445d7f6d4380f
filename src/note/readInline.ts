// Reads the inline text of a paragraph, heading or cell: its claims, and which of its characters are prose.
// It lets markdown-it do the parsing and watches which rule took which characters.
import type { MarkdownIt, StateBlock, StateInline, Token } from 'markdown-it';
import type { Piece } from './mappedText.ts';
import { addPiece } from './sourceLines.ts';
import { createNoteParser } from './markdown.ts';
import type { ClaimMeta, NoteEnvironment } from './claimRule.ts';
import { invisibleCharacter, touchedClaims, type Touched } from './touchedClaims.ts';

/** Characters of the inline text that a reader sees as prose, in runs; places are relative to the inline text. */
export interface InlineRun { readonly text: string; readonly pieces: readonly Piece[] }

export interface InlineReading {
  /** The words without their marks. */
  readonly words: string;
  readonly claims: readonly ClaimMeta[];
  /** Claims in the text of images, which stay plain text. */
  readonly imageClaims: readonly { readonly start: number; readonly end: number }[];
  readonly runs: readonly InlineRun[];
  /** Claims that a digit or a sign of the prose stands against. */
  readonly touched: readonly Touched[];
  /** Places of `{` that were read as plain text. */
  readonly plainBraces: readonly number[];
}

/** What happens to a character: `text` is prose, `skipped` is a mark inside a run, `apart` ends the run, `alternative` is the text of an image. */
type Fate = 0 | 1 | 2 | 3;
const text: Fate = 0;
const skipped: Fate = 1;
const apart: Fate = 2;
const alternative: Fate = 3;

interface Recorder {
  /** Depth of images: their text is parsed apart. */
  images: number;
  fates: Uint8Array;
  /** Characters that stand for an entity, by the place of its `&`. */
  entities: Map<number, string>;
  claims: ClaimMeta[];
  imageClaims: { start: number; end: number }[];
}

interface RecordingEnvironment extends NoteEnvironment { recorder?: Recorder }

type InlineRule = (state: StateInline, silent: boolean) => boolean;
type BlockRule = (state: StateBlock, startLine: number, endLine: number, silent: boolean) => boolean;
interface Rules<Rule> { readonly __rules__: readonly { readonly name: string; readonly fn: Rule; readonly alt: readonly string[] }[] }

const fateOfRule: Readonly<Record<string, Fate>> = {
  backticks: apart, autolink: apart, linkify: apart, evenwater_maths: apart, evenwater_claim: apart, image: apart,
};

/** HTML that ends a number; any other tag and a comment may stand inside one. */
const breaksNumbers = /^<\/?(?:br|su[bp])\b/i;

function isWordCharacter(character: string | undefined): boolean {
  return character !== undefined && /[\p{L}\p{N}]/u.test(character);
}

function record(recorder: Recorder, name: string, state: StateInline, start: number): void {
  const { fates } = recorder;
  const end = state.pos;
  const fate = fateOfRule[name];
  const token = state.tokens[state.tokens.length - 1];
  if (name === 'evenwater_claim' && token) recorder.claims.push(token.meta as unknown as ClaimMeta);
  if (fate !== undefined) fates.fill(fate, start, end);
  if (name === 'image') {
    const labelEnd = state.md.helpers.parseLinkLabel(state, start + 1, false);
    if (labelEnd > start + 2) fates.fill(alternative, start + 2, labelEnd);
    state.pos = end;
  }
  if (name === 'html_inline') fates.fill(breaksNumbers.test(state.src.slice(start, end)) ? apart : skipped, start, end);
  else if (name === 'emphasis' || name === 'strikethrough') {
    if (!isWordCharacter(state.src[start - 1]) || !isWordCharacter(state.src[end])) fates.fill(skipped, start, end);
  } else if (name === 'escape') fates[start] = skipped;
  else if (name === 'entity') {
    fates.fill(skipped, start, end);
    const character = token?.type === 'text_special' ? token.content : state.pending.slice(-1);
    if (token && !invisibleCharacter.test(character)) recorder.entities.set(start, character);
  } else if (name === 'link') {
    const labelEnd = state.md.helpers.parseLinkLabel(state, start, true);
    fates[start] = skipped;
    if (labelEnd > start) fates.fill(skipped, labelEnd, end);
    state.pos = end;
  }
}

function watchInline(md: MarkdownIt): void {
  const { __rules__: rules } = md.inline.ruler as unknown as Rules<InlineRule>;
  for (const { name, fn } of [...rules]) {
    md.inline.ruler.at(name, (state, silent) => {
      const recorder = (state.env as RecordingEnvironment).recorder;
      if (silent || !recorder) return fn(state, silent);
      const start = state.pos;
      if (name === 'image') recorder.images++;
      const taken = fn(state, silent);
      if (name === 'image') recorder.images--;
      if (taken && recorder.images === 0) record(recorder, name, state, start);
      if (taken && name === 'image' && recorder.images === 0) {
        const token = state.tokens[state.tokens.length - 1];
        for (const child of token?.children ?? []) {
          if (child.type !== 'evenwater_claim') continue;
          const meta = child.meta as unknown as ClaimMeta;
          recorder.imageClaims.push({ start: start + 2 + meta.start, end: start + 2 + meta.end });
          recorder.fates.fill(apart, start + 2 + meta.start, start + 2 + meta.end);
        }
      }
      return taken;
    });
  }
}

/** Leaves in the `tr_open` tokens of a table where each row starts in the text: only the table rule knows. */
function watchTables(md: MarkdownIt): void {
  const { __rules__: rules } = md.block.ruler as unknown as Rules<BlockRule>;
  const rule = rules.find(({ name }) => name === 'table');
  if (!rule) return;
  const { fn: table, alt } = rule;
  md.block.ruler.at('table', (state: StateBlock, startLine: number, endLine: number, silent: boolean) => {
    const before = state.tokens.length;
    const taken = table(state, startLine, endLine, silent);
    if (taken && !silent) for (let index = before; index < state.tokens.length; index++) {
      const token = state.tokens[index]!;
      const line = token.map?.[0];
      if (token.type !== 'tr_open' || line === undefined) continue;
      token.meta = { start: state.bMarks[line]! + state.tShift[line]!, end: state.eMarks[line]! };
    }
    return taken;
  }, { alt: [...alt] });
}

/** The parser of notes that also tells which rule took which characters. */
export function createWatchingParser(): MarkdownIt {
  const md = createNoteParser();
  watchInline(md);
  watchTables(md);
  return md;
}

const nothing: InlineReading = { words: '', claims: [], imageClaims: [], runs: [], touched: [], plainBraces: [] };

/** True for text in which no inline rule can find anything: letters, digits and the marks that mean nothing to Markdown. */
function isPlain(source: string): boolean {
  return !/[!$&*<[\\\]_`{}~\n]/.test(source) && !invisibleCharacter.test(source);
}

/** Parses the inline text of one token. `env` is the one that the blocks were parsed with, marked by `markNote`. */
export function readInline(md: MarkdownIt, source: string, env: NoteEnvironment): InlineReading {
  if (source === '' || env.evenwater?.maths.has(source)) return nothing;
  if (isPlain(source)) return { ...nothing, words: source, runs: [{ text: source, pieces: [{ offset: 0, document: 0, length: source.length }] }] };
  const recorder: Recorder = { images: 0, fates: new Uint8Array(source.length), entities: new Map(), claims: [], imageClaims: [] };
  const tokens: Token[] = [];
  const recording = env as RecordingEnvironment;
  recording.recorder = recorder;
  md.inline.parse(source, md, recording, tokens);
  delete recording.recorder;
  hideInvisible(source, recorder);
  const plainBraces: number[] = [];
  for (let at = source.indexOf('{'); at >= 0; at = source.indexOf('{', at + 1)) {
    if (recorder.fates[at] === text && source[at - 1] !== '\\') plainBraces.push(at);
  }
  const touched = touchedClaims(source, recorder.claims.map(({ start, end }) => ({ start, end })), (index) => shownAt(source, recorder, index));
  return { words: plainText(tokens), claims: recorder.claims, imageClaims: recorder.imageClaims, runs: proseRuns(source, recorder), touched, plainBraces };
}

/** Takes characters without a width out of the prose: a number stays one number with them in it. */
function hideInvisible(source: string, { fates }: Recorder): void {
  if (!invisibleCharacter.test(source)) return;
  for (let index = 0; index < source.length; index += 1) {
    if (fates[index] === text && invisibleCharacter.test(source[index]!)) fates[index] = skipped;
  }
}

/** What a reader sees for one character of the source; null where no prose stands. */
function shownAt(source: string, { fates, entities }: Recorder, index: number): string | null {
  if (fates[index] === apart || fates[index] === alternative) return null;
  return entities.get(index) ?? (fates[index] === text ? source[index]! : '');
}

function proseRuns(source: string, { fates, entities }: Recorder): InlineRun[] {
  const runs: InlineRun[] = [];
  let pieces: Piece[] = [];
  let prose = '';
  const finish = (): void => {
    if (prose.trim() !== '') runs.push({ text: prose, pieces });
    pieces = [];
    prose = '';
  };
  for (let index = 0; index < source.length;) {
    const fate = fates[index];
    let end = index + 1;
    while (end < source.length && fates[end] === fate && !entities.has(end)) end++;
    const entity = entities.get(index);
    if (fate === apart) finish();
    else if (entity !== undefined) {
      pieces.push({ offset: prose.length, document: index, length: entity.length });
      prose += entity;
    } else if (fate === text || fate === alternative) {
      addPiece(pieces, { offset: prose.length, document: index, length: end - index });
      prose += source.slice(index, end);
    }
    index = end;
  }
  finish();
  return runs;
}

/** The words of inline tokens without their marks. */
function plainText(tokens: readonly Token[]): string {
  let words = '';
  for (const token of tokens) {
    if (token.type === 'softbreak' || token.type === 'hardbreak') words += ' ';
    else if (token.type === 'image') words += plainText(token.children ?? []);
    else if (token.type !== 'html_inline') words += token.content;
  }
  return words;
}
