// `evenwater extract POST.html --to DIR`: the note and the data files that a post carries, byte for byte.
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { readEmbedded } from '../../publish/embed.ts';
import { faultSentence } from '../../publish/recheckWords.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { readPost, writeWhole } from '../wholeFiles.ts';

export const extract: Command = {
  name: 'extract',
  usage: 'POST --to DIR',
  summary: 'Take the note and its data out of a post, byte for byte.',
  help: [
    'Writes the note and every data file that POST.html carries into DIR, in the folders they came from.',
    'A file that stands there already and differs is left alone, and nothing is written.',
    'Exit 0 when all were written and their hashes agree, 1 when something in the post does not agree, 2 on wrong use or unreadable input.',
  ],
  options: { to: { type: 'string' } },
  async run({ positionals, options, json, output }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongUse('extract needs exactly one post: evenwater extract POST.html --to DIR.');
    const folder = options.to;
    if (typeof folder !== 'string' || folder === '') throw new WrongUse('extract needs --to DIR, the folder that note and data go into.');
    const { source, faults } = readEmbedded(await readPost(name));
    if (source.files.length === 0 && faults.every((each) => each.kind === 'no-note')) throw new WrongUse(`"${name}" carries no note; it was not made by evenwater publish.`);
    const intact = source.files.filter((file) => !faults.some((fault) => fault.path === file.path));
    for (const file of intact) {
      const there = await readFile(path.join(folder, ...file.path.split('/'))).catch(() => null);
      if (there && !there.equals(file.bytes)) throw new WrongUse(`"${path.join(folder, file.path)}" exists and differs from the file in the post; choose another folder.`);
    }
    const written: string[] = [];
    for (const file of intact) written.push(await writeWhole(folder, file.path, file.bytes));
    if (json) printJson(output, { written, files: intact.map((file) => ({ path: file.path, role: file.role, sha256: file.sha256, bytes: file.bytes.length })), faults: faults.map((each) => ({ kind: each.kind, path: each.path, message: faultSentence(each) })) });
    else {
      for (const each of written) output.result(`written: ${each}`);
      for (const each of faults) output.result(`${name}: error: ${faultSentence(each)}`);
    }
    return faults.length === 0 ? exit.well : exit.problems;
  },
};
