// Units: what is read, how it converts, what is refused.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { convert, convertible, differenceUnit, matchPrintedUnit, nearestUnit, parseUnit, perHour, unitTable } from '../../../src/quantities/units.ts';
import { atoms, commonUnits } from '../../../src/quantities/atoms.ts';
import type { Kind, Unit } from '../../../src/quantities/types.ts';
import { measureByName, measures, nearestMeasure } from '../../../src/quantities/measures.ts';
import { readUcum } from './ucum.ts';

function unit(text: string): Unit {
  const read = parseUnit(text);
  assert.ok(read, `${text} is a unit`);
  return read;
}

suite('units: reading', () => {
  const same: [string, string][] = [
    ['mg/l', 'mg/L'], ['MG/L', 'mg/L'], ['mg·L-1', 'mg/L'], ['mg L⁻¹', 'mg/L'], ['mg / L', 'mg/L'], ['µmol/L', 'umol/L'], ['μmol/l', 'umol/L'],
    ['μmol m⁻² s⁻¹', 'umol/m2/s'], ['°C', 'degC'], ['℃', 'degC'], ['º C', 'degC'], ['oC', 'degC'], ['degC/h', 'K/h'], ['°F', 'degF'], ['mg/L as N', 'mg/L-N'],
    ['mg/L NO3-N', 'mg/L-N'], ['mgN/L', 'mg/L-N'], ['mg/L-NO3', 'mg/L'], ['mg/L CaCO₃', 'mg/L-CaCO3'], ['mg/L-PO4-P', 'mg/L-P'], ['1/min', '/min'],
    ['°dKH', 'dKH'], ['‰', 'ppt'], ['uM', 'umol/L'], ['µS/cm', 'uS/cm'], ['US gal', 'galUS'], ['gal(UK)', 'galUK'], ['cm²', 'cm2'], ['per cent', '%'], ['torr', 'mmHg'],
    ['milligrams per litre', 'mg/L'], ['hpa', 'hPa'], ['ml(STP)/l', 'mL(STP)/L'], ['lux', 'lx'],
  ];
  for (const [written, symbol] of same) test(`${written} is ${symbol}`, () => assert.equal(unit(written).symbol, symbol));

  for (const written of ['gal', 'MM', 'foo', '', '/', 'mg/', 'mg//L', 'mg/L-X', 'mg/L-N-P', 'L-N', 'in the']) {
    test(`"${written}" is no unit`, () => assert.equal(parseUnit(written), null));
  }

  test('every unit of the table reads back from its symbol, and every printed form from prose', () => {
    for (const entry of unitTable) {
      assert.deepEqual(parseUnit(entry.symbol), entry.unit, entry.symbol);
      assert.equal(entry.unit.symbol, entry.symbol);
      for (const name of entry.names) assert.equal(matchPrintedUnit(name, 0)?.unit.symbol, entry.symbol, name);
      if (entry.unit.print === '' || entry.symbol === 'degF-difference') continue;
      const printed = matchPrintedUnit(`12 ${entry.unit.print} of`, 2);
      assert.equal(printed?.unit.symbol, entry.symbol, entry.unit.print);
      assert.equal(printed?.length, entry.unit.print.length + 1);
    }
  });

  test('no text makes reading throw, and what is read reads back', function slow() {
    this.timeout(120_000);
    fc.assert(fc.property(fc.oneof(fc.string({ maxLength: 30 }), fc.array(fc.constantFrom('mg', 'L', '/', '-N', '2', '-1', ' ', '°', 'C', 'h', '.', '%', '(', 'per', 'g/kg', 'as N')).map((parts) => parts.join(''))), (text) => {
      const read = parseUnit(text);
      if (read) {
        assert.deepEqual(parseUnit(read.symbol), read, `${text}: ${read.symbol}`);
        assert.ok(Number.isFinite(read.factor) && read.factor > 0);
      }
      matchPrintedUnit(text, 0);
      nearestUnit(text);
    }), { numRuns: 3000 });
  });

  test('UCUM codes of the dossier list; what UCUM has no unit for in its units or as an annotation', () => {
    const codes: [string, string][] = [
      ['mg/L', 'mg/L'], ['umol/L', 'umol/L'], ['degC', 'Cel'], ['degF', '[degF]'], ['kPa', 'kPa'], ['hPa', 'hPa'], ['mbar', 'mbar'], ['mmHg', 'mm[Hg]'],
      ['inHg', "[in_i'Hg]"], ['psi', '[psi]'], ['atm', 'atm'], ['uS/cm', 'uS/cm'], ['mS/cm', 'mS/cm'], ['pH', '[pH]'], ['meq/L', 'meq/L'], ['ppt', '[ppth]'],
      ['ppm', '[ppm]'], ['umol/m2/s', 'umol/m2/s'], ['lx', 'lx'], ['%', '%'], ['mg/L/h', 'mg/L/h'], ['/h', '/h'], ['1', '1'], ['dKH', '(10.mg{CaO}/L)'], ['dGH', '(10.mg{CaO}/L)'], ['NTU', '{NTU}'], ['degF-difference', '(5.K/9)'],
      ['dKH/h', '(10.mg{CaO}/L)/h'],
      ['mg/L-CaCO3', 'mg{CaCO3}/L'], ['mg/L-N', 'mg{N}/L'],
    ];
    for (const [symbol, code] of codes) assert.equal(unit(symbol).ucum, code, symbol);
  });

  test('every unit has a UCUM code that the specification’s grammar and tables know, of the same size', () => {
    const symbols = new Set([...atoms.map((each) => each.symbol), ...commonUnits, ...measures.flatMap((each) => each.units), 'dKH/h', 'degF-difference/h', 'NTU/h', 'mL(STP)/L/h']);
    assert.ok(symbols.size > 120);
    // Scales and counts whose number is no plain size: a temperature point, pH, salinity, specific gravity, turbidity.
    const scales: readonly Kind[] = ['temperature', 'ph', 'ph-difference', 'salinity', 'specific-gravity', 'turbidity'];
    const ofSubstance = /\{(?:CaO|CaCO3|STP)\}/u;
    for (const symbol of symbols) {
      const { ucum, factor, kind } = unit(symbol);
      const read = readUcum(ucum);
      assert.ok(typeof read !== 'string', `${symbol}: ${ucum}: ${read as string}`);
      if (scales.includes(kind) || ofSubstance.test(ucum)) continue;
      // UCUM's millimetre of mercury is 133.322 Pa, the torr 4 millionths less
      assert.ok(Math.abs(read.size / factor - 1) < 5e-6, `${symbol}: ${ucum} is ${read.size}, not ${factor}`);
    }
    for (const wrong of ['mgg/L', 'mg/', '(mg/L', 'dKH', 'mg L', 'kmin']) assert.equal(typeof readUcum(wrong), 'string', wrong);
  });

  test('near misses', () => {
    assert.equal(nearestUnit('mg/K'), 'mg/L');
    assert.equal(nearestUnit('gal'), 'galUS');
    assert.equal(nearestUnit('Celcius'), 'degC');
    assert.equal(nearestUnit('uS/c'), 'uS/cm');
    assert.equal(nearestUnit('xyzzy'), null);
  });
});

