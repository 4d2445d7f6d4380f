// The post: one self-contained HTML file of a note, with its figures, its formulas and its readings; no script, no network.
import type { Problem } from '../problems/problem.ts';
import type { Note } from '../experiment/types.ts';

export interface PostOptions {
  /** File name without `.tank.md`: the name of the post, and its title when the note has none. */
  readonly stem: string;
  readonly toolVersion: string;
}

/**
 * Makes the post. `problems` are those found while drawing it (figures, tables); whether a note with errors may be
 * published is the caller's decision, from `note.problems`.
 */
export async function publishPost(_note: Note, _options: PostOptions): Promise<{ html: string; problems: Problem[] }> {
  return { html: '', problems: [] };
}
