// The note behind the worked examples of the function catalogue: one short night of two tanks. The figures are invented.
// The reference page prints it above the examples; the tests run every example on it.

export const exampleNote = `# One night, two tanks (invented figures)

\`\`\`protocol
question: Does a floating mat lower the overnight oxygen minimum?
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
    facts: {plant-mass: 120 g}
  open:
    role: control
    label: open-surface tank
    like: mat
    plants: none
differs: [plants]
schedule:
  start: 2026-03-14 20:00
  light off: 22:00
  light on: 2026-03-15 06:00
  end: 2026-03-15 07:00
  every: 1 h
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  T: {what: water temperature, unit: degC, with: probe thermistor, accuracy: 0.2 degC, resolution: 0.1 degC}
  pH: {what: pH, unit: pH, with: glass electrode, accuracy: 0.05 pH, resolution: 0.01 pH}
  KH: {what: carbonate hardness, unit: dKH, with: drop test, accuracy: 0.5 dKH}
  TAN: {what: total ammonia, unit: mg/L-N, with: colour test, accuracy: 0.05 mg/L-N}
  cond: {what: conductivity, unit: mS/cm, with: conductivity meter, accuracy: 0.02 mS/cm}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, level: station, accuracy: 1 hPa}
  behaviour: {what: behaviour, scale: [calm, restless, surface, gasping]}
events:
  - {id: topped-up, at: 2026-03-15 01:00, what: 1 L of water added, tanks: [mat]}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  open.DO  open.T  room.P  mat.behaviour
20:00    8.20   24.9     8.30    24.7  1009.0  calm
21:00    8.24   24.9     8.30    24.7  1008.8  calm
22:00    8.26   24.8     8.29    24.6  1008.6  calm
23:00    7.86   24.8     8.24    24.6  1008.4  calm
00:00    7.42   24.7     8.20    24.5  1008.2  calm
01:00    6.98   24.6        -    24.5  1008.0  restless
02:00    6.60   24.5     8.11    24.4  1007.8  restless
03:00    6.27   24.5     8.07    24.4  1007.6  restless
04:00    5.98   24.4     8.04    24.3  1007.4  surface
05:00    5.74   24.3     8.00    24.3  1007.2  surface
06:00    5.74   24.3     7.97    24.2  1007.0  restless
07:00    6.31   24.4     8.02    24.3  1006.8  calm
\`\`\`

\`\`\`readings chemistry
time   mat.pH  mat.KH  mat.TAN  mat.cond
20:00    7.12     4.0     0.30      0.52
07:00    6.98     4.0     0.35      0.53
\`\`\`

\`\`\`values
first-loss = percent-fall(mat.DO, 22:00..23:00)
\`\`\`
`;
