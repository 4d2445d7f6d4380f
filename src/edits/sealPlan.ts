// Seals a plan before the first reading: one line at its end, with the time and a digest over its facts.
import type { Note } from '../experiment/types.ts';
import { nothingRead } from '../experiment/waiting.ts';
import { addToPlan } from '../design/planEdits.ts';
import { planDeviations, planSealText } from '../protocol/planSeal.ts';
import type { Instant } from '../time/instant.ts';
import { done, refused, type EditResult } from './edit.ts';

/** Edits that seal the plan at `now`. After the first reading a seal would promise what it cannot hold. */
export function sealPlan(note: Note, now: Instant): EditResult {
  const { protocol } = note;
  if (!protocol) return refused('no-protocol');
  if (protocol.sealed) return refused(planDeviations(protocol) ? 'plan-seal-broken' : 'plan-already-sealed');
  if (!nothingRead(note.dataset)) return refused('plan-has-readings');
  if (note.problems.some((problem) => problem.severity === 'error' && problem.range.start >= protocol.range.start && problem.range.end <= protocol.range.end)) return refused('plan-has-errors');
  const edits = addToPlan(note.text, protocol, [`sealed: ${planSealText(protocol, now)}`]);
  return edits.length === 0 ? refused('plan-in-container') : done(edits);
}
