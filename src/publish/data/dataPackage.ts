// Open data of a note: a folder with tables, plan, metadata, note, data files and post, the same bytes from equal notes.
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Note } from '../../experiment/types.ts';
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
  const facts = { stem: options.stem, toolVersion: options.toolVersion, title, published };
  const tables = dataTables(note).map((table) => ({ table, bytes: utf8ToBytes(csvText(table.columns.map((column) => column.name), table.rows)) }));
  const { html } = await publishPost(note, options);
  const sources = embeddedFiles(note, options.noteName ?? `${options.stem}.tank.md`, options.noteBytes);
  const files: CrateFile[] = [
    { path: `${options.stem}.html`, bytes: utf8ToBytes(html), name: 'The post', description: 'The published page, with the note and its data inside.', format: 'text/html', role: 'post' },
    ...sources.map((file): CrateFile => ({
      path: `note/${file.path}`, bytes: file.bytes, name: file.role === 'note' ? 'The note' : `Data file ${file.path}`, role: file.role,
      description: file.role === 'note' ? 'Plan, readings, formulas and text in one file.' : 'A data file that the note pins.', format: file.role === 'note' ? 'text/markdown' : 'text/csv',
    })),
    ...tables.map(({ table, bytes }): CrateFile => ({ path: table.path, bytes, name: table.title, description: table.description, format: 'text/csv', role: 'made' })),
    { path: 'protocol.json', bytes: jsonBytes(protocolJson(note)), name: 'The plan', description: 'The protocol of the note as JSON.', format: 'application/json', role: 'made' },
    { path: 'protocol.schema.json', bytes: jsonBytes(protocolJsonSchema()), name: 'JSON Schema of the plan', description: 'What each key of the plan holds.', format: 'application/schema+json', role: 'metadata' },
    { path: 'csv-metadata.json', bytes: jsonBytes(csvMetadata(note, facts, tables.map((each) => each.table))), name: 'Metadata of the tables', description: 'Columns, types and units as CSV on the Web.', format: 'application/csvm+json', role: 'metadata' },
    { path: 'datapackage.json', bytes: jsonBytes(dataPackage(note, facts, tables)), name: 'Descriptor of the tables', description: 'Columns, types and units as a Data Package.', format: 'application/json', role: 'metadata' },
  ];
  const crate = { path: 'ro-crate-metadata.json', bytes: jsonBytes(crateMetadata(note, facts, files)) };
  return [...files, crate].map((file) => ({ path: `${options.stem}-data/${file.path}`, content: file.bytes }));
}
