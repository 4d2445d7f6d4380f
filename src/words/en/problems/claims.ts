// English sentences for the problems of src/claims. Arguments arrive as text or numbers, already formatted.
import type { claimsCodes } from '../../../problems/codes/claims.ts';
import { phraseIn } from '../../phrases.ts';
import { phrases } from '../phrases.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';

const phrase = (args: MessageArguments, name: string): string => phraseIn(phrases, args, name);

/** `the mat tank, the open tank`. */
const theTanks = (args: MessageArguments): string => [args['tanks'] ?? []].flat().map((each) => `the ${String(each).replace(/^the /, '')}`).join(', ');

/** What the ± of a value comes from: the instruments, scatter, or both. */
function intervalWords(args: MessageArguments): string {
  const by = text(args, 'by');
  if (by === 'scatter') return 'the scatter leaves open (95 %)';
  return by === 'both' ? 'scatter and instruments leave open (95 %)' : 'the instruments can resolve here';
}

export const claimsSentences: Sentences<keyof typeof claimsCodes> = {
  'claim-mismatch': (args) => {
    const shown = text(args, 'shown');
    const value = text(args, 'value');
    const formula = text(args, 'formula');
    if (text(args, 'sign') === 'negative') {
      const instead = text(args, 'instead');
      const way = instead === '' ? 'write the minus or turn the formula round' : `write the minus, or use \`${instead}\``;
      return `The text says ${shown}, but \`${formula}\` gives ${value}, which is below zero: ${way}.`;
    }
    return `The text says ${shown}, but \`${formula}\` gives ${value}.`;
  },
  'claim-unfilled': (args) => `This number is not filled in yet; \`${text(args, 'formula')}\` gives ${text(args, 'value')}.`,
  'statement-false': (args) => {
    const because = text(args, 'because');
    return `“${text(args, 'words')}” does not stand: \`${text(args, 'condition')}\` is not true${because === '' ? '' : `, since ${because} does not hold`}.`;
  },
  'statement-not-truth': (args) => `\`${text(args, 'formula')}\` gives ${text(args, 'value')}, which is not a condition; after “if” compare it with something, or claim it with “=”.`,
  'claim-needs-if': (args) => `\`${text(args, 'formula')}\` is true or not true, so the words before it need “if” in place of “=”.`,
  'claim-no-number': (args) => `These words show no number that could be the ${text(args, 'value')} of the formula; write it into them.`,
  'claim-unit-differs': (args) => `${text(args, 'shown')} cannot be compared with the formula, which gives ${text(args, 'value')}; use one unit or mend the formula.`,
  'claim-percent-points': (args) => `${text(args, 'shown')} is a percentage, but the formula gives percentage points (${text(args, 'value')}); write “percentage points” or “pp”.`,
  'claim-number-unclear': (args) => {
    const suggestion = text(args, 'suggestion');
    return `“${text(args, 'text')}” cannot be read without guessing; ${suggestion === '' ? 'write it with one decimal mark' : `if a decimal is meant, write ${suggestion}`}.`;
  },
  'claim-without-unit': (args) => `${text(args, 'shown')} has no unit and was compared in ${text(args, 'unit')}; add the unit unless a table head says it.`,
  'claim-uncertainty-unknown': (args) => `The ± cannot be checked: no accuracy is stated for an instrument behind \`${text(args, 'formula')}\`; state it under “measure” or leave the ± out.`,
  'claim-source-missing': () => 'A stated number needs its source in quotes: `= stated "where it comes from"`.',
  'stated-measured': (args) => `${text(args, 'shown')} is stated, but this note measures ${text(args, 'quantity')}; use a formula if it comes from the readings.`,
  'below-resolution': (args) => `${text(args, 'value')} is less than the ±${text(args, 'halfWidth')} that ${intervalWords(args)}; do not build a conclusion on it.`,
  'windows-differ': (args) => `The two sides are taken over different readings (${phrase(args, 'left')} against ${phrase(args, 'right')}); compare them over one window.`,
  'event-in-window': (args) => `“${text(args, 'event')}” at ${text(args, 'time')} falls inside this window and concerns only ${theTanks(args)}; say so, or choose a window without it.`,
  'formula-of-numbers': (args) => `\`${text(args, 'formula')}\` holds typed numbers alone, so nothing of the note is checked; name what was read, or state the number with its source.`,
  'rounded-coarsely': (args) => `${text(args, 'shown')} is so coarsely rounded that it says something else than ${text(args, 'value')}; show another digit.`,
  'direction-differs': (args) => `“${text(args, 'word')}” says the opposite of the formula: \`${text(args, 'formula')}\` gives ${text(args, 'value')}; change the word, the sign or the formula.`,
  'other-tank-named': (args) => `The words name “${text(args, 'named')}”, but \`${text(args, 'formula')}\` takes the readings of “${text(args, 'used')}”; name the tank that was read or change the formula.`,
  'causal-wording': (args) => `“${text(args, 'word')}” names a cause, but ${phrase(args, 'reason')}; say what was seen, or name the other explanation.`,
  'loose-number': (args) => `${text(args, 'text')} stands without a formula and will not be checked; let the fix find the formula, or mark it as stated.`,
};
