// The label of a place that belongs to a problem: "the first value stands here".
import type { RelatedPlace } from '../problems/problem.ts';
import { fixTitle } from './language.ts';

/** Related places name their sentence by key, like fixes; a key that is not in the list is shown as it is. */
export function relatedSentence(place: RelatedPlace): string {
  return fixTitle({ title: place.message, args: place.args });
}
