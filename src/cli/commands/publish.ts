// `evenwater publish NOTE --to DIR`: one self-contained post, or none and the reasons.
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { publishPost } from '../../publish/post.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { readNoteFile, stemOf } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine } from '../places.ts';

export const publish: Command = {
  name: 'publish',
  usage: 'NOTE --to DIR',
  summary: 'Publish a note as one self-contained HTML post.',
  help: [
    'Writes DIR/<stem>.html: whole or not at all. Refuses while the note has an error; lists warnings and loose numbers.',
    'Exit 0 when the post was written, 1 when it was refused, 2 on wrong use or unreadable input.',
  ],
  options: { to: { type: 'string' } },
  async run({ positionals, options, json, output, version }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongUse('publish needs exactly one note.');
    if (typeof options.to !== 'string' || options.to === '') throw new WrongUse('publish needs --to DIR, the folder that the post goes into.');
    const { note, text } = await readNoteFile(name);
    const starts = lineStarts(text);
    const stem = stemOf(name);
    const refused = note.protocol === null || note.problems.some((each) => each.severity === 'error');
    const post = refused ? null : await publishPost(note, { stem, toolVersion: version });
    const found = [...note.problems, ...(post?.problems ?? [])];
    const listed = found.filter((each) => each.severity !== 'information').map((each) => problemJson(each, starts));
    const written: string[] = [];
    if (post && !post.problems.some((each) => each.severity === 'error')) {
      written.push(await writeWhole(options.to, `${stem}.html`, post.html));
    }
    if (json) printJson(output, { written, problems: listed });
    else {
      for (const each of listed) output.result(problemLine(name, each, output.colours));
      for (const each of written) output.result(`written: ${each}`);
      if (written.length === 0) {
        output.progress(note.protocol === null ? `"${name}" has no readable protocol block; there is nothing to publish.` : `"${name}" was not published: mend the errors first.`);
      }
    }
    return written.length > 0 ? exit.well : exit.problems;
  },
};

/** Writes a file whole or not at all: into a temporary file beside it, then renamed. */
async function writeWhole(folder: string, name: string, text: string): Promise<string> {
  const target = path.join(folder, name);
  const temporary = path.join(folder, `.${name}.${process.pid}.tmp`);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(temporary, text);
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined);
    throw new WrongUse(`"${target}" cannot be written (${(error as NodeJS.ErrnoException).code ?? String(error)}).`);
  }
  return target.split(path.sep).join('/');
}
