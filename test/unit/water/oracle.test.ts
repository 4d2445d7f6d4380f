// The equations against an independent reference: python3-gsw (TEOS-10). Skipped with the reason printed where it is not
// installed; with CI=true a missing reference is a failure.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { oxygenSolubility } from '../../../src/water/oxygenSolubility.ts';
import { oxygenSolubilityGarciaGordon } from '../../../src/water/oxygenGarciaGordon.ts';
import { conductivityOfSalinity, practicalSalinity } from '../../../src/water/practicalSalinity.ts';
import { waterDensity } from '../../../src/water/density.ts';
import { salinityOfSpecificConductance } from '../../../src/water/specificConductance.ts';
import { standardAtmosphere } from '../../../src/water/outcome.ts';
import { near, nearPart } from './near.ts';

const script = `
import json, gsw
out = {"oxygen": [], "salinity": [], "conductivity": [], "density": [], "schemel": []}
for t in range(0, 36, 5):
    for s in (0, 5, 10, 20, 35):
        sr = gsw.SR_from_SP(s); ct = gsw.CT_from_pt(sr, t); rho = gsw.rho_t_exact(sr, t, 0)
        o = gsw.O2sol_SP_pt(s, t)
        out["oxygen"].append([t, s, float(o), float(o * rho * 31.9988e-6)])
        out["density"].append([t, s, float(rho)])
for t in (0, 5, 10, 15, 20, 25, 30, 35):
    for c in (0.1, 0.3, 0.5, 1, 1.5, 2, 3, 4, 5, 10, 20, 30, 40, 45):
        s = float(gsw.SP_from_C(c, t, 0))
        if s < 42: out["salinity"].append([c, t, s])
    for s in (0.2, 1, 1.9, 2.1, 5, 20, 35, 41):
        out["conductivity"].append([s, t, float(gsw.C_from_SP(s, t, 0))])
for sc in range(500, 53087, 500):
    out["schemel"].append([sc, float(gsw.SP_from_C(sc / 1000, 25, 0))])
print(json.dumps(out))
`;

interface Reference { oxygen: number[][]; salinity: number[][]; conductivity: number[][]; density: number[][]; schemel: number[][] }

function readReference(): { reference: Reference } | { reason: string } {
  const run = spawnSync('/usr/bin/python3', ['-c', script], { encoding: 'utf8', timeout: 60_000 });
  if (run.error) return { reason: `the system's python3 did not start (${run.error.message})` };
  if (run.status !== 0) return { reason: `python3-gsw is not installed (${run.stderr.trim().split('\n').at(-1) ?? 'no message'})` };
  return { reference: JSON.parse(run.stdout) as Reference };
}

suite('oracle: TEOS-10 (python3-gsw)', () => {
  let reference: Reference;
  suiteSetup(function setup() {
    this.timeout(90_000);
    const read = readReference();
    if ('reason' in read) {
      console.log(`      skipped: ${read.reason}`);
      assert.notEqual(process.env['CI'], 'true', `in CI the reference must be there: ${read.reason}`);
      this.skip();
    } else reference = read.reference;
  });

  test('oxygen solubility, Benson and Krause, within 0.003 mg/L', () => {
    for (const [t, s, , milligrams] of reference.oxygen as [number, number, number, number][]) {
      near(oxygenSolubility({ temperature: t, salinity: s, pressure: standardAtmosphere }), milligrams, 0.003, `${t} °C, ${s}`);
    }
  });
  test('oxygen solubility, Garcia and Gordon on the same temperature scale, to 12 digits', () => {
    for (const [t, s, micromoles] of reference.oxygen as [number, number, number][]) nearPart(oxygenSolubilityGarciaGordon(t * 1.00024, s), micromoles, 1e-12, `${t} °C, ${s}`);
  });
  test('practical salinity from conductivity, low range included, within 1e-5', () => {
    for (const [c, t, s] of reference.salinity as [number, number, number][]) near(practicalSalinity(c, t), s, 1e-5, `${c} mS/cm, ${t} °C`);
  });
  test('conductivity from salinity, within 5e-5 mS/cm', () => {
    for (const [s, t, c] of reference.conductivity as [number, number, number][]) near(conductivityOfSalinity(s, t), c, 5e-5, `${s}, ${t} °C`);
  });
  test('density, EOS-80 against TEOS-10, within 0.03 kg/m³', () => {
    for (const [t, s, rho] of reference.density as [number, number, number][]) near(waterDensity(s, t), rho, 0.03, `${s}, ${t} °C`);
  });
  test('salinity from specific conductance, within 0.0122', () => {
    for (const [sc, s] of reference.schemel as [number, number][]) near(salinityOfSpecificConductance(sc), s, 0.01215, `${sc} µS/cm`);
  });
});
