// The base note that every problem's example changes in one place: the reference shows the examples, a test runs them.
import type { ProblemExample } from './codeEntry.ts';

/** The plan of the base note. All data are invented. */
export const baseProtocol = `question: Does a floating mat lower the overnight oxygen minimum?
place:
  name: Zwolle
  latitude: 52.51
  longitude: 6.09
  elevation: 4 m
  time zone: Europe/Amsterdam
tanks:
  mat:
    role: treatment
    label: floating-mat tank
    size: 50 x 30 x 32 cm
    water depth: 28 cm
    plants: water lettuce, 80 % cover
    animals: none
  open:
    role: control
    label: open-surface tank
    like: mat
    plants: none
differs: [plants]
schedule:
  start: 2026-03-14 20:00
  light off: 22:00
  light on: 2026-03-15 09:30
  end: 2026-03-15 10:00
  every: 30 min
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  T: {what: water temperature, unit: degC, with: probe thermistor, accuracy: 0.2 degC, resolution: 0.1 degC}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, level: station, accuracy: 0.5 hPa}
equalise:
  - step: Bring both tanks to one temperature
    accept: abs(mat.T - open.T) <= 0.5 degC
stop if:
  - when: mat.DO < 3 mg/L
    do: Switch the air pump on and end the run
`;

export const baseReadings = `time   mat.DO  mat.T  open.DO  open.T  room.P
20:00    8.21   24.9     8.31    24.7  1009.4
20:30    8.24   24.9     8.30    24.7  1009.2
21:00    8.25   24.9     8.30    24.7  1009.1
21:30    8.25   24.8     8.29    24.6  1009.0
22:00    8.26   24.8     8.29    24.6  1008.9   ; light off
22:30    8.02   24.8     8.26    24.6  1008.8
23:00    7.83   24.7     8.25    24.5  1008.6
23:30    7.64   24.7     8.24    24.5  1008.4
00:00    7.47   24.6     8.23    24.5  1008.2
00:30    7.31   24.6     8.22    24.4  1008.1
`;

const baseValues = `first-loss = percent-fall(mat.DO, light-off..22:30)
`;

function ended(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}

/** The bytes of a text in UTF-8. */
function utf8(text: string): Uint8Array {
  const bytes: number[] = [];
  const encoded = encodeURIComponent(text.replace(/[\uD800-\uDFFF]/gu, '\uFFFD'));
  for (let index = 0; index < encoded.length; index++) {
    if (encoded[index] === '%') { bytes.push(Number.parseInt(encoded.slice(index + 1, index + 3), 16)); index += 2; } else bytes.push(encoded.charCodeAt(index));
  }
  return Uint8Array.from(bytes);
}

/** The whole note of an example, and the data files beside it. */
export function exampleNote(example: ProblemExample): { text: string; files: ReadonlyMap<string, Uint8Array | null> } {
  const files = new Map<string, Uint8Array | null>(Object.entries(example.files ?? {}).map(([path, text]) => [path, text === null ? null : utf8(text)]));
  if (example.note !== undefined) return { text: example.note, files };
  const protocol = ended(example.protocol ?? baseProtocol) + ended(example.addToProtocol ?? '');
  const readings = ended(example.readings ?? baseReadings);
  const values = ended(example.values ?? baseValues);
  const blocks = [`\`\`\`protocol\n${protocol}\`\`\``, `\`\`\`readings\n${readings}\`\`\``, `\`\`\`values\n${values}\`\`\``];
  const text = `# Does a mat of water lettuce lower the overnight oxygen minimum?\n\n${blocks.join('\n\n')}\n\n${ended(example.prose ?? '')}`;
  return { text, files };
}
