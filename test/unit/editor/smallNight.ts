// A small night that the tests of logging share: its readings are invented, they exist to try the prompt.
import { readNote } from '../../../src/experiment/readNote.ts';
import { loadZone } from '../../../src/time/zone.ts';

const text = `# A night

\`\`\`protocol
place: {time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
  mood: {what: behaviour, scale: [calm, restless, surface, gasping]}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  mat.mood
20:00    8.21   24.9  calm
20:30    8.24   24.9  calm
21:00    8.25   24.9  calm
21:30    8.25   24.8  calm
\`\`\`
`;
export const note = readNote(text, undefined, undefined, { fileIsNote: true });
export const zone = loadZone('Europe/Amsterdam')!;
/** A moment of the first evening, by its clock. */
export const at = (clock: string): number => Date.parse(`2026-03-14T${clock}+01:00`);
