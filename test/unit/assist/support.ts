// What the tests of the editor's help share: one invented note, the cursor written as ‸, and the help asked at that place.
import { complete } from '../../../src/assist/complete.ts';
import type { Suggestion } from '../../../src/assist/types.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';

export const plan = `question: Does a floating mat lower the overnight oxygen minimum?
place:
  name: Zwolle
  latitude: 52.51
  longitude: 6.09
  time zone: Europe/Amsterdam
tanks:
  mat:
    role: treatment
    group: mats
    label: floating-mat tank
    size: 50 x 30 x 32 cm
    water depth: 28 cm
    plants: water lettuce
    facts: {plant-mass: 120 g}
  open:
    role: control
    like: mat
    plants: none
differs: [plants]
schedule:
  start: 2026-03-14 20:00
  light off: 22:00
  light on: 2026-03-15 09:30
  end: 2026-03-15 10:00
  every: 30 min
events:
  - {at: 21:00, what: fed, tanks: [mat, open], id: feeding}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L}
  T: {what: water temperature, unit: degC, with: probe thermistor, accuracy: 0.2 degC}
  P: {what: air pressure, unit: hPa, in: room, level: station}
  B: {what: behaviour, scale: [calm, restless, gasping]}
equalise:
  - step: Bring both tanks to one temperature
    accept: abs(mat.T - open.T) <= 0.5 degC
phases: {late: light-off + 30 min..end}
limits:
  - {for: Corydoras, quantity: DO, at least: 4 mg/L, source: invented}
stop if:
  - when: mat.DO < 3 mg/L
    do: End the run
`;

export const readings = `time   mat.DO  mat.T  open.DO  open.T  room.P   mat.B
20:00    8.21   24.9     8.31    24.7  1009.4   calm
21:00    8.25   24.9     8.30    24.7  1009.2   calm
22:00    8.26   24.8     8.29    24.6  1008.9   calm
22:30    8.02   24.8     8.26    24.6  1008.8   restless
23:00    7.84   24.7     8.25?   24.6  (1008.7)  -   ; one word missed
`;

export const values = 'first-loss = percent-fall(mat.DO, light-off..22:30)\n';

const fence = (word: string, text: string): string => `\`\`\`${word}\n${text}\`\`\`\n`;

/** The invented note, with parts of it replaced. */
export function noteText(parts: { plan?: string; readings?: string; values?: string; prose?: string } = {}): string {
  return ['# A night', fence('protocol', parts.plan ?? plan), fence('readings', parts.readings ?? readings), fence('values', parts.values ?? values), parts.prose ?? ''].join('\n\n');
}

/** Takes the cursor mark out of a text. */
export function withCursor(marked: string): { text: string; offset: number } {
  const offset = marked.indexOf('‸');
  if (offset < 0) throw new Error('There is no ‸ in the text.');
  return { text: marked.slice(0, offset) + marked.slice(offset + 1), offset };
}

export function noteAt(marked: string): { note: Note; offset: number } {
  const { text, offset } = withCursor(marked);
  return { note: readNote(text), offset };
}

/** Suggestions at the cursor, in their order. */
export function suggestions(marked: string): Suggestion[] {
  const { note, offset } = noteAt(marked);
  return [...complete(note, offset)].sort((a, b) => (a.sort < b.sort ? -1 : a.sort > b.sort ? 1 : 0));
}

export const labels = (marked: string): string[] => suggestions(marked).map((each) => each.label);

/** The text after a suggestion was taken, places to type at left out. */
export function taken(marked: string, label: string): string {
  const { text } = withCursor(marked);
  const found = suggestions(marked).find((each) => each.label === label);
  if (!found) throw new Error(`“${label}” is not suggested.`);
  const insert = found.snippet ? found.insert.replace(/\$\{\d+:((?:[^}\\]|\\.)*)\}/gu, '$1').replace(/\$\{\d+\|([^,|]*)[^}]*\}/gu, '$1').replace(/\$\d/gu, '').replace(/\\(.)/gu, '$1') : found.insert;
  return text.slice(0, found.range.start) + insert + text.slice(found.range.end);
}
