// The worked night of docs/worked-night.md, recomputed with plain arithmetic from the equations as printed there: nothing of the
// product's own equations or fits is used, so that the page checks them.
export interface Step { readonly name: string; readonly shown: string }

/** Clock, mg/L, °C, hPa: the dark rows of the mat tank in the example note (invented figures). */
export const rows: readonly (readonly [string, number, number, number])[] = [
  ['22:00', 8.26, 24.8, 1008.6], ['23:00', 7.86, 24.8, 1008.4], ['00:00', 7.42, 24.7, 1008.2], ['01:00', 6.98, 24.6, 1008.0], ['02:00', 6.6, 24.5, 1007.8],
  ['03:00', 6.27, 24.5, 1007.6], ['04:00', 5.98, 24.4, 1007.4], ['05:00', 5.74, 24.3, 1007.2], ['06:00', 5.74, 24.3, 1007.0],
];

/** Benson and Krause (1984), fresh water, by hand. */
export function solubility(t: number, hPa: number): { C1: number; u: number; theta: number; P: number; Cs: number } {
  const T = t + 273.15;
  const C1 = Math.exp(-139.34411 + 1.575701e5 / T - 6.642308e7 / T ** 2 + 1.2438e10 / T ** 3 - 8.621949e11 / T ** 4);
  const u = Math.exp(11.8571 - 3840.7 / T - 216961 / T ** 2);
  const theta = 0.000975 - 1.426e-5 * t + 6.436e-8 * t * t;
  const P = hPa / 1013.25;
  return { C1, u, theta, P, Cs: C1 * P * (1 - u / P) * (1 - theta * P) / ((1 - u) * (1 - theta)) };
}

