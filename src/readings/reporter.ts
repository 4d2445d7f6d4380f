// Gathers the problems of one block: ranges come in relative to the block's text and go out as places in the note.
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import type { ProblemCode } from '../problems/codes.ts';
import { fix, problem, type Fix, type MessageArguments, type Problem, type RelatedPlace, type SourceRange, type TextEdit } from '../problems/problem.ts';

/** A mend whose edits are relative to the block's text. */
export interface LocalFix {
  readonly title: string;
  readonly args: MessageArguments;
  readonly edits: readonly TextEdit[];
  readonly preferred?: boolean;
  readonly safe?: boolean;
}

export interface Complaint {
  readonly code: ProblemCode;
  readonly range: SourceRange;
  readonly args: MessageArguments;
  readonly fixes?: readonly LocalFix[];
}

export interface Reporter {
  readonly problems: Problem[];
  add(complaint: Complaint, related?: readonly RelatedPlace[]): void;
  /** A range of the block's text as a range of the note. */
  place(range: SourceRange): SourceRange;
}

export function createReporter(content: MappedText): Reporter {
  const problems: Problem[] = [];
  const place = (range: SourceRange): SourceRange => toDocumentRange(content, range);
  const toFix = (local: LocalFix): Fix => fix(
    local.title, local.args, local.edits.map((edit) => ({ range: place(edit.range), newText: edit.newText })),
    { preferred: local.preferred ?? false, safe: local.safe ?? false },
  );
  return {
    problems, place,
    add(complaint, related = []) {
      problems.push(problem(complaint.code, place(complaint.range), complaint.args, (complaint.fixes ?? []).map(toFix), related));
    },
  };
}

/** A fix that puts other text in the place of one range. */
export function replaceFix(range: SourceRange, newText: string, options: { preferred?: boolean; safe?: boolean } = {}): LocalFix {
  return { title: 'replace-with', args: { text: newText }, edits: [{ range, newText }], ...options };
}
