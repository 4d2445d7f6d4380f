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
};
