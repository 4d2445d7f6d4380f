// Open data of a note: a folder with tables, plan, metadata, note, data files and post, the same bytes from equal notes.
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Note } from '../../experiment/types.ts';
import { languageOf } from '../../words/languages.ts';
import { openDataWords } from '../../words/openData.ts';
import { embeddedFiles } from '../embed.ts';
import type { PublishedFile } from '../markdown/markdownPost.ts';
import { publishPost, type PostOptions } from '../post.ts';
import { publishedOf } from '../published.ts';
import { crateMetadata, type CrateFile } from './crate.ts';
import { csvText } from './csv.ts';
import { csvMetadata, dataPackage } from './descriptors.ts';
import { protocolJson, protocolJsonSchema, type Json } from './protocolJson.ts';
import { dataTables } from './tables.ts';

const jsonBytes = (value: Json): Uint8Array => utf8ToBytes(`${JSON.stringify(value, null, 2)}\n`);

/**
 * The files of `<stem>-data/`. Null when no time of publishing is known: an RO-Crate must state one, and it is never taken from a clock.
 */
export async function publishData(note: Note, options: PostOptions): Promise<PublishedFile[] | null> {
  const published = publishedOf(note, options.published);
  if (published === null || note.protocol === null) return null;
  const title = note.protocol.title?.value ?? note.syntax.headings.find((heading) => heading.level === 1)?.text ?? options.stem;
  const words = openDataWords(languageOf(note.protocol.language));
  const facts = { stem: options.stem, toolVersion: options.toolVersion, title, published };
  const tables = dataTables(note).map((table) => ({ table, bytes: utf8ToBytes(csvText(table.columns.map((column) => column.name), table.rows)) }));
  const { html } = await publishPost(note, options);
  const sources = embeddedFiles(note, options.noteName ?? `${options.stem}.tank.md`, options.noteBytes);
  const files: CrateFile[] = [
    { path: `${options.stem}.html`, bytes: utf8ToBytes(html), ...words.files.post, format: 'text/html', role: 'post' },
    ...sources.map((file): CrateFile => ({
      path: `note/${file.path}`, bytes: file.bytes, name: file.role === 'note' ? words.files.note.name : words.files.data.name(file.path), role: file.role,
      description: words.files[file.role].description, format: file.role === 'note' ? 'text/markdown' : 'text/csv',
    })),
    ...tables.map(({ table, bytes }): CrateFile => ({ path: table.path, bytes, name: table.title, description: table.description, format: 'text/csv', role: 'made' })),
    { path: 'protocol.json', bytes: jsonBytes(protocolJson(note)), ...words.files.plan, format: 'application/json', role: 'made' },
    { path: 'protocol.schema.json', bytes: jsonBytes(protocolJsonSchema()), ...words.files.schema, format: 'application/schema+json', role: 'metadata' },
    { path: 'csv-metadata.json', bytes: jsonBytes(csvMetadata(note, facts, tables.map((each) => each.table))), ...words.files.csv, format: 'application/csvm+json', role: 'metadata' },
    { path: 'datapackage.json', bytes: jsonBytes(dataPackage(note, facts, tables)), ...words.files.package, format: 'application/json', role: 'metadata' },
  ];
  const crate = { path: 'ro-crate-metadata.json', bytes: jsonBytes(crateMetadata(note, facts, files)) };
  return [...files, crate].map((file) => ({ path: `${options.stem}-data/${file.path}`, content: file.bytes }));
}
