// Measures the search for formulas over sentences written for the purpose: how often a right formula stands first, and how
// often among the first three. `npm run score`; `-- --misses` shows what went wrong in the half that may be tuned on.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { canonicalFormula } from '../src/claims/find/canonical.ts';
import { findFormulas, givesMention } from '../src/claims/find/findFormulas.ts';
import { matcherOf } from '../src/claims/find/matches.ts';
import { plannedNames } from '../src/claims/claimWords.ts';
import { readMentions } from '../src/claims/readMentions.ts';
import { readNote } from '../src/experiment/readNote.ts';
import { evaluate } from '../src/formula/evaluate.ts';
import { mappedText } from '../src/note/mappedText.ts';
import { readSentences } from '../test/score/readSentences.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const halves = [['tuned on', 'tuning.txt'], ['kept out', 'kept-out.txt'], ['German', 'german.txt'], ['German, kept out', 'german-kept-out.txt']] as const;
const showMisses = process.argv.includes('--misses');
const showKeptOut = process.argv.includes('--kept-out-misses');
const only = process.argv.includes('--tuning');

for (const [name, file] of halves) {
  if (only && name !== 'tuned on') continue;
  let numbers = 0;
  let first = 0;
  let three = 0;
  let sentences = 0;
  const broken: string[] = [];
  for (const { note, sentences: all } of readSentences(readFileSync(`${root}test/score/${file}`, 'utf8'))) {
    const { context } = readNote(readFileSync(`${root}${note}`, 'utf8'));
    for (const { text, numbers: marked } of all) {
      sentences += 1;
      const mentions = readMentions(text, { language: context.protocol?.language ?? 'en', names: plannedNames(context) });
      for (const { start, end, right } of marked) {
        const mention = mentions.find((each) => each.start < end && each.end > start);
        if (!mention) { broken.push(`no number is read in “${text.slice(start, end)}”: ${text}`); continue; }
        const match = mention.kind === 'number' ? matcherOf({ ...mention, bound: null }) : null;
        for (const formula of right.slice(0, 1)) {
          const { value } = evaluate(mappedText(formula), context);
          if (!value || (mention.kind !== 'duration' && !givesMention(value, mention, match, context))) broken.push(`${formula} does not give ${text.slice(start, end)}`);
        }
        const wanted = new Set(right.map((formula) => canonicalFormula(formula, context)));
        const found = findFormulas(text, mention, context);
        const place = found.findIndex((each) => wanted.has(canonicalFormula(each.formula, context)));
        numbers += 1;
        if (place === 0) first += 1;
        if (place >= 0 && place < 3) three += 1;
        if (place !== 0 && ((showMisses && !name.endsWith('kept out')) || showKeptOut)) {
          console.log(`${place < 0 ? 'not found' : `place ${place + 1}`}: ${text}  [${text.slice(start, end)}]`);
          console.log(`  wanted ${right.join(' | ')}`);
          for (const each of found.slice(0, 4)) console.log(`  ${each.score.toFixed(2)}  ${each.formula}  ${each.gives ? '' : `(${each.text}${each.slip ? `, ${each.slip}` : ''})`}`);
        }
      }
    }
  }
  for (const each of broken) console.log(`broken: ${each}`);
  const percent = (count: number): string => `${(100 * count / numbers).toFixed(1)} %`;
  console.log(`${name}: ${sentences} sentences, ${numbers} numbers; right formula first ${percent(first)} (${first}), among the first three ${percent(three)} (${three})`);
}
