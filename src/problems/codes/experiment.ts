// Problem codes raised by src/experiment, where the parts of a note are held against each other.
import type { CodeEntry } from '../codeEntry.ts';

export const experimentCodes = {
  'value-line-unreadable': {
    severity: 'error', args: ['line'], fixable: false,
    why: 'A values block holds one `name = formula` a line, so that a result has one formula and prose can refer to it by name.',
    example: { values: 'first-loss percent-fall(mat.DO, light-off..22:30)' },
  },
  'result-name-reserved': {
    severity: 'error', args: ['name'], fixable: false,
    why: 'Names such as start, dark or min already mean something in every formula.',
    example: { values: 'dark = min(mat.DO)' },
  },
  'result-named-twice': {
    severity: 'error', args: ['name'], fixable: true,
    why: 'A name that stands for two formulas would make the prose depend on which one is read first.',
    example: { values: 'lowest = min(mat.DO)\nlowest = min(open.DO)' },
  },
  'equalise-failed': {
    severity: 'warning', args: ['step', 'condition', 'times'], fixable: false,
    why: 'Tanks that were not level at the start differ for a reason that the treatment did not cause.',
    example: { protocol: 'place: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: "22:00", end: 2026-03-15 08:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nequalise:\n  - step: Bring both tanks to one oxygen level\n    accept: abs(mat.DO - open.DO) <= 0.05 mg/L', readings: 'time mat.DO open.DO\n20:00 8.20 8.31\n22:00 8.10 8.30' },
  },
  'stop-rule-crossed': {
    severity: 'error', args: ['condition', 'time', 'do'], fixable: false,
    why: 'The animals come first. The plan said what to do at this point; the note must say what was done (`outcome:`) before it is published.',
    example: { protocol: 'place: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: "22:00", end: 2026-03-15 08:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nstop if:\n  - when: mat.DO < 3 mg/L\n    do: Switch the air pump on and end the run', readings: 'time mat.DO open.DO\n20:00 8.20 8.31\n22:00 2.90 8.30' },
  },
  'stop-rule-written-up': {
    severity: 'information', args: ['condition', 'time', 'outcome'], fixable: false,
    why: 'A stop rule was crossed and the note says what was done about it. The methods paragraph and the post repeat it.',
    example: { protocol: 'place: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: "22:00", end: 2026-03-15 08:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nstop if:\n  - when: mat.DO < 3 mg/L\n    do: Switch the air pump on and end the run\n    outcome: The pump was switched on at 22:02', readings: 'time mat.DO open.DO\n20:00 8.20 8.31\n22:00 2.90 8.30' },
  },
  'accepted-code-unknown': {
    severity: 'warning', args: ['code', 'nearest'], fixable: true,
    why: '`accepted` names problems by their codes; a code that does not exist accepts nothing.',
    example: { addToProtocol: 'accepted: [one-tank-per-roll]' },
  },
  'accepted-cannot-be': {
    severity: 'warning', args: ['code'], fixable: false,
    why: 'Errors say that the note contradicts itself or cannot be read. They are mended, never accepted.',
    example: { addToProtocol: 'accepted: [claim-mismatch]' },
  },
  'template-text': {
    severity: 'warning', args: ['text'], fixable: false,
    why: 'A new note says in its own prose what belongs where. Left standing, these instructions are published as if they were the finding. Until something has been read it is information.',
    example: { prose: '## What happened\n\nWrite here what you saw.' },
  },
  'nothing-read-yet': {
    severity: 'information', args: ['count'], fixable: false,
    why: 'A plan may hold its formulas, figures and unfilled claims before the first reading; they are computed once there is something to compute from.',
    example: { readings: 'time mat.DO mat.T open.DO open.T room.P\n20:00 - - - - -' },
  },
} as const satisfies Record<string, CodeEntry>;
