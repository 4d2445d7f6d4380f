// Plain numbers where the quantity's unit is printed as nothing.
import assert from 'node:assert/strict';
import { plan, read } from './support.ts';

const measured = (line: string, more = ''): ReturnType<typeof read> => read(plan({ measure: `measure:\n  X: {${line}}`, more }));

suite('protocol: numbers whose unit is printed as nothing', () => {
  test('accuracy and resolution of a pH are differences of pH, with and without the unit', () => {
    for (const unit of ['', ' pH']) {
      const { plan: found, codes } = measured(`what: pH, with: probe, accuracy: 0.05${unit}, resolution: 0.01${unit}`);
      const [entry] = found.measure;
      assert.deepEqual(codes, []);
      assert.deepEqual([entry?.accuracy?.value, entry?.accuracy?.unit.symbol, entry?.resolution?.value, entry?.resolution?.unit.symbol], [0.05, 'pH-difference', 0.01, 'pH-difference']);
    }
  });

  test('of a specific gravity and a count they are in its own unit', () => {
    const gravity = measured('what: specific gravity, with: hydrometer, accuracy: ±0.001, resolution: 0.0005');
    assert.deepEqual(gravity.codes, []);
    assert.deepEqual([gravity.plan.measure[0]?.accuracy?.value, gravity.plan.measure[0]?.accuracy?.unit.symbol], [0.001, 'SG']);
    assert.deepEqual(measured('what: count, with: eye, accuracy: 1').codes, []);
  });

  test('the effect that is expected and the bounds of a limit too', () => {
    const { plan: whole, codes } = measured('what: pH, with: probe', 'expect:\n  - {quantity: X, effect: 0.3}\nlimits:\n  - {for: invented fish, quantity: X, at least: 6.5, at most: 8.2, source: invented}');
    assert.deepEqual(codes, []);
    assert.deepEqual([whole.expect?.[0]?.effect?.value, whole.expect?.[0]?.effect?.unit.symbol], [0.3, 'pH-difference']);
    assert.deepEqual([whole.limits[0]?.atLeast?.value.value, whole.limits[0]?.atMost?.value.unit.symbol], [6.5, 'pH']);
  });

  test('what is printed with a unit still needs it; a negative spread stays out of range', () => {
    assert.deepEqual(measured('what: dissolved oxygen, unit: mg/L, accuracy: 0.1').codes, ['bad-quantity']);
    assert.deepEqual(measured('what: salinity, unit: PSU, accuracy: 0.5').codes, ['bad-quantity']);
    assert.deepEqual(measured('what: pH, accuracy: -0.05').codes, ['out-of-range']);
    assert.deepEqual(measured('what: pH, accuracy: 0.05 mg/L').codes, ['unit-does-not-fit']);
  });

  test('no instrument is without error: an accuracy or resolution of 0 is a slip, but for a count', () => {
    assert.deepEqual(measured('what: count, with: eye, accuracy: 0').codes, []);
    assert.deepEqual(measured('what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0 mg/L').codes, ['out-of-range']);
    assert.deepEqual(measured('what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0.1 mg/L, resolution: 0 mg/L').codes, ['out-of-range']);
  });
});
