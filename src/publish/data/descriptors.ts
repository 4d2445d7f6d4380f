// The metadata of a data package: CSV on the Web (W3C Recommendation 2015), Data Package (Frictionless, version 1).
import type { Note } from '../../experiment/types.ts';
import { languageOf } from '../../words/languages.ts';
import { openDataWords } from '../../words/openData.ts';
import { sha256Of } from '../../protocol/sha256.ts';
import type { Json } from './protocolJson.ts';
import type { ColumnType, DataColumn, DataTable } from './tables.ts';

export interface PackageFacts {
  readonly stem: string;
  readonly toolVersion: string;
  readonly title: string;
  readonly published: string;
}
export interface TableFile { readonly table: DataTable; readonly bytes: Uint8Array }

/** `Overnight oxygen` to `overnight-oxygen`. */
export const slug = (text: string): string => text.toLowerCase().normalize('NFKD').replace(/[^a-z0-9._-]+/g, '-').replace(/^[-.]+|[-.]+$/g, '') || 'note';

const licences: readonly (readonly [RegExp, string, string])[] = [
  [/^cc[- ]?0\b|public domain/i, 'CC0-1.0', 'https://creativecommons.org/publicdomain/zero/1.0/'],
  [/^cc[- ]by[- ]4\.0$/i, 'CC-BY-4.0', 'https://creativecommons.org/licenses/by/4.0/'],
  [/^cc[- ]by[- ]sa[- ]4\.0$/i, 'CC-BY-SA-4.0', 'https://creativecommons.org/licenses/by-sa/4.0/'],
  [/^cc[- ]by[- ]nc[- ]4\.0$/i, 'CC-BY-NC-4.0', 'https://creativecommons.org/licenses/by-nc/4.0/'],
  [/^cc[- ]by[- ]nc[- ]sa[- ]4\.0$/i, 'CC-BY-NC-SA-4.0', 'https://creativecommons.org/licenses/by-nc-sa/4.0/'],
  [/^cc[- ]by[- ]nd[- ]4\.0$/i, 'CC-BY-ND-4.0', 'https://creativecommons.org/licenses/by-nd/4.0/'],
  [/^odbl[- ]1\.0$/i, 'ODbL-1.0', 'https://opendatacommons.org/licenses/odbl/1-0/'],
];

/** The licence that the protocol names, with its address where it is a known one. */
export function licenceOf(note: Note): { name: string; title: string; url: string | null } | null {
  const title = note.protocol?.licence?.value.trim();
  if (!title) return null;
  const known = licences.find(([pattern]) => pattern.test(title));
  return { title, name: known?.[1] ?? slug(title), url: known?.[2] ?? (/^https?:\/\/\S+$/.test(title) ? title : null) };
}

const fieldTypes: Readonly<Record<ColumnType, { readonly type: string; readonly format?: string; readonly more?: { readonly [key: string]: Json } }>> = {
  text: { type: 'string' }, number: { type: 'number' }, integer: { type: 'integer' }, time: { type: 'datetime', format: 'any' }, utc: { type: 'datetime', format: 'default' },
  'yes-no': { type: 'boolean', more: { trueValues: ['yes'], falseValues: ['no'] } },
};

function field(column: DataColumn): Json {
  const { type, format, more } = fieldTypes[column.type];
  return {
    name: column.name, title: column.title, type, ...(format ? { format } : {}), ...more, description: column.description,
    ...(column.unit ? { unit: column.unit.symbol, unitUcum: column.unit.ucum } : {}),
    ...(column.required ? { constraints: { required: true } } : {}),
  };
}

/** `datapackage.json`. */
export function dataPackage(note: Note, facts: PackageFacts, files: readonly TableFile[]): Json {
  const licence = licenceOf(note);
  const { protocol } = note;
  const words = openDataWords(languageOf(protocol?.language));
  return {
    profile: 'tabular-data-package', name: slug(facts.stem), title: facts.title,
    ...(protocol?.question ? { description: protocol.question.value } : {}), created: datetime(facts.published),
    ...(protocol?.by ? { contributors: [{ title: protocol.by.value, role: 'author' }] } : {}),
    ...(licence ? { licenses: [{ name: licence.name, title: licence.title, ...(licence.url === null ? {} : { path: licence.url }) }] } : {}),
    keywords: [...words.keywords, ...new Set(protocol?.measure.flatMap((each) => (each.what ? [each.what.value] : [])) ?? [])],
    sources: [{ title: words.source, path: 'ro-crate-metadata.json' }],
    resources: files.map(({ table, bytes }) => ({
      profile: 'tabular-data-resource', name: table.name, path: table.path, title: table.title, description: table.description, format: 'csv', mediatype: 'text/csv', encoding: 'utf-8',
      bytes: bytes.length, hash: `sha256:${sha256Of(bytes)}`, dialect: { delimiter: ',', quoteChar: '"', doubleQuote: true, lineTerminator: '\r\n', header: true },
      schema: { fields: table.columns.map(field), primaryKey: [...table.key], missingValues: [''] },
    })),
  };
}

/** A date alone counts as the start of that day in UTC. */
const datetime = (published: string): string => (published.length === 10 ? `${published}T00:00:00Z` : published);

const datatypes: Readonly<Record<ColumnType, Json>> = {
  text: 'string', number: 'double', integer: 'integer', time: 'dateTimeStamp', utc: 'dateTimeStamp', 'yes-no': { base: 'boolean', format: 'yes|no' },
};

/** `csv-metadata.json`: one group for all tables. Units stand as UCUM codes (`schema:unitCode`). */
export function csvMetadata(note: Note, facts: PackageFacts, tables: readonly DataTable[]): Json {
  const licence = licenceOf(note);
  return {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': note.protocol?.language ?? 'en' }], '@type': 'TableGroup',
    'dc:title': facts.title, ...(note.protocol?.question ? { 'dc:description': note.protocol.question.value } : {}),
    ...(note.protocol?.by ? { 'dc:creator': note.protocol.by.value } : {}), 'dc:issued': facts.published,
    ...(licence ? { 'dc:rights': licence.title, ...(licence.url === null ? {} : { 'dc:license': { '@id': licence.url } }) } : {}),
    'schema:softwareVersion': `Evenwater ${facts.toolVersion}`,
    tables: tables.map((table) => ({
      '@type': 'Table', url: table.path, 'dc:title': table.title, 'dc:description': table.description,
      dialect: { '@type': 'Dialect', encoding: 'utf-8', delimiter: ',', header: true, lineTerminators: ['\r\n'], quoteChar: '"', doubleQuote: true },
      tableSchema: {
        '@type': 'Schema', primaryKey: table.key.map(columnName),
        columns: table.columns.map((column) => ({
          '@type': 'Column', name: columnName(column.name), titles: column.name, 'dc:description': column.description, datatype: datatypes[column.type], null: '', ...(column.required ? { required: true } : {}),
          ...(column.unit ? { 'schema:unitText': column.unit.symbol, 'schema:unitCode': column.unit.ucum } : {}),
        })),
      },
    })),
  };
}

/** Names of CSVW columns are URI template variables: letters, digits, underscores, dots; anything else percent-encoded. Source: RFC 6570, section 2.3. */
function columnName(name: string): string {
  return name.replace(/ /g, '_').replace(/[^A-Za-z0-9_.]/gu, (character) => {
    const encoded = encodeURIComponent(character);
    return encoded === character ? `%${character.charCodeAt(0).toString(16).toUpperCase()}` : encoded;
  });
}
