// Makes the invented readings of the sample notes. Run `node samples/simulation.mjs` to print their tables.
//
// Nothing here was measured. Each tank follows a textbook balance, stepped by one minute, and every reading gets
// a small normal error and the resolution of the instrument that the note names. The seed is fixed, so the tables
// are the same on every machine.
//
//   dissolved oxygen   dC/dt = k (Cs - C) - R + P      k exchange 1/h, R respiration mg/L/h, P production mg/L/h
//   water temperature  dT/dt = -c (T - Troom)          c cooling 1/h
//
// Cs, the concentration at saturation, is the fresh-water equation of Benson and Krause (1984).

/** A small seeded generator of numbers from 0 to 1 (mulberry32). */
function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normal errors from pairs of uniform numbers (Box and Muller 1958). */
const normal = (random) => () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Oxygen at saturation in fresh water, mg/L; temperature in °C, station pressure in hPa. Benson and Krause 1984. */
function saturation(celsius, pressure) {
  const T = celsius + 273.15;
  const P = pressure / 1013.25;
  const standard = Math.exp(-139.34411 + 1.575701e5 / T - 6.642308e7 / T ** 2 + 1.2438e10 / T ** 3 - 8.621949e11 / T ** 4);
  const vapour = Math.exp(11.8571 - 3840.7 / T - 216961 / T ** 2);
  const theta = 0.000975 - 1.426e-5 * celsius + 6.436e-8 * celsius ** 2;
  return standard * P * ((1 - vapour / P) * (1 - theta * P)) / ((1 - vapour) * (1 - theta));
}

const clock = (minutes) => `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** Lays out rows with aligned columns, numbers to the right. */
export function layOut(heads, rows) {
  const widths = heads.map((head, column) => Math.max(head.length, ...rows.map((row) => row[column].length)));
  const line = (cells) => cells.map((cell, column) => (column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]))).join('  ').trimEnd();
  return [line(heads), ...rows.map(line)];
}

/** One night in a tank under floating duckweed and in a tank with a clear surface: lights off at 22:00, first daylight about 06:00. */
export function overnightOxygen() {
  const random = generator(20260411);
  const error = normal(random);
  const start = 20 * 60;
  const end = 33 * 60;
  const lightOff = 22 * 60;
  const sunrise = 30 * 60 + 10;
  const lightOn = 32 * 60 + 30;
  const tanks = [
    { oxygen: 8.18, temperature: 24.3, exchange: 0.11, respiration: 0.44, lamp: 0.43, window: 0.25 },
    { oxygen: 8.12, temperature: 24.2, exchange: 0.34, respiration: 0.17, lamp: 0.19, window: 0.09 },
  ];
  const rows = [];
  for (let minute = start; minute <= end; minute += 1) {
    const pressure = 1006.4 - 0.42 * ((minute - start) / 60) + 0.6 * Math.sin((minute - start) / 190);
    if ((minute - start) % 30 === 0) {
      rows.push([clock(minute), ...tanks.flatMap((tank) => [(tank.oxygen + 0.018 * error()).toFixed(2), (tank.temperature + 0.03 * error()).toFixed(1)]),
        (pressure + 0.05 * error()).toFixed(1)]);
    }
    for (const tank of tanks) {
      const lamp = minute < lightOff || minute >= lightOn ? tank.lamp : 0;
      const window = minute > sunrise ? tank.window * Math.min(1, (minute - sunrise) / 90) : 0;
      const limit = saturation(tank.temperature, pressure);
      tank.oxygen += (tank.exchange * (limit - tank.oxygen) - tank.respiration + lamp + window) / 60;
      tank.temperature += -0.02 / 60 * (tank.temperature - 20.5) * (lamp > 0 ? 0.2 : 1);
    }
  }
  return layOut(['time', 'duckweed.DO', 'duckweed.T', 'clear.DO', 'clear.T', 'room.P'], rows);
}

/** Two heated tanks, one with a glass lid, after both heaters stop at 21:00 in a cool room. */
export function heaterFailure() {
  const random = generator(20260124);
  const error = normal(random);
  const start = 20 * 60;
  const failure = 21 * 60;
  const end = 33 * 60;
  const tanks = [{ temperature: 25.1, cooling: 0.062 }, { temperature: 25.0, cooling: 0.109 }];
  const rows = [];
  for (let minute = start; minute <= end; minute += 1) {
    const room = 15.8 - 1.6 * (1 - Math.exp(-(minute - start) / 400));
    const planned = minute < failure ? (minute - start) % 20 === 0 : minute <= 24 * 60 ? (minute - failure) % 20 === 0 : (minute - failure) % 60 === 0;
    if (planned) {
      rows.push([clock(minute), ...tanks.map((tank) => (tank.temperature + 0.04 * error()).toFixed(1)), (room + 0.06 * error()).toFixed(1)]);
    }
    if (minute >= failure) for (const tank of tanks) tank.temperature += -tank.cooling / 60 * (tank.temperature - room);
  }
  return layOut(['time', 'lidded.T', 'bare.T', 'room.air'], rows);
}

/** A summer night in four tanks with fish: in two an air stone runs from lights-off at 22:00, two stay still. */
export function nightAirStone() {
  const random = generator(20260718);
  const error = normal(random);
  const start = 20 * 60;
  const end = 33 * 60;
  const lightOff = 22 * 60;
  const lightOn = 32 * 60;
  const tanks = [
    { oxygen: 8.02, temperature: 26.1, exchange: 0.21, stirred: 0.92, respiration: 0.53, lamp: 0.55 },
    { oxygen: 7.96, temperature: 26.2, exchange: 0.19, stirred: 0.85, respiration: 0.49, lamp: 0.52 },
    { oxygen: 7.98, temperature: 26.2, exchange: 0.22, stirred: 0.22, respiration: 0.54, lamp: 0.56 },
    { oxygen: 8.04, temperature: 26.1, exchange: 0.19, stirred: 0.19, respiration: 0.48, lamp: 0.52 },
  ];
  const rows = [];
  for (let minute = start; minute <= end; minute += 1) {
    const pressure = 971.8 + 0.11 * ((minute - start) / 60) + 0.5 * Math.sin((minute - start) / 240);
    if ((minute - start) % (minute <= lightOff ? 30 : 60) === 0) {
      rows.push([clock(minute), ...tanks.flatMap((tank) => [(tank.oxygen + 0.018 * error()).toFixed(2), (tank.temperature + 0.03 * error()).toFixed(1)]),
        (pressure + 0.05 * error()).toFixed(1)]);
    }
    for (const tank of tanks) {
      const lit = minute < lightOff || minute >= lightOn;
      const limit = saturation(tank.temperature, pressure);
      tank.oxygen += ((lit ? tank.exchange : tank.stirred) * (limit - tank.oxygen) - tank.respiration + (lit ? tank.lamp : 0)) / 60;
      tank.temperature += -0.02 / 60 * (tank.temperature - 23.5) * (lit ? 0.3 : 1);
    }
  }
  return layOut(['time', 'sprudel1.DO', 'sprudel1.T', 'sprudel2.DO', 'sprudel2.T', 'ruhig1.DO', 'ruhig1.T', 'ruhig2.DO', 'ruhig2.T', 'room.P'], rows);
}

if (typeof process !== 'undefined' && process.argv[1]?.endsWith('simulation.mjs')) {
  console.log(overnightOxygen().join('\n'));
  console.log();
  console.log(heaterFailure().join('\n'));
  console.log();
  console.log(nightAirStone().join('\n'));
}
