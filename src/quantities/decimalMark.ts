// Which decimal mark a language writes. Source: Unicode CLDR number symbols, as a short list of the comma languages.
export type DecimalMark = '.' | ',';

const commaLanguages = new Set(('af az be bg bs ca cs da de el es et eu fi fo fr gl hr hu hy id is it ka kk lb lt lv mk nb nl nn no pl pt ro '
  + 'ru sk sl sq sr sv tr uk uz vi').split(' '));
const pointRegions = new Set(['de-ch', 'de-li', 'it-ch', 'fr-ch', 'es-mx', 'es-us', 'es-gt', 'es-hn', 'es-ni', 'es-pa', 'es-sv', 'es-do', 'es-pr', 'es-pe', 'es-cu']);

/** `,` for a language that writes 7,31; `.` for every other. `language` is a BCP 47 tag such as `en` or `nl-BE`. */
export function decimalMarkOf(language: string): DecimalMark {
  const tag = language.trim().toLowerCase().replace('_', '-');
  if (pointRegions.has(tag)) return '.';
  if (tag === 'en-za') return ',';
  return commaLanguages.has(tag.split('-')[0] ?? '') ? ',' : '.';
}
