// The one way to a SHA-256: of the plan, of a data file, of what a post carries.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 (FIPS 180-4) of bytes, or of a text as UTF-8, as 64 hexadecimal digits in lower case. */
export function sha256Of(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content));
}
