// Completion: what is suggested at a cursor, and what stands there when it is taken.
import { deepEqual, equal, ok } from 'node:assert/strict';
import fc from 'fast-check';
import { complete } from '../../../src/assist/complete.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { labels, noteText, plan, readings, suggestions, taken } from './support.ts';

const inPlan = (marked: string) => noteText({ plan: marked });
const inProse = (marked: string) => noteText({ prose: marked });
const inReadings = (marked: string) => noteText({ readings: marked });
const without = (list: readonly string[], ...gone: string[]) => ok(gone.every((each) => !list.includes(each)), `${gone.join(', ')} among ${list.join(', ')}`);
const has = (list: readonly string[], ...wanted: string[]) => { for (const each of wanted) ok(list.includes(each), `${each} not among ${list.slice(0, 40).join(', ')}`); };

suite('assist: completion in the plan', () => {
  test('a thermometer\'s accuracy is told in the degrees that it shows', () => {
    const series = suggestions(inProse('{? = min(mat.‸)}\n')).find((each) => each.label.endsWith('T'))!;
    ok(/± 0\.2 °C/.test(series.documentation), series.documentation);
  });

  test('keys at the top that do not stand there yet, required ones first', () => {
    const found = labels(inPlan('question: Why?\n‸\nplace:\n  name: Here\n'));
    deepEqual(found.slice(0, 3), ['tanks', 'schedule', 'measure']);
    without(found, 'question', 'place', 'role');
  });

  test('keys of a tank by indentation, its own left out', () => {
    const found = labels(inPlan(plan.replace('    like: mat\n', '    like: mat\n    wa‸\n')));
    has(found, 'water depth', 'size');
    without(found, 'role', 'like', 'plants', 'question');
  });

  test('a key is written with its colon and carries the schema\'s words', () => {
    ok(taken(inPlan(plan.replace('    like: mat\n', '    like: mat\n    wa‸\n')), 'water depth').includes('    like: mat\n    water depth: \n'));
    ok(suggestions(inPlan('‸\n')).find((each) => each.label === 'schedule')!.documentation.includes('light off'));
  });

  test('keys inside braces and behind a dash', () => {
    const found = labels(inPlan(plan.replace('accuracy: 0.2 degC}', '‸}')));
    has(found, 'accuracy', 'resolution', 'calibrated');
    without(found, 'what', 'unit', 'with');
    deepEqual(labels(inPlan(plan.replace('    do: End the run\n', '    ‸\n'))), ['do', 'outcome']);
    deepEqual(labels(inPlan(plan.replace('stop if:', 'expect:\n  - ‸\nstop if:'))), ['quantity', 'effect', 'rate']);
    ok(taken(inPlan(plan.replace('stop if:', 'expect:\n  ‸\nstop if:')), 'quantity').includes('expect:\n  - quantity: \n'));
  });

  test('keys in braces over several lines', () => {
    has(labels(inPlan('measure:\n  DO: {what: dissolved oxygen,\n       ‸\n')), 'unit', 'with');
  });

  test('values by the type of their key', () => {
    deepEqual(labels(inPlan(plan.replace('role: control', 'role: ‸'))), ['treatment', 'control']);
    has(labels(inPlan(plan.replace('what: water temperature', 'what: wat‸'))), 'water temperature', 'dissolved oxygen');
    deepEqual(labels(inPlan(plan.replace('unit: degC', 'unit: ‸'))), ['degC', 'degF']);
    has(labels(inPlan(plan.replace('Europe/Amsterdam', 'Eu‸'))), 'Europe/Amsterdam', 'Pacific/Auckland', 'UTC');
    deepEqual(labels(inPlan(plan.replace('like: mat', 'like: ‸'))), ['mat']);
    deepEqual(labels(inPlan(plan.replace('in: room', 'in: [ro‸]'))), ['mat', 'open', 'room']);
    deepEqual(labels(inPlan(plan.replace('quantity: DO', 'quantity: ‸'))), ['B', 'DO', 'P', 'T']);
    deepEqual(labels(inPlan(plan.replace('tanks: [mat, open]', 'tanks: [mat, ‸]'))), ['mat', 'open']);
    has(labels(inPlan(plan.replace('differs: [plants]', 'differs: [‸]'))), 'plants', 'plant-mass', 'equipment');
    has(labels(inPlan(`accepted: [‸]\n${plan}`)), 'below-resolution');
  });

  test('behind a number its units, the quantity\'s own first', () => {
    equal(labels(inPlan(plan.replace('at least: 4 mg/L', 'at least: 4 ‸')))[0], 'mg/L');
    has(labels(inPlan(plan.replace('water depth: 28 cm', 'water depth: 28 c‸'))), 'cm', 'mm', 'in');
    equal(labels(inPlan(plan.replace('accuracy: 0.2 degC', 'accuracy: 0.2 ‸')))[0], 'degC');
  });

  test('formulas of conditions and windows', () => {
    has(labels(inPlan(plan.replace('when: mat.DO < 3 mg/L', 'when: ma‸'))), 'mat.DO', 'open.T', 'abs', 'mat.plant-mass');
    has(labels(inPlan(plan.replace('light-off + 30 min..end', 'light-off + 30 min..‸'))), 'end', 'light-on', 'feeding', '22:30');
  });

  test('nothing in free text, in comments or in texts of several lines', () => {
    deepEqual(labels(inPlan(plan.replace('water lettuce', 'water let‸'))), []);
    deepEqual(labels(inPlan(`# a remark ‸\n${plan}`)), []);
    deepEqual(labels(inPlan(`hypothesis: |\n  The mat ‸\n${plan}`)), []);
  });

  test('in a quote and in a list', () => {
    const quoted = inPlan(plan.replace('role: control', 'role: ‸')).split('\n').map((line) => `> ${line}`).join('\n');
    deepEqual(labels(quoted), ['treatment', 'control']);
  });
});