suite('units: converting', () => {
  const close = (actual: number, expected: number, relative = 1e-12): void =>
    assert.ok(Math.abs(actual - expected) <= relative * Math.abs(expected), `${actual} is ${expected}`);

  // [value, from, expected, to, relative tolerance, source]
  const published: [number, string, number, string, number, string][] = [
    [25, 'degC', 77, 'degF', 0, 'definition'], [77.7, 'degF', 25.3888888888889, 'degC', 1e-14, 'definition'], [1.8, 'degF-difference', 1, 'K', 1e-14, 'definition'],
    [1, 'atm', 1013.25, 'hPa', 0, 'definition'], [1, 'hPa', 1, 'mbar', 0, 'definition'], [1, 'atm', 29.9213, 'inHg', 2e-6, 'dossier 1.5'], [1, 'atm', 14.6959, 'psi', 4e-6, 'dossier 1.5'],
    [760, 'mmHg', 101.32472, 'kPa', 4e-6, 'UCUM, dossier 1.5'], [29.92, 'inHg', 1013.2045, 'hPa', 4e-6, 'UCUM, dossier 1.5'], [14.7, 'psi', 101.35293, 'kPa', 1e-7, 'UCUM, dossier 1.5'],
    [1, 'dKH', 17.848, 'mg/L-CaCO3', 1e-5, 'dossier 4.3'], [1, 'dKH', 0.35665, 'meq/L', 1e-5, 'dossier 4.3'], [1, 'meq/L', 50.043, 'mg/L-CaCO3', 1e-5, 'dossier 4.3'],
    [1, 'meq/L', 2.8039, 'dKH', 1e-4, 'dossier 4.3'], [1, 'dGH', 17.848, 'mg/L-CaCO3', 1e-5, 'dossier 4.3'], [1, 'fH', 10, 'mg/L-CaCO3', 1e-13, 'definition'],
    [1, 'mL(STP)/L', 44.6595, 'umol/L', 1e-6, 'dossier 1.5'], [1, 'galUS', 3.785411784, 'L', 1e-14, 'NIST SP 811'], [1, 'galUK', 4.54609, 'L', 1e-14, 'NIST SP 811'], [1, 'in', 2.54, 'cm', 1e-14, 'definition'],
    [1, 'mS/cm', 1000, 'uS/cm', 1e-14, 'definition'], [1, 'S/m', 10, 'mS/cm', 1e-14, 'definition'], [3, '%/h', 0.05, '%/min', 1e-14, 'definition'], [1, 'mol/m2/d', 1e6 / 86400, 'umol/m2/s', 1e-14, 'definition'],
    [2, 'week', 14, 'd', 0, 'definition'], [1, 'mg/L-N/h', 24000, 'ug/L-N/d', 1e-14, 'definition'], [42000, 'cm3', 42, 'L', 1e-14, 'definition'],
  ];
  for (const [value, from, expected, to, tolerance, source] of published) {
    test(`${value} ${from} is ${expected} ${to} (${source})`, () => {
      close(convert(value, unit(from), unit(to)), expected, tolerance);
      close(convert(expected, unit(to), unit(from)), value, Math.max(tolerance, 1e-13) * 2);
    });
  }

  const apart: [string, string][] = [
    ['dKH', 'dGH'], ['mg/L', 'mg/L-N'], ['mg/L', 'mg/L-P'], ['mg/L-N', 'mg/L-P'], ['ppm', '1'], ['ppm', 'mg/L'], ['%', 'pp'], ['%', '1'], ['degC', 'K'], ['pH', '1'],
    ['pH', 'pH-difference'], ['PSU', '%'], ['SG', '1'], ['mg/L', 'umol/L'], ['NTU', '1'], ['meq/L', 'mmol/L'], ['h', '/h'],
  ];
  for (const [a, b] of apart) test(`${a} does not convert into ${b}`, () => assert.equal(convertible(unit(a), unit(b)), false));

  test('there and back is the same within 1e-12 for every pair of the table', function slow() {
    this.timeout(120_000);
    for (const { unit: a } of unitTable) for (const { unit: b } of unitTable) {
      if (!convertible(a, b)) continue;
      fc.assert(fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        fc.pre(value === 0 || Math.abs(value) > 1e-250);
        const back = convert(convert(value, a, b), b, a);
        const scale = Math.max(Math.abs(value), Math.abs(a.offset / a.factor), Math.abs(b.offset / a.factor), 1e-300);
        assert.ok(Math.abs(back - value) <= 1e-12 * scale, `${value} ${a.symbol} by ${b.symbol} is ${back}`);
      }), { numRuns: 20 });
    }
  });

  test('differences and rates', () => {
    const rows: [string, string, string][] = [['degC', 'K', 'K/h'], ['degF', 'degF-difference', 'degF-difference/h'], ['%', 'pp', '%/h'], ['pH', 'pH-difference', 'pH-difference/h'], ['mg/L-N', 'mg/L-N', 'mg/L-N/h'], ['umol/m2/s', 'umol/m2/s', 'umol/m2/s/h']];
    for (const [symbol, difference, rate] of rows) {
      assert.equal(differenceUnit(unit(symbol)).symbol, difference);
      assert.equal(perHour(unit(symbol)).symbol, rate);
    }
    assert.equal(differenceUnit(unit('%/h')).symbol, 'pp/h');
  });
});

