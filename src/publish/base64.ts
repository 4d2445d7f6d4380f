// Bytes as base64 and back (RFC 4648, section 4), without the host's help: the pure rooms have none.

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes as base64 with padding. */
export function toBase64(bytes: Uint8Array): string {
  const parts: string[] = [];
  let part = '';
  for (let index = 0; index < bytes.length; index += 3) {
    const left = bytes.length - index;
    const group = (bytes[index]! << 16) | ((bytes[index + 1] ?? 0) << 8) | (bytes[index + 2] ?? 0);
    part += alphabet[group >> 18]! + alphabet[(group >> 12) & 63]! + (left > 1 ? alphabet[(group >> 6) & 63]! : '=') + (left > 2 ? alphabet[group & 63]! : '=');
    if (part.length > 8192) { parts.push(part); part = ''; }
  }
  return parts.join('') + part;
}

/** The bytes of a base64 text with padding; null when it is none. */
export function fromBase64(text: string): Uint8Array | null {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) return null;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  let at = 0;
  for (let index = 0; index < text.length; index += 4) {
    let group = 0;
    for (let place = 0; place < 4; place += 1) {
      const code = text.charCodeAt(index + place);
      const digit = code === 61 ? 0 : code === 43 ? 62 : code === 47 ? 63 : code < 58 ? code + 4 : code < 91 ? code - 65 : code - 71;
      group = (group << 6) | digit;
    }
    for (let shift = 16; shift >= 0 && at < bytes.length; shift -= 8) { bytes[at] = (group >> shift) & 255; at += 1; }
  }
  return bytes;
}