suite('assist: completion in readings', () => {
  test('heads that are not used yet', () => {
    deepEqual(labels(inReadings('time  mat.DO ‸ open.T\n')), ['mat.T', 'mat.B', 'open.DO', 'open.B', 'room.P']);
    has(labels(inReadings('‸\n')), 'time', 'time  mat.DO  mat.T  mat.B  open.DO  open.T  open.B  room.P');
  });

  test('units in the brackets of a head', () => {
    deepEqual(labels(inReadings('time  mat.T[‸\n')).filter((each) => each.startsWith('deg')), ['degC', 'degF']);
  });

  test('words of a scale, the next planned time, nothing for numbers and remarks', () => {
    deepEqual(labels(inReadings(readings.replace('restless', 're‸'))), ['calm', 'restless', 'gasping']);
    deepEqual(labels(inReadings(`${readings}‸\n`)), ['23:30', '00:00', '00:30']);
    deepEqual(labels(inReadings(readings.replace('8.02', '‸'))), []);
    deepEqual(labels(inReadings(readings.replace('; one', '; o‸'))), []);
  });

  test('keys and columns of a data file', () => {
    has(labels(inReadings('from: probe.csv\n‸\n')), 'columns', 'time zone', 'sha256');
    deepEqual(labels(inReadings('from: probe.csv\ncolumns:\n  A: time\n  B: mat.DO\n  C: ‸\n')).slice(0, 3), ['time', 'mat.T', 'mat.B']);
    without(labels(inReadings('from: probe.csv\ncolumns:\n  A: time\n  B: mat.DO\n  C: ‸\n')), 'mat.DO');
    has(labels(inReadings('from: probe.csv\ncolumns:\n  A: time\n  C: ‸\n')), 'mat.DO', 'remark');
  });
});

