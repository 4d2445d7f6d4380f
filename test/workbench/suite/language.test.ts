// The language's help in a real editor: completion, signatures, definitions, references, rename, folding, selections, links, colours.
import * as vscode from 'vscode';
import { deepEqual, equal, match, ok } from '../assert.ts';
import { find, open, replace, revert, until } from './support.ts';

suite('language', () => {
  let note: vscode.TextDocument;
  suiteSetup(async () => { note = await open('night.tank.md'); });
  teardown(async () => { await revert(note); });

  const ask = <T>(command: string, ...args: unknown[]): Thenable<T> => vscode.commands.executeCommand<T>(command, note.uri, ...args);
  const text = (range: vscode.Range) => note.getText(range);
  const suggested = async (position: vscode.Position): Promise<vscode.CompletionItem[]> => (await ask<vscode.CompletionList>('vscode.executeCompletionItemProvider', position)).items;
  const label = (item: vscode.CompletionItem) => (typeof item.label === 'string' ? item.label : item.label.label);

  test('a claim that is being typed gets the names of the note', async () => {
    await replace(note, 'The end.\n', 'It fell by {? = fall(mat.D\n');
    const items = await suggested(find(note, '{? = fall(mat.D').end);
    const series = items.find((item) => label(item) === 'mat.DO');
    ok(series, `mat.DO is not suggested among ${items.slice(0, 20).map(label).join(', ')}`);
    equal(text(series.range as vscode.Range), 'mat.D');
  });

  test('the plan gets keys and values of the schema, with their words', async () => {
    await replace(note, '    plants: none\n', '    plants: none\n    \n');
    const keys = await suggested(find(note, '    plants: none\n    ').end);
    const volume = keys.find((item) => label(item) === 'volume');
    ok(volume, `volume is not suggested among ${keys.slice(0, 20).map(label).join(', ')}`);
    match((volume.documentation as vscode.MarkdownString).value, /Volume of water/);
    const roles = await suggested(find(note, 'role: control', 'control').start);
    deepEqual(roles.map(label).filter((each) => each === 'treatment' || each === 'control').sort(), ['control', 'treatment']);
  });

  test('signature help names the operand', async () => {
    const help = await ask<vscode.SignatureHelp>('vscode.executeSignatureHelpProvider', find(note, 'fall(mat.DO, light-off', 'fall(mat.DO, ').end, ',');
    match(help.signatures[0]!.label, /fall\(series, window\?\)/);
    equal(help.activeParameter, 1);
  });

  test('a head and a claim lead to the plan', async () => {
    const tank = find(note, '  mat:\n', 'mat');
    for (const use of [find(note, 'time   mat.DO', 'mat'), find(note, 'rate(mat.DO', 'mat')]) {
      const found = await ask<vscode.LocationLink[]>('vscode.executeDefinitionProvider', use.start.translate(0, 1));
      ok(found.some((link) => link.targetRange?.isEqual(tank)), 'the definition is another place');
    }
  });

  test('references and highlights are the same places', async () => {
    const at = find(note, 'first-loss = ', 'first-loss').start;
    const places = await ask<vscode.Location[]>('vscode.executeReferenceProvider', at);
    deepEqual(places.map((each) => text(each.range)), ['first-loss', 'first-loss']);
    const marks = await ask<vscode.DocumentHighlight[]>('vscode.executeDocumentHighlights', at);
    deepEqual(marks.map((each) => each.kind).sort(), [vscode.DocumentHighlightKind.Read, vscode.DocumentHighlightKind.Write]);
  });

  test('rename changes every place at once', async () => {
    const edit = await ask<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', find(note, '  open:\n', 'open').start, 'clear');
    ok(await vscode.workspace.applyEdit(edit));
    const after = note.getText();
    ok(after.includes('\n  clear:\n') && after.includes('clear.DO') && after.includes('show: [mat.DO, clear.DO]') && after.includes('abs(mat.T - clear.T)'), after);
    ok(!/open\.(DO|T)\b(?! misread)/.test(after.replace('; open.DO misread', '')), 'a place was forgotten');
    ok(after.includes('open-surface tank'), 'a word of prose was renamed');
  });

  test('rename refuses words of the language, with the reason', async () => {
    const refused = await ask<unknown>('vscode.prepareRename', find(note, 'light-off..22:30', 'light-off').start).then(() => null, (error: unknown) => String(error));
    match(String(refused), /light-off.*keeps its name/);
  });

  test('blocks and keys of the plan fold', async () => {
    const folds = await ask<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider');
    const starts = folds.map((fold) => fold.start);
    for (const part of ['```protocol', 'tanks:\n', '```readings']) ok(starts.includes(find(note, part).start.line), `${part} does not fold`);
  });

  test('a selection grows from the cell to the row', async () => {
    const [range] = await ask<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', [find(note, '22:30    8.02', '8.02').start.translate(0, 1)]);
    const grown: string[] = [];
    for (let each: vscode.SelectionRange | undefined = range; each; each = each.parent) grown.push(text(each.range));
    ok(grown.includes('8.02') && grown.some((each) => each.startsWith('22:30') && each.endsWith('misread')), grown.slice(0, 6).join(' | '));
  });

  test('the path of a data file is a link to it', async () => {
    const fromFile = await open('from-file.tank.md');
    const links = await until('the link', async () => {
      const all = await vscode.commands.executeCommand<vscode.DocumentLink[]>('vscode.executeLinkProvider', fromFile.uri, 20);
      return all.find((link) => fromFile.getText(link.range) === 'probe.csv');
    });
    ok(links.target?.path.endsWith('/probe.csv'), 'the link has another target');
    await vscode.window.showTextDocument(note);
  });

  test('names have colours by meaning', async () => {
    const legend = await until('the legend', async () => ask<vscode.SemanticTokensLegend>('vscode.provideDocumentSemanticTokensLegend'));
    ok(legend.tokenTypes.includes('tank') && legend.tokenTypes.includes('quantity'));
    const { data } = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens');
    let line = 0;
    let character = 0;
    const found = new Set<string>();
    for (let index = 0; index < data.length; index += 5) {
      character = data[index] === 0 ? character + data[index + 1]! : data[index + 1]!;
      line += data[index]!;
      found.add(`${note.getText(new vscode.Range(line, character, line, character + data[index + 2]!))} ${legend.tokenTypes[data[index + 3]!]}`);
    }
    for (const wanted of ['mat tank', 'DO quantity', 'percent-fall function', 'first-loss result', 'light-off moment']) ok(found.has(wanted), wanted);
  });

  test('the note is among the symbols of the workspace, by its question', async () => {
    const found = await vscode.commands.executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'overnight oxygen minimum');
    ok(found.some((symbol) => symbol.name === 'One night under a floating mat'), found.map((symbol) => symbol.name).join(', '));
  });

  test('plain Markdown gets none of it', async () => {
    const plain = await open('plain.md');
    const items = await vscode.commands.executeCommand<vscode.CompletionList>('vscode.executeCompletionItemProvider', plain.uri, new vscode.Position(0, 0));
    // Words of other open files come from the editor itself, as plain text.
    const ours = items.items.filter((item) => item.kind !== vscode.CompletionItemKind.Text && ['protocol', 'readings', '? = …'].includes(label(item)));
    deepEqual(ours.map(label), []);
    equal(await vscode.commands.executeCommand<vscode.SemanticTokens | undefined>('vscode.provideDocumentSemanticTokens', plain.uri).then((found) => found?.data.length ?? 0, () => 0), 0);
    await vscode.window.showTextDocument(note);
  });
});
