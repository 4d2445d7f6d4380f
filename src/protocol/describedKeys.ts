// What the keys of the plan mean in the reader's language. The schema's own words are English.
import { keyHelp } from '../words/de/keyHelp.ts';
import type { Language } from '../words/languages.ts';
import { protocolSchema, type SchemaKey } from './schema.ts';

/** Every key with its path from the top, placeholders of names and all: `tanks.TANK.size`. */
export const schemaPaths: ReadonlyMap<SchemaKey, string> = new Map(below(protocolSchema, ''));

function below(map: SchemaKey, path: string): [SchemaKey, string][] {
  return [...map.keys ?? [], ...map.entry ? [map.entry] : []].flatMap((key) => {
    const own = path === '' ? key.key : `${path}.${key.key}`;
    return [[key, own] as [SchemaKey, string], ...below(key, own)];
  });
}

/** One or two sentences on a key, in Markdown. */
export function describeKey(language: Language, key: SchemaKey): string {
  return (language === 'de' ? keyHelp[schemaPaths.get(key) ?? ''] : undefined) ?? key.description;
}
