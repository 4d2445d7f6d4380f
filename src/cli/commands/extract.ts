// `evenwater extract POST.html --to DIR`: the note and the data files that a post carries, byte for byte.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { readEmbedded } from '../../publish/embed.ts';
import { faultSentence } from '../../publish/recheckWords.ts';
import { exit, printJson, wrongUse, type Command } from '../command.ts';
import { readPost, writeWhole } from '../wholeFiles.ts';

export const extract: Command = {
  name: 'extract',
  options: { to: { type: 'string' } },
  async run({ positionals, options, json, output, language, say }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw wrongUse('extract-needs-post');
    const folder = options.to;
    if (typeof folder !== 'string' || folder === '') throw wrongUse('extract-needs-folder');
    const { source, faults } = readEmbedded(await readPost(name));
    if (source.files.length === 0 && faults.every((each) => each.kind === 'no-note')) throw wrongUse('carries-no-note', { name });
    const intact = source.files.filter((file) => !faults.some((fault) => fault.path === file.path));
    for (const file of intact) {
      const there = await readFile(path.join(folder, ...file.path.split('/'))).catch(() => null);
      if (there && !there.equals(file.bytes)) throw wrongUse('exists-and-differs', { name: path.join(folder, file.path) });
    }
    const written: string[] = [];
    for (const file of intact) written.push(await writeWhole(folder, file.path, file.bytes));
    if (json) printJson(output, { written, files: intact.map((file) => ({ path: file.path, role: file.role, sha256: file.sha256, bytes: file.bytes.length })), faults: faults.map((each) => ({ kind: each.kind, path: each.path, message: faultSentence(each) })) });
    else {
      for (const each of written) output.result(say('written', { name: each }));
      for (const each of faults) output.result(say('fault-in-post', { name, fault: faultSentence(each, language) }));
    }
    return faults.length === 0 ? exit.well : exit.problems;
  },
};
