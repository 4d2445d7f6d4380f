// The methods, written from the protocol and the readings: one paragraph a topic, every figure with its formula.
import type { Note } from '../experiment/types.ts';
import { describeCare } from './care.ts';
import { describeComputing, describeEvents, describeEvidence, describeInstruments, describeStopRules } from './computing.ts';
import { describeDesign, describeEqualStart } from './design.ts';
import { paragraph, type RunPieces } from './figures.ts';
import { describeOrder, describePlanHistory } from './planHistory.ts';
import { describeDeviations, describeLight, describeSampling } from './sampling.ts';
import { describeSideBySide } from './sideBySide.ts';
import { writeResults } from './results.ts';
import type { Paragraph } from './types.ts';

/** The methods of a note; empty without a protocol. Topics whose facts are missing are left away. */
export function writeMethods(note: Note): Paragraph[] {
  const { protocol } = note;
  if (!protocol) return [];
  const written = note.syntax.blocks.some((block) => block.word === 'results') ? writeResults(note).flatMap((each) => each.runs) : [];
  const formulas = written.flatMap((run) => (run.kind === 'value' ? [run.formula] : []));
  const plusMinus = note.syntax.claims.some((claim) => claim.words.text.includes('±')) || written.some((run) => run.text.includes('±'));
  const topics: readonly (readonly [string, readonly RunPieces[]])[] = [
    ['design', describeDesign(note, protocol)],
    ['plan', describePlanHistory(note, protocol)],
    ['equal start', describeEqualStart(note, protocol)],
    ['schedule', [...describeLight(note, protocol), ...describeSampling(note, protocol), ...describeOrder(protocol)]],
    ['events', describeEvents(note, protocol)],
    ['instruments', [...describeInstruments(note, protocol), ...describeSideBySide(note, protocol)]],
    ['readings', [...describeDeviations(note, protocol), ...describeCare(note, protocol)]],
    ['computing', describeComputing(note, protocol, formulas, plusMinus)],
    ['stop rules', describeStopRules(note, protocol)],
    ['evidence', describeEvidence(protocol)],
  ];
  return topics.flatMap(([topic, sentences]) => paragraph(topic, sentences) ?? []);
}
