// Differential test: every number in a published sample post that comes from readings is computed a second time, from the
// raw table, by plain code that shares nothing with src (plainRecompute.ts), and must agree with what the post prints.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { readNote } from '../../../src/experiment/readNote.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { PlainTable, type PlainPlan } from './plainRecompute.ts';

const samples = path.resolve(import.meta.dirname, '../../../samples');

const plans: Record<string, PlainPlan> = {
  'overnight-oxygen': {
    start: '2026-04-11T20:00:00+03:00', every: 30, treatment: 'duckweed', control: 'clear',
    names: { start: '20:00', end: '09:00', 'light-off': '22:00', 'light-on': '08:30', sunrise: '2026-04-12T06:10:00+03:00' },
    phases: { baseline: ['start', 'light-off'], dark: ['light-off', 'sunrise'], recovery: ['sunrise', 'end'] },
    // Litres: 45 cm x 28 cm x 26 cm of water.
    facts: { 'volume(duckweed)': 45 * 28 * 26 / 1000, 'volume(clear)': 45 * 28 * 26 / 1000 },
    results: {},
  },
  'heater-failure': {
    start: '2026-01-24T20:00:00+01:00', every: 60, treatment: 'lidded', control: 'bare',
    names: { start: '20:00', end: '09:00', 'heaters-off': '21:00' },
    phases: { heated: ['start', 'heaters-off'], cooling: ['heaters-off', 'end'] },
    facts: { 'volume(lidded)': 60 * 30 * 32 / 1000, 'volume(bare)': 60 * 30 * 32 / 1000 },
    results: {},
  },
  'naechtlicher-ausstroemer': {
    start: '2026-07-18T20:00:00+02:00', every: 60, treatment: ['sprudel1', 'sprudel2'], control: ['ruhig1', 'ruhig2'],
    names: { start: '20:00', end: '09:00', 'light-off': '22:00', 'light-on': '08:00' },
    phases: { baseline: ['start', 'light-off'], dark: ['light-off', 'light-on'], recovery: ['light-on', 'end'] },
    facts: Object.fromEntries(['sprudel1', 'sprudel2', 'ruhig1', 'ruhig2'].map((tank) => [`volume(${tank})`, 60 * 30 * 27 / 1000])),
    results: {},
  },
};

/** One cell of each note, and what the test that can fail puts there. */
const otherCell: Record<string, readonly [string, string]> = {
  'overnight-oxygen': ['5.83', '5.13'], 'heater-failure': ['19.6    17.5', '18.6    17.5'], 'naechtlicher-ausstroemer': ['5.64', '5.14'],
};

const unescape = (text: string): string => text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, "'").replace(/&amp;/g, '&');

/** Every computed value of a post: its formula, machine value and visible text. */
function computedValues(html: string): { formula: string; machine: string; shown: string }[] {
  return [...html.matchAll(/<data\b([^>]*)>([\s\S]*?)<\/data>/g)].flatMap(([, attributes, inner]) => {
    const formula = /data-formula="([^"]*)"/.exec(attributes!)?.[1];
    const machine = /\bvalue="([^"]*)"/.exec(attributes!)?.[1];
    return formula === undefined || machine === undefined ? [] : [{ formula: unescape(formula), machine: unescape(machine), shown: unescape(inner!.replace(/<[^>]+>/g, '')).trim() }];
  });
}

for (const [name, plan] of Object.entries(plans)) {
  suite(`differential: ${name}`, () => {
    const text = readFileSync(path.join(samples, `${name}.tank.md`), 'utf8');
    const named = /```values\n([\s\S]*?)\n```/.exec(text)![1]!;
    for (const line of named.split('\n')) { const [result, formula] = line.split(' = ') as [string, string]; plan.results[result] = formula; }
    const table = new PlainTable(text, plan);

    test('every printed value agrees with plain code on the raw table', async () => {
      const { html } = await publishPost(readNote(text), { stem: name, toolVersion: 'test' });
      const values = computedValues(html);
      assert.ok(values.length > 100, `only ${values.length} values found`);
      let numbers = 0; let times = 0; let truths = 0; let shownToo = 0;
      for (const { formula, machine, shown } of values) {
        if (/^\d{4}-\d\d-\d\dT[^/]+\/\d{4}-/.test(machine)) {
          const ends = machine.split('/').map((each) => (Date.parse(each) - Date.parse(plan.start)) / 60_000);
          assert.deepEqual(ends, table.window(formula), `${formula}: the post says ${machine}`);
          continue;
        }
        const stretch = /^(\S+)\/(\S+)$/.exec(machine);
        if (stretch && plan.phases[formula]) {
          times += 1;
          assert.deepEqual(stretch.slice(1).map((each) => (Date.parse(each) - Date.parse(plan.start)) / 60_000), table.window(formula), formula);
          continue;
        }
        const negated = formula.startsWith('-') ? formula.slice(1) : null;
        const plain = negated === null ? table.value(formula) : -table.value(negated);
        const where = `${formula}: the post says ${machine} (${shown}), plain code ${plain}`;
        if (machine === 'true' || machine === 'false') { truths += 1; assert.equal(machine, plain ? 'true' : 'false', where); continue; }
        if (/^\d{4}-\d\d-\d\dT/.test(machine)) { times += 1; assert.equal((Date.parse(machine) - Date.parse(plan.start)) / 60_000, plain, where); continue; }
        numbers += 1;
        // Durations are printed in hours; the plain code counts minutes.
        const hours = /^(?:duration|hours-below|hours-above|predicted-hours-below)\(/.test(formula) || /below-limit - /.test(formula) || / - (?:heaters-off|light-off)$/.test(formula);
        const perHour = / \/ duration\(/.test(formula);
        const expected = hours ? plain / 60 : perHour ? plain * 60 : plain;
        // A fit found in two ways agrees to fewer digits than a sum does.
        assert.ok(Math.abs(Number(machine) - expected) <= (formula.startsWith('predicted-') ? 1e-5 : 1e-9) * Math.max(1, Math.abs(expected)), where);
        // What the reader sees is the same number, rounded to the decimals shown.
        const seen = /^[+−-]?\d+(?:\.(\d+))?/.exec(shown.replace(/^(?:about|nearly) /, '').replace(/(\d),(?=\d)/, '$1.'));
        if (seen && !hours) {
          shownToo += 1;
          const half = 0.5 * 10 ** -(seen[1]?.length ?? 0);
          assert.ok(Math.abs(Number(seen[0].replace('−', '-')) - Number(machine)) <= half * (1 + 1e-6) + 1e-9, where);
        }
      }
      assert.ok(numbers > 100 && times > 1 && truths > 0 && shownToo > 100, JSON.stringify({ numbers, times, truths, shownToo }));
    });

    test('a reading changed by hand is noticed by the plain code: the test can fail', async () => {
      const { html } = await publishPost(readNote(text), { stem: name, toolVersion: 'test' });
      const [first] = Object.keys(plan.results);
      const [was, is] = otherCell[name]!;
      const other = new PlainTable(text.replace(was, is), plan);
      const disagreeing = computedValues(html).filter(({ formula, machine }) => {
        if (!/^-?\d/.test(machine) || /T\d\d:/.test(machine)) return false;
        return Math.abs(Math.abs(other.value(formula.replace(/^-/, ''))) - Math.abs(table.value(formula.replace(/^-/, '')))) > 0.01;
      });
      assert.ok(first !== undefined && disagreeing.length > 3, `${disagreeing.length}`);
    });
  });
}
