// English titles of fixes. A fix names its title here by key.
import { text, type Sentences } from '../sentences.ts';

export const fixTitles: Sentences<string> = {
  'replace-with': (args) => `Replace with ${text(args, 'text')}`,
  'close-block': () => 'Close the block here',
  'move-left': () => 'Move the block to the left',
  'insert': (args) => `Insert ${text(args, 'text')}`,
  'escape-bar': () => 'Put a backslash before the |',
  'join-lines': () => 'Put the claim in one piece',
  'fill-in-mark': () => 'Put a ? before the equals sign, to be filled in',
  'space-equals': () => 'Put spaces around the equals sign',
  'insert-text': (args) => `Add ${text(args, 'text')}`,
  'add-missing-cells': (args) => (Number(args['count']) === 1 ? 'Add - for the missing cell at the end' : `Add - for ${text(args, 'count')} missing cells at the end`),
  'make-comment': () => 'Make the line a comment',
  'read-column-in-unit': (args) => `Read ${text(args, 'head')} in ${text(args, 'unit')}`,
  'fill-in': (args) => `Fill in ${text(args, 'value')}`,
  'use-function': (args) => `Use \`${text(args, 'name')}\``,
  'turn-difference': (args) => `Take it the other way round: \`${text(args, 'name')}\``,
  'use-formula': (args) => `Use \`${text(args, 'name')}\``,
  'claim-with-if': () => 'Make it a statement with “if”',
  'claim-with-equals': () => 'Make it a number with “=”',
  'add-to-words': (args) => `Add ${text(args, 'text')} to the words`,
  'add-unit': (args) => `Add the unit ${text(args, 'unit')}`,
  'make-claim': (args) => `Make it a claim: ${text(args, 'formula')}`,
  'indent-with-spaces': () => 'Indent with spaces',
  'indent-by': (args) => (text(args, 'count') === '0' ? 'Take the spaces before it away' : `Put ${text(args, 'count')} spaces before it`),
  'remove-text': (args) => `Remove ${text(args, 'text')}`,
};
