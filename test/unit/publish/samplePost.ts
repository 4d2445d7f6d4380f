// A note with every kind of block and claim, for tests of the post. All data are invented.
import { readNote } from '../../../src/experiment/readNote.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { noteText } from '../charts/handmade.ts';

export const samplePostText = noteText(`\`\`\`values
lowest-mat = min(mat.DO)
first-loss = percent-fall(mat.DO, light-off..23:00)
\`\`\`

The floating-mat tank fell to {4.80 mg/L = lowest-mat}, and {it stayed below the open tank if lowest-mat < min(open.DO)}. An hour after
lights-off it had lost {5.3 % = first-loss}. A guide asks for {5 mg/L = stated "A keeper's handbook, 2019, p. 12"}.

- A list item with {8.26 mg/L = max(mat.DO)}

\`\`\`figure
show: [mat.DO, open.DO]
caption: The night in one picture
\`\`\`

## Methods

\`\`\`methods
\`\`\`

## Results

\`\`\`results
\`\`\`

\`\`\`limits
\`\`\`
`);

export async function publishSample(): Promise<string> {
  return (await publishPost(readNote(samplePostText, new Map()), { stem: 'night', toolVersion: '1.2.3' })).html;
}
