// Problem codes raised by src/claims.
import type { CodeEntry } from '../codeEntry.ts';

const plan = `tanks:
  mat:
    role: treatment
    plants: water lettuce
  open:
    role: control
    like: mat
    plants: none
differs: [plants]
place:
  time zone: Europe/Amsterdam
schedule:
  start: 2026-03-14 20:00
  light off: 22:00
  light on: 2026-03-15 09:30
  end: 2026-03-15 10:00
  every: 30 min
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
`;

const readings = `time   mat.DO  open.DO
20:00    8.21     8.31
22:00    8.26     8.29
22:30    8.02     8.28
`;

/** A small note with two tanks, three readings each, and the given sentence. */
function noteWith(sentence: string, more: { plan?: string; readings?: string } = {}): { readonly note: string } {
  return { note: `# Overnight oxygen\n\n\`\`\`protocol\n${plan}${more.plan ?? ''}\`\`\`\n\n\`\`\`readings\n${more.readings ?? readings}\`\`\`\n\n${sentence}\n` };
}

export const claimsCodes = {
  'claim-mismatch': {
    severity: 'error', args: ['shown', 'value', 'formula', 'sign', 'instead'], fixable: true,
    why: 'The number in the text is not what the readings give: either the readings changed or the number was mistyped. Nothing is published until somebody looks at it.',
    example: noteWith('By 22:30 the mat tank had fallen to {8.20 mg/L = at(mat.DO, 22:30)}.'),
  },
  'claim-unfilled': {
    severity: 'warning', args: ['value', 'formula'], fixable: true,
    why: 'The claim has its formula but no number yet; the preview shows what the formula gives.',
    example: noteWith('The mat tank started at {? = at(mat.DO, 20:00)}.'),
  },
  'statement-false': {
    severity: 'error', args: ['words', 'condition', 'because'], fixable: false,
    why: 'The words stand only while their condition is true. It is not, so the sentence says something that the readings do not.',
    example: noteWith('{The mat tank stayed above the open tank if min(mat.DO) > min(open.DO)}.'),
  },
  'statement-not-truth': {
    severity: 'error', args: ['formula', 'value'], fixable: true,
    why: 'After `if` stands a condition that is true or not true. A formula that gives a number is claimed with ` = `.',
    example: noteWith('It fell to {8.02 mg/L if min(mat.DO)}.'),
  },
  'claim-needs-if': {
    severity: 'error', args: ['formula'], fixable: true,
    why: 'A condition is true or not true; it is no number that words could show. Words stand on a condition with ` if `.',
    example: noteWith('{The mat tank ended lower = last(mat.DO) < last(open.DO)}.'),
  },
  'claim-no-number': {
    severity: 'error', args: ['value'], fixable: true,
    why: 'A claim with ` = ` shows the formula\'s value in its words. These words show no number of that kind, so nothing can be checked.',
    example: noteWith('{The lowest reading = min(mat.DO)} came last.'),
  },
  'claim-unit-differs': {
    severity: 'error', args: ['shown', 'value'], fixable: true,
    why: 'The number stands in a unit of another kind than the formula\'s value, so that the two cannot be compared.',
    example: noteWith('The mat tank ended at {8.02 hPa = last(mat.DO)}.'),
  },
  'claim-percent-points': {
    severity: 'error', args: ['shown', 'value'], fixable: true,
    why: 'A fall from 98 % to 86 % is 12 percentage points, and 12.2 %. Text that writes % for the one is read as the other.',
    example: noteWith('The gap was {0.5 % = percent-fall(mat.DO) - percent-fall(open.DO)}.'),
  },
  'claim-number-unclear': {
    severity: 'error', args: ['text', 'suggestion', 'value'], fixable: true,
    why: 'The decimal mark follows the language of the note. A number with the other mark could mean two things and is not guessed at.',
    example: noteWith('The mat tank started at {8,21 mg/L = at(mat.DO, 20:00)}.'),
  },
  'claim-without-unit': {
    severity: 'hint', args: ['shown', 'unit'], fixable: true,
    why: 'The number stands without a unit and was compared in the unit of the formula. In a table whose head names the unit that is fine.',
    example: noteWith('The mat tank started at {8.21 = at(mat.DO, 20:00)}.'),
  },
  'claim-uncertainty-unknown': {
    severity: 'error', args: ['formula'], fixable: false,
    why: 'A half-width after ± is checked against the uncertainty of the value. For that the plan must state the accuracy of every instrument that went in.',
    example: noteWith('The lamp stood at {210 ± 5 lx = at(mat.light, 20:00)}.', {
      plan: '  light: {what: illuminance, unit: lx, with: light meter}\n', readings: 'time   mat.DO  open.DO  mat.light\n20:00    8.21     8.31      210\n22:00    8.26     8.29       0\n',
    }),
  },
  'claim-source-missing': {
    severity: 'error', args: [], fixable: false,
    why: 'A stated number is not computed from the readings; a reader must be able to see where it comes from.',
    example: noteWith('Fish want at least {4.0 mmol/L = stated}.'),
  },
  'stated-measured': {
    severity: 'warning', args: ['shown', 'quantity'], fixable: false,
    why: 'The note measures this quantity itself. A number of its own readings belongs to a formula; a stated one is not checked against them.',
    example: noteWith('The tank held {8.2 mg/L = stated "the keeper\'s memory"}.'),
  },
  'below-resolution': {
    severity: 'warning', args: ['value', 'halfWidth'], fixable: false,
    why: 'The change is smaller than what the instruments can tell from no change at all (95 %). The number may stand; a conclusion from it may not.',
    example: noteWith('The open tank fell {0.01 mg/L = fall(open.DO, 22:00..22:30)}.'),
  },
  'windows-differ': {
    severity: 'warning', args: ['left', 'right'], fixable: false,
    why: 'Two changes are fairly compared over the same stretch of time. Here one of them starts or ends at another reading.',
    example: noteWith('{The mat tank fell faster if fall(mat.DO, 22:00..22:30) > fall(open.DO, 20:00..22:30)}.'),
  },
  'event-in-window': {
    severity: 'warning', args: ['event', 'time', 'tanks'], fixable: false,
    why: 'Something was done to some of the tanks inside the window, so that the change there is not the plan\'s treatment alone.',
    example: noteWith('The mat tank fell {0.19 mg/L = fall(mat.DO, 20:00..22:30)}.', {
      plan: 'events:\n  - at: 2026-03-14 21:00\n    what: fed\n    tanks: [mat]\n',
    }),
  },
  'causal-wording': {
    severity: 'warning', args: ['word', 'reason'], fixable: false,
    why: 'The sentence names a cause, and the plan leaves another explanation open. A true condition does not prove a cause.',
    example: noteWith('The mat tank fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)} because of the plants.'),
  },
  'loose-number': {
    severity: 'hint', args: ['text', 'formula'], fixable: true,
    why: 'The number stands in the text without a formula, so it will not be checked when the readings change.',
    example: noteWith('The mat tank started at 8.21 mg/L.'),
  },
} as const satisfies Record<string, CodeEntry>;