/** The curve through the rows for one C₀, k and R, one hour a step, Cs along a straight line within it. */
export function curve(Cs: readonly number[], C0: number, k: number, R: number): number[] {
  const E = Math.exp(-k);
  const f = (1 - E) / k;
  const values = [C0];
  for (let i = 1; i < Cs.length; i += 1) values.push(values[i - 1]! * E + Cs[i - 1]! * (1 - E) + (Cs[i]! - Cs[i - 1]!) * (1 - f) - R * f);
  return values;
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** For one k the best C₀ and R by the normal equations, and the squares left. */
function bestFor(Cs: readonly number[], C: readonly number[], k: number): { C0: number; R: number; squares: number } {
  const base = curve(Cs, 0, k, 0);
  const a = curve(Cs, 1, k, 0).map((each, i) => each - base[i]!);
  const b = curve(Cs, 0, k, 1).map((each, i) => each - base[i]!);
  const y = C.map((each, i) => each - base[i]!);
  const dot = (p: readonly number[], q: readonly number[]): number => sum(p.map((each, i) => each * q[i]!));
  const [aa, ab, bb, ay, by] = [dot(a, a), dot(a, b), dot(b, b), dot(a, y), dot(b, y)];
  const determinant = aa * bb - ab * ab;
  const C0 = (ay * bb - by * ab) / determinant;
  const R = (by * aa - ay * ab) / determinant;
  return { C0, R, squares: sum(curve(Cs, C0, k, R).map((each, i) => (C[i]! - each) ** 2)) };
}

/** Golden section on k. */
export function fit(Cs: readonly number[], C: readonly number[]): { k: number; C0: number; R: number; squares: number } {
  let low = 0.01;
  let high = 1;
  const ratio = (Math.sqrt(5) - 1) / 2;
  for (let step = 0; step < 100; step += 1) {
    const left = high - ratio * (high - low);
    const right = low + ratio * (high - low);
    if (bestFor(Cs, C, left).squares < bestFor(Cs, C, right).squares) high = right; else low = left;
  }
  const k = (low + high) / 2;
  return { k, ...bestFor(Cs, C, k) };
}

export function workedNight(): { steps: Step[]; table: string[] } {
  const steps: Step[] = [];
  const say = (name: string, value: number, decimals: number, unit = ''): void => { steps.push({ name, shown: `${value.toFixed(decimals)}${unit === '' ? '' : ` ${unit}`}` }); };
  const first = solubility(24.8, 1008.6);
  say('C1', first.C1, 4, 'mg/L');
  say('u', first.u, 6, 'atm');
  say('theta', first.theta, 8);
  say('P', first.P, 6, 'atm');
  say('Cs at 22:00', first.Cs, 3, 'mg/L');
  const Cs = rows.map(([, , t, p]) => solubility(t, p).Cs);
  const C = rows.map(([, c]) => c);
  say('saturation at 22:00', 100 * C[0]! / Cs[0]!, 1, '%');
  const rates = C.slice(1).map((each, i) => each - C[i]!);
  const deficits = C.slice(1).map((each, i) => (Cs[i]! - C[i]! + Cs[i + 1]! - each) / 2);
  const meanD = sum(deficits) / deficits.length;
  const meanRate = sum(rates) / rates.length;
  const k0 = sum(deficits.map((each, i) => (each - meanD) * (rates[i]! - meanRate))) / sum(deficits.map((each) => (each - meanD) ** 2));
  say('mean deficit of the steps', meanD, 3, 'mg/L');
  say('mean rate', meanRate, 3, 'mg/L/h');
  say('k of the regression', k0, 3, '/h');
  say('R of the regression', k0 * meanD - meanRate, 3, 'mg/L/h');
  const best = fit(Cs, C);
  say('k', best.k, 3, '/h');
  say('R', best.R, 3, 'mg/L/h');
  say('C0', best.C0, 2, 'mg/L');
  say('scatter', Math.sqrt(best.squares / (C.length - 3)), 3, 'mg/L');
  const meanCs = sum(Cs) / Cs.length;
  const rest = meanCs - best.R / best.k;
  say('mean solubility', meanCs, 3, 'mg/L');
  say('resting level', rest, 2, 'mg/L');
  const hours = Math.log((best.C0 - rest) / (5.5 - rest)) / best.k;
  steps.push({ name: 'time to 5.5 mg/L', shown: `${Math.floor(hours)} h ${Math.round(60 * (hours % 1))} min` });
  // Four more hours with the last solubility.
  const end = curve(Cs, best.C0, best.k, best.R).at(-1)!;
  const lastRest = Cs.at(-1)! - best.R / best.k;
  say('fitted at 06:00', end, 2, 'mg/L');
  say('lowest after 12 h', lastRest + (end - lastRest) * Math.exp(-4 * best.k), 2, 'mg/L');
  const pump = Cs.map((each) => each);
  say('lowest with twice the exchange', Math.min(...curve(pump, best.C0, 2 * best.k, best.R)), 2, 'mg/L');
  // Balance: metabolism at the middles of 05:00–06:00 and 06:00–07:00 (6.31 mg/L at 24.4 °C, 1006.8 hPa).
  const next = solubility(24.4, 1006.8).Cs;
  const net1 = C[8]! - C[7]! - best.k * (Cs[7]! - C[7]! + Cs[8]! - C[8]!) / 2;
  const net2 = 6.31 - C[8]! - best.k * (Cs[8]! - C[8]! + next - 6.31) / 2;
  say('net at 05:30', net1, 3, 'mg/L/h');
  say('net at 06:30', net2, 3, 'mg/L/h');
  const minutes = 5.5 * 60 + Math.round(60 * (-net1 / (net2 - net1)));
  steps.push({ name: 'balance point', shown: `0${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}` });
  const fitted = curve(Cs, best.C0, best.k, best.R);
  const table = rows.map(([time, c, t, p], i) => `| ${time} | ${c.toFixed(2)} | ${t.toFixed(1)} | ${p.toFixed(1)} | ${Cs[i]!.toFixed(3)} | ${(Cs[i]! - c).toFixed(3)} | ${i === 0 ? '' : rates[i - 1]!.toFixed(2)} | ${i === 0 ? '' : deficits[i - 1]!.toFixed(3)} | ${fitted[i]!.toFixed(3)} | ${(c - fitted[i]!).toFixed(3)} |`);
  return { steps, table };
}
