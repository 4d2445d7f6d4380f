// A folder that is not trusted: notes are read and checked, nothing is written.
import * as vscode from 'vscode';
import { equal, match, ok } from '../assert.ts';
import { find, fixture, hoverText, open, until, withCode } from './support.ts';

suite('without trust', () => {
  test('the folder is not trusted', () => {
    equal(vscode.workspace.isTrusted, false);
  });

  test('a note is read, checked and explained', async () => {
    const note = await open('night.tank.md');
    ok(await until('the problem of the unfilled claim', () => withCode(note, 'claim-unfilled')));
    match(await hoverText(note, find(note, '{0.24 mg/L = fall(', '0.24')), /Computed, and the text matches/);
    equal((await vscode.commands.executeCommand<{ claims: number }>('evenwater.check', note.uri)).claims, 5);
  });

  test('publishing waits for trust and writes nothing', async () => {
    const result = await vscode.commands.executeCommand<{ refused?: string }>('evenwater.publish', fixture('night.tank.md'));
    equal(result.refused, 'untrusted');
    const files = (await vscode.workspace.fs.readDirectory(fixture('.'))).map(([name]) => name);
    ok(!files.some((name) => name.endsWith('.html') || name.endsWith('.partial')), files.join(' '));
  });
});
