// English titles of fixes. A fix names its title here by key.
import { text, type Sentences } from '../sentences.ts';

export const fixTitles: Sentences<string> = {
  'replace-with': (args) => `Replace with ${text(args, 'text')}`,
};
