// What a post carries so that a stranger can recompute it: the note and its data files, byte for byte, as links to save
// them by (no script), each with its SHA-256; and the facts that making the post again needs, in the page's head.
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Note } from '../experiment/types.ts';
import { sha256Of } from '../protocol/sha256.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';
import type { PostWords } from '../words/post.ts';
import { fromBase64, toBase64 } from './base64.ts';

/** A file inside a post. `path` is relative to the folder that the note stands in. */
export interface EmbeddedFile { readonly role: 'note' | 'data'; readonly path: string; readonly bytes: Uint8Array; readonly sha256: string }

/** What a post was made from and with. */
export interface PostSource {
  readonly stem: string;
  readonly toolVersion: string;
  /** Time of publishing as the post prints it (ISO 8601), or null where it prints none. */
  readonly published: string | null;
  readonly files: readonly EmbeddedFile[];
}

/** The note and every data file that it read, in the note's order. `noteBytes`: the note's file as it is on disk, with its mark of byte order. */
export function embeddedFiles(note: Note, noteName: string, noteBytes: Uint8Array = utf8ToBytes(note.text)): EmbeddedFile[] {
  const files: EmbeddedFile[] = [{ role: 'note', path: noteName, bytes: noteBytes, sha256: sha256Of(noteBytes) }];
  for (const path of [...new Set(note.wants)]) {
    const bytes = note.ground.files.get(path);
    if (bytes) files.push({ role: 'data', path, bytes, sha256: sha256Of(bytes) });
  }
  return files;
}

const kindOf = (path: string): string => (/\.(?:md|markdown)$/i.test(path) ? 'text/markdown' : /\.(?:csv|tsv|txt)$/i.test(path) ? 'text/csv' : 'application/octet-stream');
const lastPart = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** The page's head: what the post was made from. */
export function embedMeta(source: PostSource): Html[] {
  return [
    element('meta', { name: 'evenwater:stem', content: source.stem }),
    element('meta', { name: 'evenwater:version', content: source.toolVersion }),
    ...(source.published === null ? [] : [element('meta', { name: 'evenwater:published', content: source.published })]),
    ...source.files.map((file) => element('meta', { name: `evenwater:${file.role}-sha256`, content: file.sha256 })),
  ];
}

/** The paragraph with the files to save. */
export function embedHtml(files: readonly EmbeddedFile[], words: PostWords['data']): Html {
  const links = files.map((file) => element('li', {},
    element('a', {
      class: 'evenwater-file', download: lastPart(file.path), 'data-role': file.role, 'data-path': file.path, 'data-sha256': file.sha256,
      href: `data:${kindOf(file.path)};base64,${toBase64(file.bytes)}`,
    }, escapeHtml(file.path)), escapeHtml(file.role === 'note' ? words.theNote : words.aDataFile)));
  return element('div', { class: 'evenwater-files' }, element('p', {}, escapeHtml(words.files)), element('ul', {}, ...links));
}

/** Why something could not be taken out of a post. */
export interface EmbedFault { readonly kind: 'no-note' | 'unreadable' | 'hash-differs' | 'unsafe-path'; readonly path: string; readonly at: number; readonly stated: string; readonly found: string }

/** Text of an attribute as `escapeHtml` wrote it. */
export const unescapeHtml = (text: string): string => text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, '\'').replace(/&amp;/g, '&');

/** The attributes of one tag. */
export function attributesOf(tag: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, name, value] of tag.matchAll(/\s([^\s=>"']+)="([^"]*)"/g)) found.set(name!, unescapeHtml(value!));
  return found;
}

/** True for a path that stays inside the folder it is written to, on every system. */
export function pathIsSafe(path: string): boolean {
  return path !== '' && !/^[/\\]|^[A-Za-z]:|[\0-\x1F\\]/.test(path) && path.split('/').every((part) => part !== '' && part !== '.' && part !== '..' && !/[. ]$/.test(part));
}

/** Takes the files and facts out of a post. Files with a fault are left out, except those whose hash differs. */
export function readEmbedded(html: string): { source: PostSource; faults: EmbedFault[] } {
  const facts = new Map<string, { content: string; at: number }[]>();
  const body = html.indexOf('<body');
  for (const match of html.slice(0, body < 0 ? html.length : body).matchAll(/<meta [^>]*>/g)) {
    const attributes = attributesOf(match[0]);
    const name = attributes.get('name') ?? '';
    if (name.startsWith('evenwater:')) facts.set(name, [...(facts.get(name) ?? []), { content: attributes.get('content') ?? '', at: match.index }]);
  }
  const fact = (name: string): string | null => facts.get(`evenwater:${name}`)?.[0]?.content ?? null;
  const files: EmbeddedFile[] = [];
  const faults: EmbedFault[] = [];
  const stated = { note: (facts.get('evenwater:note-sha256') ?? []).map((each) => each.content), data: (facts.get('evenwater:data-sha256') ?? []).map((each) => each.content) };
  const seen = { note: 0, data: 0 };
  for (const match of html.matchAll(/<a class="evenwater-file"[^>]*>/g)) {
    const attributes = attributesOf(match[0]);
    const role = attributes.get('data-role') === 'note' ? 'note' : 'data';
    const path = attributes.get('data-path') ?? '';
    const fault = (kind: EmbedFault['kind'], was: string, found: string): void => { faults.push({ kind, path, at: match.index, stated: was, found }); };
    const inHead = stated[role][seen[role]] ?? '';
    seen[role] += 1;
    if (!pathIsSafe(path)) { fault('unsafe-path', path, ''); continue; }
    const bytes = fromBase64(/^data:[^,]*;base64,(.*)$/.exec(attributes.get('href') ?? '')?.[1] ?? '?');
    if (!bytes) { fault('unreadable', '', ''); continue; }
    const sum = sha256Of(bytes);
    for (const said of new Set([attributes.get('data-sha256') ?? '', inHead])) if (said !== sum) fault('hash-differs', said, sum);
    files.push({ role, path, bytes, sha256: sum });
  }
  const notes = files.filter((file) => file.role === 'note');
  if (notes.length !== 1) faults.push({ kind: 'no-note', path: '', at: 0, stated: '1', found: String(notes.length) });
  return { source: { stem: fact('stem') ?? '', toolVersion: fact('version') ?? '', published: fact('published'), files }, faults };
}
