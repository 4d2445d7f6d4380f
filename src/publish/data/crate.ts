// The RO-Crate (version 1.2) that ties post, note, data and tool version together, as flattened JSON-LD.
import type { Note } from '../../experiment/types.ts';
import { formatInstant } from '../../time/text.ts';
import { languageOf } from '../../words/languages.ts';
import { openDataWords } from '../../words/openData.ts';
import { sha256Of } from '../../protocol/sha256.ts';
import { licenceOf, type PackageFacts } from './descriptors.ts';
import type { Json } from './protocolJson.ts';

export interface CrateFile { readonly path: string; readonly bytes: Uint8Array; readonly name: string; readonly description: string; readonly format: string; readonly role: 'post' | 'note' | 'data' | 'made' | 'metadata' }

/** An address inside the crate: path segments percent-encoded. */
const idOf = (path: string): string => path.split('/').map(encodeURIComponent).join('/');
const reference = (id: string): Json => ({ '@id': id });

/** `ro-crate-metadata.json`. */
export function crateMetadata(note: Note, facts: PackageFacts, files: readonly CrateFile[]): Json {
  const { protocol } = note;
  const words = openDataWords(languageOf(protocol?.language)).crate;
  const licence = licenceOf(note);
  const licenceId = licence === null ? '#no-licence' : licence.url ?? '#licence';
  const place = protocol?.place;
  const schedule = protocol?.schedule;
  const variables = protocol?.measure ?? [];
  const span = schedule && protocol ? `${formatInstant(schedule.start, protocol.zone)}/${formatInstant(schedule.end ?? schedule.start, protocol.zone)}` : null;
  const entities: Json[] = [
    { '@id': 'ro-crate-metadata.json', '@type': 'CreativeWork', conformsTo: reference('https://w3id.org/ro/crate/1.2'), about: reference('./') },
    {
      '@id': './', '@type': 'Dataset', name: facts.title, description: protocol?.question?.value ?? facts.title, datePublished: facts.published, license: reference(licenceId),
      ...(protocol?.by ? { author: reference('#author') } : {}), ...(protocol ? { inLanguage: protocol.language } : {}), ...(span ? { temporalCoverage: span } : {}),
      ...(place?.name ? { spatialCoverage: reference('#place') } : {}), ...(variables.length > 0 ? { variableMeasured: variables.map((each) => reference(`#variable-${encodeURIComponent(each.id)}`)) } : {}),
      hasPart: files.map((file) => reference(idOf(file.path))), mentions: reference('#publishing'),
    },
    ...files.map((file): Json => ({
      '@id': idOf(file.path), '@type': 'File', name: file.name, description: file.description, encodingFormat: file.format, contentSize: String(file.bytes.length), sha256: sha256Of(file.bytes),
    })),
    {
      '@id': '#publishing', '@type': 'CreateAction', name: words.publishing, endTime: facts.published, instrument: reference('#evenwater'),
      object: files.filter((file) => file.role === 'note' || file.role === 'data').map((file) => reference(idOf(file.path))),
      result: files.filter((file) => file.role === 'post' || file.role === 'made').map((file) => reference(idOf(file.path))),
      ...(protocol?.by ? { agent: reference('#author') } : {}),
    },
    { '@id': '#evenwater', '@type': 'SoftwareApplication', name: 'Evenwater', softwareVersion: facts.toolVersion, description: words.tool },
    licence === null ? { '@id': '#no-licence', '@type': 'CreativeWork', ...words.noLicence }
      : { '@id': licenceId, '@type': 'CreativeWork', name: licence.title, description: words.licence(licence.title) },
    ...(protocol?.by ? [{ '@id': '#author', '@type': 'Person', name: protocol.by.value }] : []),
    ...(place?.name ? [{
      '@id': '#place', '@type': 'Place', name: place.name.value, ...(place.latitude && place.longitude ? { geo: reference('#coordinates') } : {}),
    }, ...(place.latitude && place.longitude ? [{ '@id': '#coordinates', '@type': 'GeoCoordinates', latitude: String(place.latitude.value), longitude: String(place.longitude.value) }] : [])] : []),
    ...variables.map((each): Json => ({
      '@id': `#variable-${encodeURIComponent(each.id)}`, '@type': 'PropertyValue', name: each.what?.value ?? each.id, alternateName: each.id,
      ...(each.unit && each.unit.symbol !== '1' ? { unitText: each.unit.symbol, unitCode: each.unit.ucum } : {}),
      ...(each.with ? { measurementTechnique: each.with.value } : {}),
    })),
  ];
  return { '@context': 'https://w3id.org/ro/crate/1.2/context', '@graph': entities };
}
