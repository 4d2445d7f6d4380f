// A claim after it was checked.
import type { Problem } from '../problems/problem.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { Evaluation } from '../formula/types.ts';

/** The four marks: computed, condition checked, stated, unchecked. */
export type Mark = 'computed' | 'condition' | 'stated' | 'unchecked';

export interface CheckedClaim {
  readonly syntax: ClaimSyntax;
  readonly mark: Mark;
  /** `holds`; `mismatch`: the number differs; `false`: the condition is not true; `unfilled`: `{? = …}`; `failed`: cannot be computed. */
  readonly state: 'holds' | 'mismatch' | 'false' | 'unfilled' | 'failed';
  /** null for `stated`. */
  readonly evaluation: Evaluation | null;
  /** The computed value as the note would show it (for `unfilled`, what the preview shows and *fill in* writes); null when there is none. */
  readonly computed: string | null;
  /** Machine form for `<data value>`: an unrounded number, an instant, `true`; null when there is none. */
  readonly machine: string | null;
  /** True where the words say `about`, `around`, `nearly`, `~`. */
  readonly approximate: boolean;
  readonly problems: readonly Problem[];
}
