// The time of publishing: from the option of the command line or the protocol, never from a clock.
import type { Note } from '../experiment/types.ts';
import { formatInstant, readDate, readDateTime } from '../time/text.ts';
import type { Zone } from '../time/instant.ts';
import type { Language } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { compatibleInstant } from '../time/zone.ts';

/** `2026-04-13T10:00+03:00`, `2026-04-13 10:00` (in the note's zone) or `2026-04-13` as ISO 8601; null when it is none of them. */
export function readPublished(text: string, zone: Zone): string | null {
  const trimmed = text.trim();
  if (readDate(trimmed)) return trimmed;
  const found = readDateTime(trimmed);
  if (!found) return null;
  if (found.offset !== null) {
    // As given: the offset is the publisher's own, and the post says the same in every zone.
    const instant = compatibleInstant(found.wall, { name: '', offsetAt: () => found.offset! });
    return formatInstant(instant, { name: '', offsetAt: () => found.offset! });
  }
  return formatInstant(compatibleInstant(found.wall, zone), zone);
}

/** What the post prints: the option, else the protocol's, else none. */
export function publishedOf(note: Note, option: string | undefined): string | null {
  if (option !== undefined) return option;
  const { protocol } = note;
  return protocol?.published ? formatInstant(protocol.published.value, protocol.zone) : null;
}

/** `2026-04-13T10:00:00+03:00` as `13 April 2026`. */
export function publishedWords(published: string, language: Language): string {
  const [year, month, day] = published.slice(0, 10).split('-').map(Number);
  return postWords(language).date({ year: year!, month: month!, day: day! });
}
