// Bytes of a data file as text: UTF-8, UTF-16 with or without a byte order mark, else Windows-1252 as old loggers write it.

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
export const encodings: readonly Encoding[] = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'];

/** Windows-1252 from 0x80 to 0x9f; the rest is Latin-1. */
const windows = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** The encoding that the bytes show: a byte order mark, zero bytes of UTF-16, valid UTF-8, else Windows-1252. */
export function detectEncoding(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const sample = Math.min(bytes.length, 2000) & ~1;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let index = 0; index < sample; index += 2) {
    if (bytes[index] === 0) evenZeros += 1;
    if (bytes[index + 1] === 0) oddZeros += 1;
  }
  if (sample >= 8 && oddZeros * 3 > sample) return 'utf-16le';
  if (sample >= 8 && evenZeros * 3 > sample) return 'utf-16be';
  return decodeUtf8(bytes) === null ? 'windows-1252' : 'utf-8';
}

/** The text without its byte order mark. What cannot be decoded becomes U+FFFD. */
export function decodeText(bytes: Uint8Array, encoding: Encoding): string {
  const text = encoding === 'utf-8' ? decodeUtf8(bytes) ?? decodeWindows(bytes)
    : encoding === 'windows-1252' ? decodeWindows(bytes) : decodeUtf16(bytes, encoding === 'utf-16le');
  return text.startsWith('\ufeff') ? text.slice(1) : text;
}

const chunk = 8192;

function decodeUtf16(bytes: Uint8Array, little: boolean): string {
  const parts: string[] = [];
  let units: number[] = [];
  for (let index = 0; index + 1 < bytes.length; index += 2) {
    units.push(little ? bytes[index]! | (bytes[index + 1]! << 8) : (bytes[index]! << 8) | bytes[index + 1]!);
    if (units.length === chunk) { parts.push(String.fromCharCode(...units)); units = []; }
  }
  parts.push(String.fromCharCode(...units));
  return parts.join('');
}

function decodeWindows(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let from = 0; from < bytes.length; from += chunk) {
    const codes = Array.from(bytes.subarray(from, from + chunk), (byte) => (byte >= 0x80 && byte <= 0x9f ? windows.charCodeAt(byte - 0x80) : byte));
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}

/** null when the bytes are not valid UTF-8. */
function decodeUtf8(bytes: Uint8Array): string | null {
  const parts: string[] = [];
  let codes: number[] = [];
  for (let index = 0; index < bytes.length;) {
    const first = bytes[index]!;
    const length = first < 0x80 ? 1 : first >= 0xc2 && first < 0xe0 ? 2 : first >= 0xe0 && first < 0xf0 ? 3 : first >= 0xf0 && first < 0xf5 ? 4 : 0;
    if (length === 0 || index + length > bytes.length) return null;
    let code = length === 1 ? first : first & (0x7f >> length);
    for (let step = 1; step < length; step += 1) {
      const next = bytes[index + step]!;
      if ((next & 0xc0) !== 0x80) return null;
      code = (code << 6) | (next & 0x3f);
    }
    if (code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff) || (length === 3 && code < 0x800) || (length === 4 && code < 0x10000)) return null;
    codes.push(code);
    index += length;
    if (codes.length === chunk) { parts.push(String.fromCodePoint(...codes)); codes = []; }
  }
  parts.push(String.fromCodePoint(...codes));
  return parts.join('');
}
