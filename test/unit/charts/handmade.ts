// A small note put together by hand for tests of drawing: invented readings of two tanks over one night.
import type { Note } from '../../../src/experiment/types.ts';
import { readNote } from '../../../src/experiment/readNote.ts';

export const nightProtocol = `title: Water lettuce and the night
question: Does a floating mat lower the overnight oxygen minimum?
by: A keeper
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
    equipment: internal filter
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
  every: 1 h
events:
  - at: 2026-03-15 02:00
    what: Air pump on
    tanks: [mat]
    id: pump
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  T: {what: water temperature, unit: degC, with: probe thermistor, accuracy: 0.2 degC, resolution: 0.1 degC}
equalise:
  - step: Bring both tanks to one temperature
    accept: abs(mat.T - open.T) <= 0.5 degC
  - step: Move one of two run-in filters to the open tank
    why: equal nitrifier oxygen demand
stop if:
  - when: mat.DO < 3 mg/L
    do: Switch the air pump on and end the run
limits:
  - for: small catfish
    quantity: DO
    at least: 5 mg/L
    source: invented for the test
`;

export const nightReadings = `time   mat.DO  mat.T  open.DO     open.T
20:00    8.21   24.9     8.31       24.7
21:00    8.24   24.9     8.30       24.7
22:00    8.26   24.8     8.29       24.6   ; light off
23:00    7.82   24.8     8.28->8.26 24.6   ; open.DO misread
00:00    7.31   24.6        -       24.5   ; open probe being rinsed
01:00    6.90   24.6     8.20       24.5
02:00    6.41   24.5     8.15?      24.4   ; open.DO unsteady
03:00    6.02   24.4     8.11       24.4
04:00    5.61   24.4     8.07       24.3
05:00   (4.10)  24.3     8.03       24.3   ; mat.DO probe out of the water
06:00    5.02   24.3     7.99       24.2
07:00    4.80   24.2     7.96       24.2
08:00    4.85   24.2     7.97       24.1
09:00    5.40   24.1     8.01       24.1
10:00    6.20   24.2     8.10       24.1
`;

/** A note of the protocol, the readings and whatever follows them. */
export function noteText(after = '', readings = nightReadings, protocol = nightProtocol): string {
  return `# Water lettuce and the night\n\n\`\`\`protocol\n${protocol}\`\`\`\n\n\`\`\`readings\n${readings}\`\`\`\n\n${after}`;
}

export function nightNote(after = '', readings = nightReadings, protocol = nightProtocol): Note {
  return readNote(noteText(after, readings, protocol), new Map());
}
