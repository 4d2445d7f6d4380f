// Problem codes raised by src/claims.
import type { CodeEntry } from '../codeEntry.ts';
import { baseProtocol } from '../examples.ts';

export const claimsCodes = {
  'claim-mismatch': {
    severity: 'error', args: ['shown', 'value', 'formula', 'sign', 'instead'], fixable: true,
    why: 'The number in the text is not what the readings give: either the readings changed or the number was mistyped. Nothing is published until somebody looks at it.',
    example: { prose: 'By 22:30 the mat tank had fallen to {8.20 mg/L = at(mat.DO, 22:30)}.' },
  },
  'claim-unfilled': {
    severity: 'warning', args: ['value', 'formula'], fixable: true,
    why: 'The claim has its formula but no number yet; the preview shows what the formula gives.',
    example: { prose: 'The mat tank started at {? = at(mat.DO, 20:00)}.' },
  },
  'statement-false': {
    severity: 'error', args: ['words', 'condition', 'because'], fixable: false,
    why: 'The words stand only while their condition is true. It is not, so the sentence says something that the readings do not.',
    example: { prose: '{The mat tank stayed above the open tank if min(mat.DO) > min(open.DO)}.' },
  },
  'statement-not-truth': {
    severity: 'error', args: ['formula', 'value'], fixable: true,
    why: 'After `if` stands a condition that is true or not true. A formula that gives a number is claimed with ` = `.',
    example: { prose: 'It fell to {7.31 mg/L if min(mat.DO)}.' },
  },
  'claim-needs-if': {
    severity: 'error', args: ['formula'], fixable: true,
    why: 'A condition is true or not true; it is no number that words could show. Words stand on a condition with ` if `.',
    example: { prose: '{The mat tank ended lower = last(mat.DO) < last(open.DO)}.' },
  },
  'claim-no-number': {
    severity: 'error', args: ['value'], fixable: true,
    why: 'A claim with ` = ` shows the formula\'s value in its words. These words show no number of that kind, so nothing can be checked.',
    example: { prose: '{The lowest reading = min(mat.DO)} came last.' },
  },
  'claim-unit-differs': {
    severity: 'error', args: ['shown', 'value'], fixable: true,
    why: 'The number stands in a unit of another kind than the formula\'s value, so that the two cannot be compared.',
    example: { prose: 'The mat tank ended at {7.31 hPa = last(mat.DO)}.' },
  },
  'claim-percent-points': {
    severity: 'error', args: ['shown', 'value'], fixable: true,
    why: 'A fall from 98 % to 86 % is 12 percentage points, and 12.2 %. Text that writes % for the one is read as the other.',
    example: { prose: 'The gap was {0.5 % = percent-fall(mat.DO) - percent-fall(open.DO)}.' },
  },
  'claim-number-unclear': {
    severity: 'error', args: ['text', 'suggestion', 'value'], fixable: true,
    why: 'The decimal mark follows the language of the note. A number with the other mark could mean two things and is not guessed at.',
    example: { prose: 'The mat tank started at {8,21 mg/L = at(mat.DO, 20:00)}.' },
  },
  'claim-without-unit': {
    severity: 'hint', args: ['shown', 'unit'], fixable: true,
    why: 'The number stands without a unit and was compared in the unit of the formula. In a table whose head names the unit that is fine.',
    example: { prose: 'The mat tank started at {8.21 = at(mat.DO, 20:00)}.' },
  },
  'claim-uncertainty-unknown': {
    severity: 'error', args: ['formula'], fixable: false,
    why: 'A half-width after ± is checked against the uncertainty of the value. For that the plan must state the accuracy of every instrument that went in.',
    example: { protocol: baseProtocol.replace(', accuracy: 0.5 hPa', ''), prose: 'The barometer stood at {1009.4 ± 0.5 hPa = at(room.P, 20:00)}.' },
  },
  'claim-source-missing': {
    severity: 'error', args: [], fixable: false,
    why: 'A stated number is not computed from the readings; a reader must be able to see where it comes from.',
    example: { prose: 'Fish want at least {4.0 mmol/L = stated}.' },
  },
  'stated-measured': {
    severity: 'warning', args: ['shown', 'quantity'], fixable: false,
    why: 'The note measures this quantity itself. A number of its own readings belongs to a formula; a stated one is not checked against them.',
    example: { prose: 'The tank held {8.2 mg/L = stated "the keeper\'s memory"}.' },
  },
  'below-resolution': {
    severity: 'warning', args: ['value', 'halfWidth', 'by'], fixable: false,
    why: 'The change is smaller than its 95 % interval, so that it cannot be told from no change at all. That interval follows from the instruments; that of a contrast, a slope or a fitted night follows from scatter. The number may stand; a conclusion from it may not.',
    example: { prose: 'Before lights-off the open tank fell {0.00 mg/L = fall(open.DO, 20:30..21:00)}.' },
  },
  'windows-differ': {
    severity: 'warning', args: ['left', 'right'], fixable: false,
    why: 'Two changes are fairly compared over the same stretch of time. Here one of them starts or ends at another reading.',
    example: { prose: '{The mat tank fell faster if fall(mat.DO, 22:00..22:30) > fall(open.DO, 20:00..22:30)}.' },
  },
  'event-in-window': {
    severity: 'warning', args: ['event', 'time', 'tanks'], fixable: false,
    why: 'Something was done to some of the tanks inside the window, so that the change there is not the plan\'s treatment alone.',
    example: { addToProtocol: 'events:\n  - at: 2026-03-14 23:00\n    what: fed\n    tanks: [mat]\n', prose: 'The mat tank fell {0.95 mg/L = fall(mat.DO, 22:00..00:30)}.' },
  },
  'formula-of-numbers': {
    severity: 'warning', args: ['formula'], fixable: false,
    why: 'A formula over typed numbers stays true whatever the readings say, so it checks nothing. A number from elsewhere is stated with its source.',
    example: { prose: 'The mat tank ended at {7.31 mg/L = 7 mg/L + 0.31 mg/L}.' },
  },
  'rounded-coarsely': {
    severity: 'warning', args: ['shown', 'value'], fixable: false,
    why: 'The number is rightly rounded, but to so few digits that it is a fifth or more away from the value, and further than the instruments leave open: 0 for a loss of 0.24.',
    example: { prose: 'Half an hour later the mat tank had lost {0 mg/L = fall(mat.DO, 22:00..22:30)}.' },
  },
  'direction-differs': {
    severity: 'warning', args: ['word', 'formula', 'value'], fixable: false,
    why: 'The number is right and the word beside it says the opposite: a fall that “rose”, or a minus that takes the word “fell” back.',
    example: { prose: 'The mat tank rose by {0.24 mg/L = fall(mat.DO, 22:00..22:30)}.' },
  },
  'other-tank-named': {
    severity: 'warning', args: ['named', 'used', 'formula'], fixable: false,
    why: 'The words name one tank and the formula takes the readings of another, so that the reader takes the number for the wrong tank.',
    example: { prose: 'The lowest reading of the open-surface tank was {7.31 mg/L = min(mat.DO)}.' },
  },
  'causal-wording': {
    severity: 'warning', args: ['word', 'reason'], fixable: false,
    why: 'The sentence names a cause, and the plan leaves another explanation open. A true condition does not prove a cause.',
    example: { prose: 'The mat tank fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)} because of the plants.' },
  },
  'loose-number': {
    severity: 'hint', args: ['text'], fixable: true,
    why: 'The number stands in the text without a formula, so it will not be checked when the readings change.',
    example: { prose: 'The mat tank started at 8.21 mg/L.' },
  },
} as const satisfies Record<string, CodeEntry>;