suite('units: prose', () => {
  const rows: [string, string | null, string][] = [
    ['mg/L.', 'mg/L', '.'], [' mg/l, and', 'mg/L', ', and'], ['°C (77.7 °F)', 'degC', ' (77.7 °F)'], ['° C.', 'degC', '.'], ['degrees Celsius', 'degC', ''],
    ['milligrams per litre per hour', 'mg/L/h', ''], ['mg/L an hour later', 'mg/L', ' an hour later'], ['mg/L an hour on average', 'mg/L/h', ' on average'], ['mg/L a tank', 'mg/L', ' a tank'], ['per cent of', '%', ' of'], ['percentage points', 'pp', ''],
    ['in the morning', null, ''], ['h 30 min', 'h', ' 30 min'], ['gill beats a minute', '/min', ''], ['micromoles per square metre per second', 'umol/m2/s', ''],
    ['milligrams per litre as nitrogen per day', 'mg/L-N/d', ''], ['tanks', null, ''], ['mats', null, ''], ['hectopascal', 'hPa', ''], ['% per hour', '%/h', ''], ['inches tall', 'in', ' tall'],
    ['mg/L NO3-N', 'mg/L-N', ''], ['hours', 'h', ''], ['US gallons', 'galUS', ''], ['%', '%', ''], ['\u202f%', '%', ''], ['degrees Celsius per hour', 'K/h', ''], ['minutes', 'min', ''],
  ];
  for (const [text, symbol, rest] of rows) {
    test(`${JSON.stringify(text)}: ${symbol}`, () => {
      const found = matchPrintedUnit(text, 0);
      assert.equal(found?.unit.symbol ?? null, symbol);
      if (found) assert.equal(text.slice(found.length), rest);
    });
  }
});

suite('measures', () => {
  test('names are single, default units are read, every listed unit is a unit', () => {
    const seen = new Set<string>();
    for (const entry of measures) {
      for (const name of [entry.name.toLowerCase(), ...entry.alsoCalled]) {
        assert.ok(!seen.has(name), `${name} stands for two quantities`);
        seen.add(name);
        assert.equal(measureByName(name), entry);
      }
      for (const symbol of entry.units) assert.equal(parseUnit(symbol)?.symbol, symbol, `${entry.name}: ${symbol}`);
      assert.equal(entry.units[0] ?? null, entry.unit);
      assert.equal(new Set(entry.units).size, entry.units.length);
      if (entry.plausible) assert.ok(entry.plausible[0] < entry.plausible[1]);
    }
  });

  test('near misses', () => {
    assert.equal(nearestMeasure('disolved oxigen'), 'dissolved oxygen');
    assert.equal(nearestMeasure('watertemperature'), 'water temperature');
    assert.equal(nearestMeasure('zzz'), null);
  });
});
