// A second, deliberately plain way from a sample's raw table to a number: no code of src is used here.
// It serves the differential test: what a post prints must come out of the table by this code, too.

export interface PlainPoint { minute: number; value: number }

/** What the plain code needs to know of the plan, read by eye from the note and written here by hand. */
export interface PlainPlan {
  start: string;
  names: Record<string, string>;
  phases: Record<string, [string, string]>;
  facts: Record<string, number>;
  results: Record<string, string>;
  /** Minutes between planned readings, for the rule that a rate is never taken across a missing one. */
  every: number;
  /** One tank a side, or several: then `treatment.DO` is their mean. */
  treatment: string | readonly string[];
  control: string | readonly string[];
}

export class PlainTable {
  readonly columns = new Map<string, (number | null)[]>();
  readonly minutes: number[] = [];
  readonly all = new Map<string, (number | null)[]>();

  constructor(note: string, readonly plan: PlainPlan) {
    const block = /```readings\n([\s\S]*?)\n```/.exec(note)![1]!;
    const [heads, ...rows] = block.split('\n').map((line) => line.split(';')[0]!.trim().split(/\s+/));
    for (const head of heads!.slice(1)) { this.columns.set(head, []); this.all.set(head, []); }
    let before = -1;
    let day = 0;
    for (const [clock, ...cells] of rows) {
      const [h, m] = clock!.split(':').map(Number) as [number, number];
      if (h * 60 + m < before) day += 1440;
      before = h * 60 + m;
      const start = plan.start.slice(11, 16).split(':').map(Number) as [number, number];
      this.minutes.push(day + h * 60 + m - (start[0] * 60 + start[1]));
      cells.forEach((cell, index) => {
        const leftOut = cell.startsWith('(');
        const last = cell.replace(/[()?]/g, '').split('->').at(-1)!;
        const value = last === '-' || last === '' ? null : Number(last);
        this.all.get(heads![index + 1]!)!.push(value);
        this.columns.get(heads![index + 1]!)!.push(leftOut ? null : value);
      });
    }
  }

