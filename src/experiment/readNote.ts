// Reads a note whole: text and data files in, one immutable Note out. The one wiring of the pure rooms;
// read it from top to bottom, and ground.ts beside it, to see the data's way through the house.
import { designCodes } from '../problems/codes/design.ts';
import { sortProblems, type Problem } from '../problems/problem.ts';
import { readSyntax } from '../note/readSyntax.ts';
import type { FileContents } from '../readings/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import { checkAgainstWords } from '../claims/againstWords.ts';
import { checkClaim } from '../claims/checkClaim.ts';
import { findLooseNumbers } from '../claims/looseNumbers.ts';
import { checkWording } from '../claims/wording.ts';
import type { CheckedClaim } from '../claims/types.ts';
import type { NoteSyntax } from '../note/syntax.ts';
import { checkDesign } from '../design/checkDesign.ts';
import { separateAccepted } from './accepted.ts';
import { readDrawnBlocks } from './drawnBlocks.ts';
import { readGround, type Ground } from './ground.ts';
import { changeBetween, claimsByPlace, moveClaim } from './movedClaims.ts';
import type { Note } from './types.ts';
import { findTemplateText } from './templateText.ts';
import { leaveWaiting, nothingRead } from './waiting.ts';

export const noFiles: FileContents = new Map();

export interface ReadNoteOptions {
  /** True for `*.tank.md`: a missing protocol is then a problem, not a sign that this is plain Markdown. */
  readonly fileIsNote?: boolean;
}

/**
 * Reads a note.
 * @param text the note's whole text, as it stands in the editor or on disk
 * @param files bytes of the data files named in `wants` of an earlier reading; a path that is absent is not loaded yet, null is missing
 * @param previous an earlier Note of the same document; parts whose text did not change are taken from it
 */
export function readNote(text: string, files: FileContents = noFiles, previous?: Note, options: ReadNoteOptions = {}): Note {
  if (previous && previous.text === text && previous.ground.files === files) return previous;
  const syntax = readSyntax(text, previous?.syntax, options);
  const ground = readGround(syntax.blocks, files, previous?.ground ?? null);
  const { protocol, tables, wants, dataset, context, results, equalise, stopRules } = ground;
  const drawn = readDrawnBlocks(syntax, ground, previous);
  const common = { text, syntax, ground, protocol, tables, dataset, context, results, equalise, stopRules, wants, drawn };
  if (!protocol) return { ...common, claims: [], problems: sortProblems([...syntax.problems, ...ground.problems]), accepted: [] };

  const claims = checkClaims(syntax, ground, previous);
  const waits = nothingRead(dataset);
  const found = [
    ...syntax.problems, ...ground.problems,
    ...claims.flatMap((claim) => claim.problems),
    ...findLooseNumbers(syntax.prose, context, syntax.claims),
    ...checkWording(syntax, context),
    ...checkAgainstWords(syntax, claims, context),
    ...findTemplateText(syntax, { read: !waits, planSealed: protocol.sealed !== null }),
    ...[...drawn.values()].flatMap((each) => each.problems),
    ...designProblems(ground, text, previous),
  ];
  const place = tables[0]?.headRange ?? protocol.schedule?.range ?? protocol.range;
  const { standing, accepted } = separateAccepted(waits ? leaveWaiting(found, claims, place) : found, protocol);
  return { ...common, claims, problems: sortProblems(standing), accepted: sortProblems(accepted) };
}

/** The design check; on the same ground that of the earlier note stands. */
function designProblems(ground: Ground, text: string, previous: Note | undefined): readonly Problem[] {
  if (previous?.ground === ground) return [...previous.problems, ...previous.accepted].filter((each) => Object.hasOwn(designCodes, each.code));
  return ground.protocol ? checkDesign(ground.protocol, ground.context, text) : [];
}

/** Checks every claim; those of the earlier note that stand on the same ground and say the same only move. */
function checkClaims(syntax: NoteSyntax, ground: Ground, previous: Note | undefined): CheckedClaim[] {
  if (previous?.ground !== ground) return syntax.claims.map((claim) => checkClaim(claim, ground.context));
  const change = changeBetween(previous.text, syntax.text);
  const earlier = claimsByPlace(previous.claims, change);
  return syntax.claims.map((claim) => {
    const found = earlier.get(claim.range.start);
    return (found && moveClaim(found, claim, change)) ?? checkClaim(claim, ground.context);
  });
}

/** What formulas of this note are evaluated against. */
export function contextOf(note: Note): FormulaContext {
  return note.context;
}
