// English sentences for the problems of src/design. Arguments arrive as text or numbers, already formatted.
import type { designCodes } from '../../../problems/codes/design.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { lengthWords, listedText } from '../grammar.ts';

/** `the mat tank and the open tank`. */
function names(args: MessageArguments, name: string): string {
  const value = args[name];
  return listedText(typeof value === 'object' ? value : [text(args, name)]);
}

/** `mat tank: not stated; open tank: air pump`. */
const sides = (args: MessageArguments): string => [args['sides'] ?? []].flat().map((each) => String(each).replace(/: $/, ': not stated')).join('; ');

/** How the trade calls a part of the plan. */
const partNames: Readonly<Record<string, string>> = {
  question: 'question', hypothesis: 'hypothesis', place: 'place', tanks: 'tanks', differs: 'differs', schedule: 'schedule', events: 'events', measure: 'instruments',
  equalise: 'equalisation steps', phases: 'phases', limits: 'limits', stop: 'stop rules', order: 'reading order', seed: 'seed', pairWithin: 'pairing', expect: 'expectations',
};
const parts = (args: MessageArguments): string => listedText([args['parts'] ?? []].flat().map((each) => partNames[String(each)] ?? String(each)));

const several = (args: MessageArguments, name: string): boolean => { const value = args[name]; return typeof value === 'object' && value.length > 1; };

export const designSentences: Sentences<keyof typeof designCodes> = {
  'no-control': (args) => `No tank has the role of control, so nothing can be compared with ${names(args, 'tanks')}; give one tank "role: control".`,
  'one-tank-per-role': (args) => (text(args, 'both') === 'yes'
    ? 'With one tank a side the run can show that these two tanks differed, not that the treatment made them differ; repeat it with the tanks changed over.'
    : `The ${names(args, 'tanks')} stands alone on its side, so a difference may lie in that tank rather than in the treatment; add a tank, or repeat with the tanks changed over.`),
  'tanks-differ-undeclared': (args) => `The tanks differ in ${text(args, 'key')} (${sides(args)}), which "differs" does not name; make them alike or name it.`,
  'tanks-differ-in-readings': (args) => `Before the treatment the ${text(args, 'what')} of the ${text(args, 'tank')} and of the ${text(args, 'other')} stood ${text(args, 'difference')} apart; bring them within ${text(args, 'most')}.`,
  'event-in-one-tank': (args) => `"${text(args, 'what')}" happens in ${names(args, 'tanks')} only; do it in ${names(args, 'others')} too, or after the run.`,
  'common-step': (args) => `At ${text(args, 'time')} ${text(args, 'quantity')} jumps alike in the ${names(args, 'tanks')} (${names(args, 'steps')}); look at the probe and the sample before trusting a change across it, and log what was done as an event.`,
  'same-tank-first': (args) => `The ${text(args, 'tank')} is always read first with the ${text(args, 'instrument')}; change the order from slot to slot ("order: alternate" or "order: random").`,
  'few-readings-before-lights-off': (args) => `Only ${text(args, 'count')} ${text(args, 'count') === '1' ? 'reading is' : 'readings are'} planned up to lights-off at ${text(args, 'time')}; plan at least ${text(args, 'needed')}.`,
  'run-ends-early': (args) => `The last reading is planned before ${text(args, 'event')} at ${text(args, 'time')} is over (the run ends at ${text(args, 'end')}), so the lowest value and the recovery may be missed; end later.`,
  'interval-too-coarse': (args) => `${text(args, 'count') === '0' ? 'No reading falls' : text(args, 'count') === '1' ? 'Only one reading falls' : `Only ${text(args, 'count')} readings fall`} into "${text(args, 'phase')}" (${text(args, 'length')}); read more often there.`,
  'interval-coarse-for-rate': (args) => `In the ${lengthWords(text(args, 'gap'))} between two readings ${text(args, 'quantity')} may change by ${text(args, 'change')}, more than the ${text(args, 'effect')} that the run is to show; read more often.`,
  'effect-below-instrument': (args) => `An effect of ${text(args, 'effect')} in ${text(args, 'quantity')} is below what the instrument can tell between two tanks (${text(args, 'least')}).`,
  'instrument-without-accuracy': (args) => `The accuracy of ${text(args, 'instrument') ? `the ${text(args, 'instrument')}` : 'the instrument'} for ${text(args, 'quantity')} is not stated, so its readings have no uncertainty; add "accuracy:" from its manual.`,
  'calibration-old': (args) => `The instrument for ${text(args, 'quantity')} was calibrated on ${text(args, 'date')}, ${text(args, 'days')} days before the start; calibrate it again (every ${text(args, 'most')} days or less).`,
  'pressure-level-missing': (args) => `Say at which level ${text(args, 'quantity')} holds: "level: station" for a barometer beside the tanks, "level: sea" for a weather report.`,
  'equalise-without-condition': (args) => `"${text(args, 'step')}" has no condition that the readings could show; add "accept:", or "done:" with the date once it is done.`,
  'animals-without-stop-rule': (args) => `The ${text(args, 'tank')} holds animals (${text(args, 'animals')}) and no stop rule looks at it; say under "stop if" when to end the run and what to do.`,
  'limit-while-asleep': (args) => `Nobody looks from ${text(args, 'from')} to ${text(args, 'to')} (${text(args, 'length')}), and ${text(args, 'quantity')} could cross its limit in that time; read more often at night, or let an alarm watch.`,
  'plan-changed-after-seal': (args) => `The plan is no longer as it was sealed${text(args, 'time') ? ` on ${text(args, 'time')}` : ''}${text(args, 'parts') ? `: ${parts(args)} ${several(args, 'parts') || parts(args).endsWith('s') ? 'were' : 'was'} changed` : ''}; the methods say so.`,
  'repeat-changed': (args) => `This plan repeats ${text(args, 'name')} with other dates and another ${parts(args)}; the methods say so.`,
};