  /** Minutes after the start of a named instant or clock time. */
  instant(text: string): number {
    const sum = /^(.*?) ([+-]) ([\d.]+) (h|min)$/.exec(text.trim());
    if (sum) return this.instant(sum[1]!) + (sum[2] === '-' ? -1 : 1) * Number(sum[3]) * (sum[4] === 'h' ? 60 : 1);
    const named = this.plan.names[text.trim()] ?? text.trim();
    const base = Date.parse(this.plan.start);
    if (/^\d{4}-/.test(named)) return (Date.parse(named.includes('+') || named.endsWith('Z') ? named : `${named.replace(' ', 'T')}:00${this.plan.start.slice(-6)}`) - base) / 60_000;
    const clock = /^(\d\d):(\d\d)$/.exec(named);
    if (clock) {
      const from = Number(this.plan.start.slice(11, 13)) * 60 + Number(this.plan.start.slice(14, 16));
      return ((Number(clock[1]) * 60 + Number(clock[2]) - from) % 1440 + 1440) % 1440;
    }
    if (named in this.plan.results || /\(/.test(named)) return this.value(named);
    throw new Error(`no instant: ${text}`);
  }

  window(text: string): [number, number] {
    const phase = this.plan.phases[text.trim()];
    const [from, to] = phase ?? text.split('..') as [string, string];
    return [this.instant(from!), this.instant(to!)];
  }

  series(text: string): PlainPoint[] {
    const bare = unwrap(text.trim());
    const minus = splitLast(bare, [' - ']);
    if (minus) {
      const right = new Map(this.series(minus.right).map((point) => [point.minute, point.value]));
      return this.series(minus.left).filter((point) => right.has(point.minute)).map((point) => ({ minute: point.minute, value: point.value - right.get(point.minute)! }));
    }
    const call = /^([a-z-]+)\((.*)\)$/.exec(bare);
    if (call?.[1] === 'abs') return this.series(call[2]!).map((point) => ({ minute: point.minute, value: Math.abs(point.value) }));
    if (call?.[1] === 'saturation' || call?.[1] === 'deficit' || call?.[1] === 'solubility') {
      const tank = call[2]!.split('.')[0]!;
      const oxygen = this.series(`${tank}.DO`);
      const temperature = new Map(this.series(`${tank}.T`).map((point) => [point.minute, point.value]));
      const pressure = new Map(this.series('room.P').map((point) => [point.minute, point.value]));
      return oxygen.filter((point) => temperature.has(point.minute) && pressure.has(point.minute)).map((point) => {
        const limit = bensonKrause(temperature.get(point.minute)!, pressure.get(point.minute)!);
        return { minute: point.minute, value: call[1] === 'saturation' ? 100 * point.value / limit : call[1] === 'deficit' ? limit - point.value : limit };
      });
    }
    if (call?.[1] === 'difference') { const [a, b] = args(call[2]!); return this.series(`${a} - ${b}`); }
    const [place, quantity] = bare.split('.') as [string, string];
    if (place === 'treatment' || place === 'control') return this.meanOf(this.tanks(place).map((tank) => this.series(`${tank}.${quantity}`)));
    const column = this.columns.get(bare);
    if (!column) throw new Error(`no series: ${text}`);
    return column.flatMap((value, index) => (value === null ? [] : [{ minute: this.minutes[index]!, value }]));
  }

  private tanks(role: 'treatment' | 'control'): string[] {
    return [this.plan[role]].flat();
  }

  /** The mean of several series at the times that all have. */
  private meanOf(all: PlainPoint[][]): PlainPoint[] {
    const [first, ...others] = all.map((points) => new Map(points.map((point) => [point.minute, point.value])));
    return [...first!].filter(([minute]) => others.every((each) => each.has(minute)))
      .map(([minute, value]) => ({ minute, value: [value, ...others.map((each) => each.get(minute)!)].reduce((a, b) => a + b) / all.length }));
  }

  /** Every way to name as many treated tanks as there are; the share of them that sets the tanks' own changes at least as far apart. */
  private permutation(quantity: string, window: [number, number]): number {
    const [before, treated] = [this.window('baseline'), this.tanks('treatment')];
    const mean = (values: number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    const changes = [...treated, ...this.tanks('control')].map((tank) => {
      const points = this.series(`${tank}.${quantity}`);
      const of = (choose: (minute: number) => boolean): number => mean(points.filter((point) => choose(point.minute)).map((point) => point.value));
      return of((minute) => inside(minute, window) && !inside(minute, before)) - of((minute) => inside(minute, before));
    });
    const apart = (chosen: number[]): number => Math.abs(mean(chosen.map((index) => changes[index]!)) - mean(changes.filter((_, index) => !chosen.includes(index))));
    const ways = changes.map((_, index) => index).reduce<number[][]>((all, index) => [...all, ...all.map((each) => [...each, index])], [[]]).filter((each) => each.length === treated.length);
    const seen = apart(treated.map((_, index) => index));
    return ways.filter((each) => apart(each) >= seen - 1e-12).length / ways.length;
  }

  /** Mean of treatment minus control in the window, less the same in the baseline; a reading counts to the baseline first. */
  private contrast(quantity: string, window: [number, number]): number {
    const before = this.window('baseline');
    const control = new Map(this.series(`control.${quantity}`).map((point) => [point.minute, point.value]));
    const gaps = this.series(`treatment.${quantity}`).filter((point) => control.has(point.minute)).map((point) => ({ minute: point.minute, value: point.value - control.get(point.minute)! }));
    const mean = (points: PlainPoint[]): number => points.reduce((sum, point) => sum + point.value, 0) / points.length;
    return mean(gaps.filter((point) => inside(point.minute, window) && !inside(point.minute, before))) - mean(gaps.filter((point) => inside(point.minute, before)));
  }

  isSeries(text: string): boolean {
    try { this.series(text); return true; } catch { return false; }
  }

  /** A number, in the unit of the head; times as minutes after the start; truths as 1 and 0. */
  value(text: string): number {
    const bare = unwrap(text.trim());
    const both = splitLast(bare, [' and ']);
    if (both) return this.value(both.left) * this.value(both.right);
    const compare = splitLast(bare, [' <= ', ' >= ', ' < ', ' > ']);
    if (compare) {
      const [l, r] = [this.value(compare.left), this.value(compare.right)];
      return Number(compare.operator.includes('<') ? (compare.operator.includes('=') ? l <= r + 1e-9 : l < r) : (compare.operator.includes('=') ? l >= r - 1e-9 : l > r));
    }
    const sum = splitLast(bare, [' + ', ' - ']);
    if (sum) { const [l, r] = [this.value(sum.left), this.value(sum.right)]; return sum.operator === ' + ' ? l + r : l - r; }
    const product = splitLast(bare, [' * ', ' / ']);
    if (product) { const [l, r] = [this.value(product.left), this.value(product.right)]; return product.operator === ' * ' ? l * r : l / r; }
    const number = /^(-?[\d.]+)(?: ?([^\s()]+))?$/.exec(bare);
    if (number && !bare.includes(':')) return Number(number[1]) * (number[2] === 'h' ? 60 : 1);
    if (bare in this.plan.results) return this.value(this.plan.results[bare]!);
    if (bare in this.plan.facts) return this.plan.facts[bare]!;
    const call = /^([a-z-]+)\((.*)\)$/.exec(bare);
    if (!call) return this.instant(bare);
    const [name, operands] = [call[1]!, args(call[2]!)];
    return this.call(name, operands);
  }

  private call(name: string, operands: string[]): number {
    const [first, second, third] = operands;
    if (name === 'abs') return Math.abs(this.value(first!));
    if (name === 'contrast') return this.contrast(first!, this.window(second!));
    if (name === 'permutation-p') return this.permutation(first!, this.window(second!));
    if (name === 'duration') { const [from, to] = this.window(first!); return to - from; }
    if (name === 'at') {
      const minute = this.instant(second!);
      const points = this.series(first!);
      const exact = points.find((point) => Math.abs(point.minute - minute) < 1e-6);
      if (!exact) throw new Error(`no reading at ${second}`);
      return exact.value;
    }
    if (name === 'all' || name === 'any') {
      const compare = splitLast(unwrap(first!), [' <= ', ' >= ', ' < ', ' > '])!;
      const window = second ? this.window(second) : null;
      const left = this.series(compare.left);
      const right = this.isSeries(compare.right) ? new Map(this.series(compare.right).map((point) => [point.minute, point.value])) : null;
      const constant = right ? 0 : this.value(compare.right);
      const truths = left.filter((point) => (!window || inside(point.minute, window)) && (!right || right.has(point.minute)))
        .map((point) => { const r = right ? right.get(point.minute)! : constant; const o = compare.operator.trim(); return o === '<' ? point.value < r : o === '>' ? point.value > r : o === '<=' ? point.value <= r + 1e-9 : point.value >= r - 1e-9; });
      return Number(name === 'all' ? truths.every(Boolean) : truths.some(Boolean));
    }
    if (name === 'percent-difference') { const [a, b] = [this.value(first!), this.value(second!)]; return 100 * (a - b) / b; }
    if (name === 'difference' && !this.isSeries(first!)) return this.value(first!) - this.value(second!);
    if (name === 'hours-below' || name === 'hours-above') {
      const window = third ? this.window(third) : null;
      return 60 * hoursBeyond(this.series(first!).filter((point) => !window || inside(point.minute, window)), this.value(second!), name === 'hours-below');
    }
    if (name === 'first-below' || name === 'first-above') {
      const level = this.value(second!);
      const found = this.series(first!).find((point) => (name === 'first-below' ? point.value < level : point.value > level));
      if (!found) throw new Error('never');
      return found.minute;
    }
    if (name === 'gap-explained' || name === 'gap-left') {
      const window = third ? this.window(third) : null;
      const [a, b] = [first!, second!].map((column) => new Map(this.series(column).filter((point) => !window || inside(point.minute, window)).map((point) => [point.minute, point.value])));
      const [fullA, fullB] = [first!, second!].map((column) => new Map(this.series(`solubility(${column.split('.')[0]!})`).map((point) => [point.minute, point.value])));
      const times = [...a!.keys()].filter((minute) => b!.has(minute) && fullA!.has(minute) && fullB!.has(minute));
      const parts = times.map((minute) => {
        const [c1, c2, s1, s2] = [a!.get(minute)!, b!.get(minute)!, fullA!.get(minute)!, fullB!.get(minute)!];
        const explained = (c1 / s1 + c2 / s2) / 2 * (s1 - s2);
        return name === 'gap-explained' ? explained : c1 - c2 - explained;
      });
      return parts.reduce((x, y) => x + y, 0) / parts.length;
    }
    if (name === 'predicted-min' || name === 'predicted-hours-below') {
      const rest = operands.slice(name === 'predicted-min' ? 1 : 2);
      const option = (word: string): string | null => rest.find((each) => each.trim().startsWith(`${word} `))?.trim().slice(word.length + 1) ?? null;
      const phase = rest.find((each) => !/ /.test(each.trim())) ?? 'dark';
      const length = /^(?:(\d+) h)? ?(?:(\d+) min)?$/.exec(option('dark') ?? '');
      const curve = plainNight(this.series(first!), this.series(`solubility(${first!.split('.')[0]!})`), this.window(phase), option('dark') === null ? null : Number(length![1] ?? 0) + Number(length![2] ?? 0) / 60,
        Number(option('exchange') ?? 1), Number(option('stocking') ?? 1));
      if (name === 'predicted-min') return Math.min(...curve.map((point) => point.value));
      return 60 * hoursBeyond(curve, this.value(second!), true);
    }
    if (name === 'missing') {
      const column = this.columns.get(first!)!;
      return column.filter((value) => value === null).length;
    }
    let window = second === undefined ? null : this.window(second);
    const points = this.series(first!);
    // A reading at lights-off belongs to the baseline in counts and means (a phase named by its name only).
    const phaseStart = second !== undefined && second.trim() === 'dark' && ['count', 'mean', 'median', 'sd'].includes(name);
    if (window === null) window = [-Infinity, Infinity];
    const used = points.filter((point) => inside(point.minute, window!) && !(phaseStart && point.minute === window![0]));
    if (used.length === 0) throw new Error(`nothing in ${second}`);
    const values = used.map((point) => point.value);
    const [start, end] = [used[0]!, used.at(-1)!];
    const change = end.value - start.value;
    switch (name) {
      case 'first': return start.value;
      case 'last': return end.value;
      case 'count': return used.length;
      case 'min': return Math.min(...values);
      case 'max': return Math.max(...values);
      case 'range': return Math.max(...values) - Math.min(...values);
      case 'mean': return values.reduce((a, b) => a + b, 0) / values.length;
      case 'time-of-min': return used.find((point) => point.value === Math.min(...values))!.minute;
      case 'time-of-max': return used.find((point) => point.value === Math.max(...values))!.minute;
      case 'change': case 'rise': return change;
      case 'fall': return -change;
      case 'percent-change': case 'percent-rise': return 100 * change / start.value;
      case 'percent-fall': return -100 * change / start.value;
      case 'rate': return change / ((end.minute - start.minute) / 60);
      case 'steepest-fall': case 'steepest-rise': {
        let best = -Infinity;
        for (let index = 1; index < used.length; index += 1) {
          const [a, b] = [used[index - 1]!, used[index]!];
          if (b.minute - a.minute > this.plan.every + 1e-6) continue;
          const slope = (b.value - a.value) / ((b.minute - a.minute) / 60);
          best = Math.max(best, name === 'steepest-fall' ? -slope : slope);
        }
        return best;
      }
      default: throw new Error(`the plain code does not know ${name}`);
    }
  }
}

const inside = (minute: number, window: [number, number]): boolean => minute >= window[0] - 1e-6 && minute <= window[1] + 1e-6;

/** Hours spent beyond a level, readings joined by straight lines. */
function hoursBeyond(points: PlainPoint[], level: number, below: boolean): number {
  let hours = 0;
  for (let index = 1; index < points.length; index += 1) {
    const [a, b] = [points[index - 1]!, points[index]!];
    const [u, v] = below ? [level - a.value, level - b.value] : [a.value - level, b.value - level];
    const length = (b.minute - a.minute) / 60;
    if (u >= 0 && v >= 0) hours += u === 0 && v === 0 ? 0 : length;
    else if (u > 0) hours += length * u / (u - v);
    else if (v > 0) hours += length * v / (v - u);
  }
  return hours;
}

/** The dark readings fitted by dC/dt = k(Cs − C) − R (golden section on k, normal equations for the rest), then drawn again every five minutes. */
function plainNight(oxygen: PlainPoint[], full: PlainPoint[], window: [number, number], dark: number | null, exchange: number, stocking: number): PlainPoint[] {
  const solubility = new Map(full.map((point) => [point.minute, point.value]));
  const used = oxygen.filter((point) => inside(point.minute, window) && solubility.has(point.minute));
  const rows = used.map((point) => ({ hours: (point.minute - used[0]!.minute) / 60, c: point.value, cs: solubility.get(point.minute)! }));
  const draw = (at: { hours: number; cs: number }[], start: number, k: number, r: number): number[] => {
    const values = [start];
    for (let i = 1; i < at.length; i += 1) {
      const dt = at[i]!.hours - at[i - 1]!.hours;
      const left = Math.exp(-k * dt);
      const f = (1 - left) / k;
      values.push(values[i - 1]! * left + at[i - 1]!.cs * (1 - left) + (at[i]!.cs - at[i - 1]!.cs) / dt * (dt - f) - r * f);
    }
    return values;
  };
  const best = (k: number): { start: number; r: number; squares: number } => {
    const base = draw(rows, 0, k, 0);
    const one = draw(rows, 1, k, 0).map((each, i) => each - base[i]!);
    const two = draw(rows, 0, k, 1).map((each, i) => each - base[i]!);
    const y = rows.map((row, i) => row.c - base[i]!);
    const dot = (p: number[], q: number[]): number => p.reduce((sum, each, i) => sum + each * q[i]!, 0);
    const determinant = dot(one, one) * dot(two, two) - dot(one, two) ** 2;
    const start = (dot(one, y) * dot(two, two) - dot(two, y) * dot(one, two)) / determinant;
    const r = (dot(two, y) * dot(one, one) - dot(one, y) * dot(one, two)) / determinant;
    return { start, r, squares: draw(rows, start, k, r).reduce((sum, each, i) => sum + (rows[i]!.c - each) ** 2, 0) };
  };
  let [low, high] = [0.005, 3];
  for (let step = 0; step < 120; step += 1) {
    const [a, b] = [high - 0.6180339887498949 * (high - low), low + 0.6180339887498949 * (high - low)];
    if (best(a).squares < best(b).squares) high = b; else low = a;
  }
  const k = (low + high) / 2;
  const { start, r } = best(k);
  const end = dark ?? rows.at(-1)!.hours;
  const count = Math.ceil(end * 12 - 1e-9);
  const grid = Array.from({ length: count + 1 }, (_, i) => {
    const hours = end * i / count;
    const next = rows.findIndex((row) => row.hours >= hours);
    const [from, to] = [rows[next - 1], rows[next] ?? rows.at(-1)!];
    return { hours, cs: next < 0 ? rows.at(-1)!.cs : from ? from.cs + (to.cs - from.cs) * (hours - from.hours) / (to.hours - from.hours) : to.cs };
  });
  return draw(grid, start, k * exchange, r * stocking).map((value, i) => ({ minute: grid[i]!.hours * 60, value }));
}

/** Oxygen at saturation, mg/L, fresh water; Benson and Krause 1984 with station pressure in hPa. */
function bensonKrause(celsius: number, hectopascal: number): number {
  const kelvin = celsius + 273.15;
  const atmospheres = hectopascal / 1013.25;
  const unit = Math.exp(-139.34411 + 157570.1 / kelvin - 66423080 / kelvin ** 2 + 1.2438e10 / kelvin ** 3 - 8.621949e11 / kelvin ** 4);
  const vapour = Math.exp(11.8571 - 3840.7 / kelvin - 216961 / kelvin ** 2);
  const theta = 0.000975 - 0.00001426 * celsius + 0.00000006436 * celsius ** 2;
  return unit * atmospheres * (1 - vapour / atmospheres) * (1 - theta * atmospheres) / ((1 - vapour) * (1 - theta));
}

/** Text without brackets that enclose all of it. */
function unwrap(text: string): string {
  let bare = text.trim();
  for (;;) {
    if (!bare.startsWith('(')) return bare;
    let depth = 0;
    for (let index = 0; index < bare.length; index += 1) {
      if (bare[index] === '(') depth += 1;
      if (bare[index] === ')') depth -= 1;
      if (depth === 0 && index < bare.length - 1) return bare;
    }
    bare = bare.slice(1, -1).trim();
  }
}

function args(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = '';
  for (const character of text) {
    if (character === '(') depth += 1;
    if (character === ')') depth -= 1;
    if (character === ',' && depth === 0) { parts.push(part.trim()); part = ''; } else part += character;
  }
  parts.push(part.trim());
  return parts;
}

/** Splits at the last of the operators outside brackets. */
function splitLast(text: string, operators: string[]): { left: string; right: string; operator: string } | null {
  let depth = 0;
  for (let index = text.length - 1; index > 0; index -= 1) {
    if (text[index] === ')') depth += 1;
    if (text[index] === '(') depth -= 1;
    if (depth !== 0) continue;
    for (const operator of operators) {
      if (text.startsWith(operator, index) && index > 0) return { left: text.slice(0, index).trim(), right: text.slice(index + operator.length).trim(), operator };
    }
  }
  return null;
}
