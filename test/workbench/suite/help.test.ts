// Help while reading: hover, the lines above blocks, values inside sentences, the outline.
import * as vscode from 'vscode';
import { deepEqual, equal, match, ok } from '../assert.ts';
import { find, hints, hoverText, lenses, open, replace, revert, until } from './support.ts';

suite('help', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  teardown(async () => { await revert(note); });

  test('hover on a claim shows value, formula and working with its readings', async () => {
    const text = await hoverText(note, find(note, '{0.24 mg/L = fall(', '0.24'));
    match(text, /Computed, and the text matches/);
    match(text, /0\.24\s*(?:&nbsp;)?\s*mg\/L/);
    match(text, /fall\(mat\.DO, light-off\.\.22:30\)/);
    match(text, /8\.26\]\(/, 'the readings are not linked:');
    ok(!text.includes('&nbsp;'), 'a long line would be broken inside a word');
  });

  test('hover on a condition says that it was checked, and that this proves no cause', async () => {
    match(await hoverText(note, find(note, '{it fell faster', 'fell')), /Condition checked: it is true.*does\s?(?:&nbsp;)?not\s?(?:&nbsp;)?prove/s);
  });

  test('hover on a stated claim names its source', async () => {
    match((await hoverText(note, find(note, '{2 times a day', 'times'))).replaceAll('&nbsp;', ' '), /Stated, not computed.*feeding log of the test room/s);
  });

  test('hover on a reading tells the step since the one above, and a correction', async () => {
    const text = (await hoverText(note, find(note, '22:30    8.02', '8.02'))).replaceAll('&nbsp;', ' ').replaceAll('\\', '');
    match(text, /dissolved oxygen, floating-mat tank/);
    match(text, /[-−]0\.24 mg\/L since the reading above/);
    match((await hoverText(note, find(note, '8.28->8.26'))).replaceAll('&nbsp;', ' ').replaceAll('\\', ''), /Corrected; before: 8\.28/);
  });

  test('hover on a function shows its entry of the catalogue', async () => {
    match(await hoverText(note, find(note, 'first-loss = percent-fall(', 'percent-fall')), /percent-fall\(/);
  });

  test('hover on a tank shows its water volume', async () => {
    match((await hoverText(note, find(note, '  mat:\n', 'mat'))).replaceAll('&nbsp;', ' '), /Water: 42(\.0)? L/);
  });

  test('hover on a key of the plan tells what a key of the plan means', async () => {
    match((await hoverText(note, find(note, '  light off:', 'light off'))).replaceAll('&nbsp;', ' '), /lamps go off.*light off: 22:00/s);
  });

  test('the plan and the readings have a line above them', async () => {
    const found = await until('CodeLens', async () => { const all = await lenses(note); return all.length >= 3 && all; });
    const at = (text: string) => found.filter((lens) => lens.line === find(note, text).start.line).map((lens) => lens.title);
    deepEqual(at('```protocol'), ['Plan: no problems', '3 claims match, 1 to fill in']);
    deepEqual(at('```readings'), ['8 of 9 slots read · next 00:00']);
  });

  test('the line above the plan follows the claims', async () => {
    await replace(note, '{2.9 % = first-loss}', '{3.9 % = first-loss}');
    await until('the changed CodeLens', async () => (await lenses(note)).some((lens) => lens.title === '2 claims match, 1 does not, 1 to fill in'));
  });

  test('an unfilled claim shows its value at the end of its line', async () => {
    const [hint, ...others] = await until('the value', async () => { const all = await hints(note); return all.length > 0 && all; });
    equal(others.length, 0);
    equal(String(hint!.label), '= 7.66 mg/L');
    ok(hint!.position.isEqual(find(note, 'The last reading under the mat was {? = last(mat.DO)}.').end), 'the value does not stand at the end of the line');
  });

  test('steps stand beside readings for whoever asks for them', async () => {
    const settings = vscode.workspace.getConfiguration('evenwater', note.uri);
    await settings.update('stepsBesideReadings', true, vscode.ConfigurationTarget.Workspace);
    try {
      const all = await until('the steps', async () => { const found = await hints(note); return found.length > 5 && found; });
      const row = all.find((hint) => hint.position.line === find(note, '22:30    8.02').start.line);
      equal(String(row?.label).replaceAll('\u00a0', ' '), 'Δ -0.24   0.0  -0.03   0.0');
    } finally {
      await settings.update('stepsBesideReadings', undefined, vscode.ConfigurationTarget.Workspace);
    }
    await until('the steps to go', async () => (await hints(note)).length === 1);
  });

  test('the outline goes from the experiment by days and blocks to readings', async () => {
    const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', note.uri);
    const all = (list: readonly vscode.DocumentSymbol[]): vscode.DocumentSymbol[] => list.flatMap((symbol) => [symbol, ...all(symbol.children)]);
    const experiment = symbols.find((symbol) => symbol.kind === vscode.SymbolKind.Module);
    equal(experiment?.name, 'One night under a floating mat');
    const named = (name: string) => all(experiment!.children).find((symbol) => symbol.name === name);
    deepEqual(named('protocol')?.children.map((symbol) => symbol.name), ['mat', 'open', 'DO', 'T']);
    const day = named('2026-03-14');
    equal(day?.children[0]?.name, 'readings');
    deepEqual(day?.children[0]?.children.map((symbol) => symbol.name), ['20:00', '20:30', '21:00', '21:30', '22:00', '22:30', '23:00', '23:30']);
    equal(day?.children[0]?.children[5]?.detail, '8.02  24.8  8.28->8.26  24.6');
    deepEqual(named('values')?.children.map((symbol) => symbol.name), ['first-loss']);
  });
});
