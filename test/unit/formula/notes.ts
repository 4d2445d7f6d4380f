// Small notes for the tests of the evaluator. All figures are invented.

/** Three half-hour slots before lights-off, a missing, a left-out, a corrected, a doubtful and a repeated reading, two instruments. */
export const night = `\`\`\`protocol
place: {name: Zwolle, latitude: 52.51, longitude: 6.09, elevation: 4 m, time zone: Europe/Amsterdam}
tanks:
  mat:
    role: treatment
    label: floating-mat tank
    size: 50 x 30 x 32 cm
    water depth: 28 cm
    facts: {plant-mass: 120 g}
  open: {role: control, label: open-surface tank, like: mat}
differs: []
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 05:00, end: 2026-03-15 06:00, every: 30 min}
events:
  - {id: fed, at: 2026-03-14 21:10, what: fed, tanks: [mat]}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  DO@titration: {what: dissolved oxygen, unit: mg/L, with: titration, accuracy: 0.05 mg/L}
  T: {what: water temperature, unit: degC, with: probe thermistor, accuracy: 0.2 degC, resolution: 0.1 degC}
  NO2: {what: nitrite, unit: mg/L, with: colour test}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, level: station, accuracy: 1 hPa}
  behaviour: {what: behaviour, scale: [calm, restless, surface, gasping]}
\`\`\`

\`\`\`readings
time   mat.DO       mat.T  open.DO     open.T  room.P  mat.behaviour  mat.NO2  mat.DO@titration
20:00    8.21        24.9     8.31       24.7  1009.4  calm           <0.05    8.1
20:30    8.24        24.9     8.30       24.7  1009.2  calm           0.10     -
21:00    8.25?       24.9     8.30       24.7  1009.1  calm           0.10     -
21:30    8.25        24.8     8.29       24.6  1009.0  calm           0.10     -
22:00    8.26        24.8     8.29       24.6  1008.9  calm           0.20     8.2   ; light off
22:30    8.02        24.8  8.28->8.26    24.6  1008.8  restless       0.20     -     ; open.DO misread
23:00    7.83        24.7     8.25       24.5  1008.6  restless       0.30     -
23:30       -        24.7     8.24       24.5  1008.4  restless       0.30     -
00:00    7.47        24.6     8.23       24.5  1008.2  surface        0.30     -
00:30  (7.90)        24.6        -       24.4  1008.1  surface        0.40     -     ; mat.DO probe out of the water
01:00    7.16        24.6     8.21       24.4  1008.0  gasping        0.40     7.1
01:30    7.02/7.06/7.01  24.5  8.20      24.4  1007.9  gasping        0.50     -
\`\`\`
`;

/** Four tanks in two groups, three nights. */
export const nights = `\`\`\`protocol
place: {name: Zwolle, latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam}
tanks:
  a1: {role: treatment, group: planted, size: 40 x 25 x 25 cm, water depth: 20 cm}
  a2: {role: treatment, group: planted, size: 40 x 25 x 25 cm, water depth: 20 cm}
  b1: {role: control, group: bare, size: 40 x 25 x 25 cm, water depth: 20 cm}
  b2: {role: control, group: bare, size: 40 x 25 x 25 cm, water depth: 20 cm}
differs: []
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 05:00, end: 2026-03-17 10:00, every: 6 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L}
\`\`\`

\`\`\`readings
time              a1.DO  a2.DO  b1.DO  b2.DO
2026-03-14T20:00   8.20   8.40   8.30   8.32
2026-03-15T02:00   7.20   7.60   8.20   8.24
2026-03-15T08:00   7.80      -   8.22   8.26
2026-03-16T02:00   7.10   7.50   8.18   8.20
\`\`\`
`;