suite('assist: completion in formulas', () => {
  test('in an open claim, before its brace closes', () => {
    const found = labels(inProse('It lost {2.9 % = ‸'));
    has(found, 'first-loss', 'mat.DO', 'percent-fall', 'treatment.DO', 'mats.DO');
    deepEqual(labels(inProse('It lost {2.9 % ‸')), []);
    deepEqual(labels(inProse('It lost 2.9 % ‸')), []);
  });

  test('what fits the operand comes alone or first', () => {
    deepEqual(labels(inProse('{? = volume(‸)}')), ['mat', 'open']);
    deepEqual(labels(inProse('{? = contrast(‸)}')), ['B', 'DO', 'P', 'T']);
    const windows = labels(inProse('{? = fall(mat.DO, ‸)}'));
    deepEqual(windows.slice(0, 4), ['baseline', 'dark', 'late', 'recovery']);
    has(windows, 'light-off', 'feeding', '22:30', 'time-of-steepest-fall');
    without(windows, 'mat.DO');
  });

  test('moments after `..`, the readings\' own times among them', () => {
    const found = labels(inProse('{? = fall(mat.DO, light-off..‸)}'));
    has(found, 'end', 'light-on', '22:30', '23:00');
    without(found, 'dark', 'mat.DO');
    deepEqual(labels(inProse('{? = at(mat.DO, 22:‸)}')), ['22:00', '22:30']);
  });

  test('after a point the quantities and facts of that tank', () => {
    deepEqual(labels(inProse('{? = last(open.‸)}')).filter((each) => !each.startsWith('open.')), []);
    has(labels(inProse('{? = mat.‸}')), 'mat.DO', 'mat.plant-mass');
    ok(taken(inProse('{? = last(mat.D‸)}'), 'mat.DO').includes('{? = last(mat.DO)}'));
  });

  test('options of the function, and units after `in`', () => {
    equal(labels(inProse('{? = steps(mat.DO, ev‸)}'))[0], 'every');
    deepEqual(labels(inProse('{? = mat.T in ‸}')), ['degC', 'degF']);
    has(labels(inProse('{? = last(mat.DO) ‸}')), 'in', 'and', 'or');
  });

  test('words of the scale after a comparison', () => {
    deepEqual(labels(inProse('{they were calm if any(mat.B == ‸)}')).slice(0, 3), ['calm', 'restless', 'gasping']);
  });

  test('a function is written with its parentheses and shows its entry', () => {
    ok(taken(inProse('{? = percent-f‸}'), 'percent-fall').includes('{? = percent-fall()}'));
    const entry = suggestions(inProse('{? = ‸}')).find((each) => each.label === 'percent-fall')!;
    ok(/percent-fall\(.*window\?/u.test(entry.documentation) && entry.documentation.includes('Gives: '), entry.documentation);
  });

  test('in a values line and in the moments of a figure', () => {
    has(labels(noteText({ values: 'x = ra‸\n' })), 'rate', 'mat.DO');
    deepEqual(labels(noteText({ values: 'ra‸\n' })), []);
    has(labels(inProse('```figure\nfrom: ‸\n```\n')), 'light-off', '22:30');
  });

  test('nothing inside strings and stated sources', () => {
    deepEqual(labels(inProse('{4 mg/L = stated "a ‸"}')), []);
  });
});

suite('assist: completion of whole forms', () => {
  test('forms of claims behind a brace, named results with their values', () => {
    const found = labels(inProse('It lost {‸}'));
    deepEqual(found.slice(0, 4), ['? = …', '… = …', '… if …', '… = stated "…"']);
    equal(found[4], '2.9 % = first-loss');
    ok(taken(inProse('It lost {‸}'), '2.9 % = first-loss').endsWith('It lost {2.9 % = first-loss}'));
    ok(taken(inProse('It lost {‸'), '2.9 % = first-loss').endsWith('It lost {2.9 % = first-loss}'));
    deepEqual(labels(inProse('A plain \\{‸')), []);
    deepEqual(labels(inProse('Code `{‸`')), []);
  });

  test('block words behind a fence, with a skeleton that closes it', () => {
    const marked = inProse('```‸');
    const found = labels(marked);
    deepEqual(found, ['readings', 'values', 'figure', 'summary', 'limits', 'methods', 'results']);
    ok(taken(marked, 'readings').endsWith('```readings\ntime  mat.DO  mat.T  mat.B  open.DO  open.T  open.B  room.P\n23:30  \n```'));
    ok(taken(inProse('```fi‸\n```\n'), 'figure').endsWith('```figure\n```\n'));
    ok(labels('# New\n\n```pro‸').includes('protocol'));
  });

  test('the skeleton of a plan is a plan that can be read', () => {
    const note = readNote(taken('# New\n\n```‸', 'protocol'));
    deepEqual(note.problems.filter((each) => each.severity === 'error').map((each) => [each.code, note.text.slice(each.range.start, each.range.end)]), []);
    deepEqual(note.protocol!.tanks.map((tank) => tank.id), ['mat', 'open']);
  });

  test('options of a figure and the readings to show', () => {
    deepEqual(labels(inProse('```figure\n‸\n```\n')), ['show', 'from', 'to', 'facets', 'uncertainty', 'title', 'caption', 'alt', 'spec']);
    has(labels(inProse('```figure\nshow: [mat.DO, ‸]\n```\n')), 'open.DO', 'DO', 'mat');
    has(labels(inProse('```figure\nshow: [saturation(‸)]\n```\n')), 'mat.DO', 'open.DO');
    deepEqual(labels(inProse('```figure\nfacets: ‸\n```\n')), ['tanks', 'quantities']);
    deepEqual(labels(inProse('```figure\nuncertainty: ‸\n```\n')), ['yes', 'no']);
    ok(suggestions(inProse('```figure\n‸\n```\n')).every((each) => each.documentation !== ''));
  });

  test('keys and values of a specification of one\'s own', () => {
    const spec = (marked: string) => labels(inProse(`\`\`\`figure\nspec:\n${marked}\n\`\`\`\n`));
    has(spec('  mark: line\n  ‸'), 'encoding', 'transform');
    without(spec('  mark: line\n  ‸'), 'mark', 'config', 'params', 'usermeta', 'data');
    has(spec('  mark: ‸'), 'line', 'boxplot');
    has(spec('  encoding:\n    ‸'), 'x', 'color');
    has(spec('  encoding:\n    x: {‸}'), 'field', 'aggregate');
    without(spec('  encoding:\n    x: {‸}'), 'condition', 'format', 'href');
    has(spec('  encoding:\n    x: {field: ‸}'), 'time', 'value', 'label');
  });

  test('options, rows and functions of a summary', () => {
    const summary = (marked: string) => labels(inProse(`\`\`\`summary\n${marked}\n\`\`\`\n`));
    deepEqual(summary('‸'), ['of', 'rows', 'show', 'from', 'to', 'caption']);
    has(summary('of: [‸]'), 'mat.DO', 'DO', 'open');
    deepEqual(summary('rows: ‸').slice(0, 3), ['phases', 'tanks', 'before-after light-off']);
    has(summary('rows: [‸]'), 'dark', 'light-off', '22:00');
    has(summary('rows: before-after ‸'), 'light-off');
    has(summary('of: DO\nrows: phases\nshow: [min, ‸]'), 'mean', 'change', 'slope', 'time-of-min');
    without(summary('of: DO\nrows: phases\nshow: [‸]'), 'first-below', 'steps', 'at');
    deepEqual(summary('of: DO\nrows: [22:00, 23:00]\nshow: [‸]'), ['at', 'interpolate']);
    ok(taken(inProse('```‸'), 'summary').includes('```summary\nof: [DO]\nrows: phases\nshow: [min, mean, max]\n```'));
  });
});

suite('assist: completion anywhere', () => {
  test('prose inside blocks and claims opens nothing while it is typed', () => {
    for (const [words, typed] of [['question: Does a', 'question: D‸oes a'], ['plants: water', 'plants: w‸ater'], ['step: Bring', 'step: B‸ring'], ['do: End', 'do: E‸nd'], ['name: Zwolle', 'name: Z‸wolle']] as const) {
      deepEqual(labels(inPlan(plan.replace(words, typed))), [], typed);
    }
    deepEqual(labels(inReadings(readings.replace('; one word', '; o‸ne word'))), []);
    for (const prose of ['{i‸t fell if first-loss > 0 %}', '{2 % = stated "l‸og"}', 'No claim h‸ere.', '`code w‸ord`']) deepEqual(labels(inProse(prose)), [], prose);
  });

  test('never throws, replaces within one line and before the cursor\'s end', () => {
    const text = noteText({ prose: 'It lost {2.9 % = first-loss}, {it fell if rate(mat.DO, dark) < 0 mg/L/h}.\n\n```figure\nshow: [mat.DO]\n```\n' });
    const note = readNote(text);
    fc.assert(fc.property(fc.nat(text.length), fc.string({ maxLength: 6 }), (offset, typed) => {
      const changed = { ...note, text: text.slice(0, offset) + typed + text.slice(offset) };
      const at = offset + typed.length;
      for (const each of complete(changed, at)) {
        ok(each.range.start <= at && each.range.end >= at && each.range.end <= changed.text.length, each.label);
        ok(!changed.text.slice(each.range.start, each.range.end).includes('\n'), each.label);
      }
    }), { numRuns: 300 });
  });
});
