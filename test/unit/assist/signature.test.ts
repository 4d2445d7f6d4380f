// Signature help: the function around the cursor and the operand that is being written.
import { deepEqual, equal } from 'node:assert/strict';
import { signatureHelp } from '../../../src/assist/signatureHelp.ts';
import { noteAt, noteText, plan } from './support.ts';

const help = (formula: string) => { const { note, offset } = noteAt(noteText({ prose: `{? = ${formula}` })); return signatureHelp(note, offset); };
const active = (formula: string): string | null => {
  const found = help(formula);
  const line = found?.signatures[found.activeSignature];
  const parameter = line?.parameters[found!.activeParameter];
  return line && parameter ? line.label.slice(...parameter.label) : null;
};

suite('assist: signature help', () => {
  test('the operand under the cursor, with its words from the catalogue', () => {
    equal(active('fall(‸'), 'series');
    equal(active('fall(mat.DO, ‸)'), 'window?');
    equal(active('fall(mat.DO, light-off..22:30)‸'), null);
    equal(help('fall(‸')!.signatures[0]!.label, 'fall(series, window?)');
  });
  test('the innermost call, and an option by its name', () => {
    equal(active('abs(fall(mat.DO, ‸))'), 'window?');
    equal(active('steps(mat.DO, every 1 h‸)'), 'every …?');
  });
  test('the signature that has an operand there', () => {
    const found = help('solubility(mat.T, ‸')!;
    equal(found.signatures[found.activeSignature]!.label.includes(','), true);
  });
  test('in conditions of the plan and in values lines', () => {
    const inPlan = noteAt(noteText({ plan: plan.replace('abs(mat.T - open.T)', 'abs(‸mat.T - open.T)') }));
    equal(signatureHelp(inPlan.note, inPlan.offset)!.signatures[0]!.label.startsWith('abs('), true);
    const inValues = noteAt(noteText({ values: 'x = rate(mat.DO, ‸\n' }));
    deepEqual(signatureHelp(inValues.note, inValues.offset)!.activeParameter, 1);
  });
  test('nothing in prose and outside calls', () => {
    equal(help('mat.DO‸'), null);
    const prose = noteAt(noteText({ prose: 'A fall (‸' }));
    equal(signatureHelp(prose.note, prose.offset), null);
  });
});
