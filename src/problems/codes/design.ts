// Problem codes raised by src/design: what a reviewer of the plan would say before the first reading.
import type { CodeEntry, ProblemExample } from '../codeEntry.ts';
import { baseProtocol } from '../examples.ts';

/** The base plan with a few of its lines changed. */
const plan = (...changes: readonly (readonly [string, string])[]): ProblemExample => ({
  protocol: changes.reduce((text, [before, after]) => text.replace(before, () => after), baseProtocol),
});

export const designCodes = {
  'no-control': {
    severity: 'warning', args: ['tanks'], fixable: true,
    why: 'Without a tank that is the same but for the treatment, weather, light and time of day change along with it, and nobody can say which of them did it.',
    example: plan(['    role: control\n', '    role: treatment\n']),
  },
  'one-tank-per-role': {
    severity: 'information', args: ['tanks', 'both'], fixable: true,
    why: 'Repeated readings of one tank are no further tanks: whatever else differs between the two, seen or unseen, is mixed in with the treatment (Hurlbert 1984).',
    example: {},
  },
  'tanks-differ-undeclared': {
    severity: 'warning', args: ['key', 'sides'], fixable: true,
    why: 'Whatever differs besides the treatment is another explanation of the result.',
    example: plan(['    like: mat\n', '    like: mat\n    equipment: air pump\n']),
  },
  'tanks-differ-in-readings': {
    severity: 'warning', args: ['what', 'tank', 'other', 'difference', 'most'], fixable: true,
    why: 'Tanks that stood apart before the treatment would have gone on standing apart without it. Warmer water holds less oxygen and everything in it lives faster.',
    example: {
      ...plan(['equalise:\n  - step: Bring both tanks to one temperature\n    accept: abs(mat.T - open.T) <= 0.5 degC\n', '']),
      readings: 'time   mat.DO  mat.T  open.DO  open.T  room.P\n20:00  8.21  24.9  8.31  23.7  1009.4\n20:30  8.24  24.9  8.30  23.7  1009.2\n21:00  8.25  24.9  8.30  23.7  1009.1\n22:00  8.26  24.8  8.29  23.6  1008.9\n22:30  8.02  24.8  8.26  23.6  1008.8\n',
    },
  },
  'event-in-one-tank': {
    severity: 'warning', args: ['what', 'tanks', 'others'], fixable: true,
    why: 'What is done to one side alone in the middle of the run cannot be told from the treatment afterwards.',
    example: { addToProtocol: 'events:\n  - {at: 23:40, what: fed 0.2 g of flakes, tanks: [open]}' },
  },
  'common-step': {
    severity: 'warning', args: ['quantity', 'time', 'tanks', 'steps'], fixable: true,
    why: 'Two tanks seldom jump alike at one moment; a probe that was moved, wiped or calibrated, or a sample that was stirred, does it to both. A change measured across that moment holds the jump.',
    example: { readings: 'time   mat.DO  mat.T  open.DO  open.T  room.P\n20:00  8.21  24.9  8.31  24.7  1009.4\n20:30  8.20  24.9  8.30  24.7  1009.2\n21:00  8.18  24.9  8.30  24.7  1009.1\n21:30  8.17  24.8  8.29  24.6  1009.0\n22:00  8.15  24.8  8.28  24.6  1008.9\n22:30  7.85  24.8  7.97  24.6  1008.8\n23:00  7.83  24.8  7.97  24.6  1008.7\n23:30  7.82  24.8  7.96  24.6  1008.6\n00:00  7.80  24.8  7.95  24.6  1008.5\n' },
  },
  'same-tank-first': {
    severity: 'information', args: ['tank', 'instrument'], fixable: true,
    why: 'A probe that always comes from the same tank carries a little of its reading along, and the tank read last is always read later. Changing the order turns that into scatter.',
    example: {},
  },
  'few-readings-before-lights-off': {
    severity: 'warning', args: ['count', 'needed', 'time'], fixable: true,
    why: 'The readings before the lights go off are what the night is measured against. From one or two of them nobody can tell level from drift.',
    example: plan(['start: 2026-03-14 20:00', 'start: 2026-03-14 21:30']),
  },
  'run-ends-early': {
    severity: 'warning', args: ['end', 'event', 'time'], fixable: true,
    why: 'The lowest oxygen of the night comes shortly before the light: a run that ends in the dark sees neither the lowest value nor the recovery.',
    example: plan(['end: 2026-03-15 10:00', 'end: 2026-03-15 05:00']),
  },
  'interval-too-coarse': {
    severity: 'warning', args: ['phase', 'length', 'count'], fixable: true,
    why: 'Two readings give a line through any curve. A phase needs at least three, or what happens in it stays unseen.',
    example: { addToProtocol: 'phases: {first-hour: light-off + 5 min..light-off + 55 min}' },
  },
  'interval-coarse-for-rate': {
    severity: 'warning', args: ['quantity', 'gap', 'change', 'effect'], fixable: true,
    why: 'Between two readings the water may pass its lowest point and come back. The interval decides how much of the effect can hide there.',
    example: { addToProtocol: 'expect:\n  - {quantity: DO, effect: 0.2 mg/L, rate: 0.8 mg/L/h}' },
  },
  'effect-below-instrument': {
    severity: 'warning', args: ['quantity', 'effect', 'least'], fixable: true,
    why: 'A difference that the instrument cannot show stays unseen however carefully it is read. Ask for a larger effect, take a finer instrument, or repeat readings.',
    example: { addToProtocol: 'expect:\n  - {quantity: DO, effect: 0.005 mg/L}' },
  },
  'instrument-without-accuracy': {
    severity: 'information', args: ['quantity', 'instrument'], fixable: true,
    why: 'Without the accuracy that the maker states no number of this instrument has an uncertainty, and nobody can say which differences are real.',
    example: plan([', accuracy: 0.2 degC, resolution: 0.1 degC', '']),
  },
  'calibration-old': {
    severity: 'warning', args: ['quantity', 'date', 'days', 'most'], fixable: true,
    why: 'Probes drift. The accuracy that the maker states holds for a fresh calibration. Thirty days is common practice, no source.',
    example: plan(['resolution: 0.01 mg/L', 'resolution: 0.01 mg/L, calibrated: 2025-11-20']),
  },
  'pressure-level-missing': {
    severity: 'warning', args: ['quantity'], fixable: true,
    why: 'Weather reports give the pressure reduced to sea level; the water feels the pressure of the place. At 500 m they differ by some 60 hPa, and the oxygen saturation with them.',
    example: plan([', level: station', '']),
  },
  'equalise-without-condition': {
    severity: 'information', args: ['step'], fixable: true,
    why: 'A step with a condition is held against the readings; one with a note of when it was done can at least be shown. A step with neither is a good intention.',
    example: plan(['equalise:\n', 'equalise:\n  - step: Move one of two run-in filters to the open tank\n']),
  },
  'animals-without-stop-rule': {
    severity: 'warning', args: ['tank', 'animals'], fixable: true,
    why: 'The animals come first. At four in the morning, tired and curious, nobody decides well: the plan decides beforehand when to stop and what to do then.',
    example: plan(['    animals: none\n', '    animals: 6 ramshorn snails\n'], ['  - when: mat.DO < 3 mg/L\n', '  - when: mat.DO < 3 mg/L\n']),
  },
  'limit-while-asleep': {
    severity: 'warning', args: ['quantity', 'from', 'to', 'length'], fixable: true,
    why: 'A rule helps only while somebody looks. Set an alarm, let a logger watch, or read more often through the night.',
    example: plan(['    animals: none\n', '    animals: 6 ramshorn snails\n'], ['every: 30 min', 'every: [30 min from start to 23:00, 30 min from 06:00 to end]']),
  },
  'plan-changed-after-seal': {
    severity: 'information', args: ['parts', 'time'], fixable: false,
    why: 'A sealed plan says what was decided before the first reading. What was changed later may have good reasons; readers are told of it in the methods.',
    example: { addToProtocol: `sealed: 2026-03-14T19:00+01:00 sha256:${'0'.repeat(64)}` },
  },
  'repeat-changed': {
    severity: 'information', args: ['name', 'parts'], fixable: false,
    why: 'A repeat that changes something besides its dates is a repeat of the rest only. The methods say what was changed.',
    example: { addToProtocol: `repeats: lettuce-1.tank.md sha256:${'0'.repeat(64)}.0000` },
  },
} as const satisfies Record<string, CodeEntry>;
