// `evenwater publish NOTE --to DIR`: a post in the form asked for, or none and the reasons.
import path from 'node:path';
import type { Problem } from '../../problems/problem.ts';
import { publishPost } from '../../publish/post.ts';
import { readPublished } from '../../publish/published.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { readNoteFile, stemOf, type NoteFile } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine } from '../places.ts';
import { writeWhole } from '../wholeFiles.ts';

interface Making { readonly file: NoteFile; readonly stem: string; readonly version: string; readonly published: string | undefined; readonly frontMatter: boolean }
interface Made { readonly files: readonly { readonly path: string; readonly content: string | Uint8Array }[]; readonly problems: readonly Problem[] }

const forms: Readonly<Record<string, (making: Making) => Promise<Made>>> = {
  async html(making) {
    const { html, problems } = await publishPost(making.file.note, postOptions(making));
    return { files: [{ path: `${making.stem}.html`, content: html }], problems };
  },
};

const postOptions = ({ file, stem, version, published }: Making) => ({
  stem, toolVersion: version, noteName: path.basename(file.name), noteBytes: file.bytes, ...(published === undefined ? {} : { published }),
});

export const publish: Command = {
  name: 'publish',
  usage: 'NOTE --to DIR',
  summary: 'Publish a note as one self-contained HTML post.',
  help: [
    'Writes DIR/<stem>.html, each file whole or not at all. Refuses while the note has an error; lists warnings and loose numbers.',
    `--as FORM     another form, may be given more than once: ${Object.keys(forms).join(', ')}.`,
    '--published T the time of publishing that the post prints (2026-04-13T10:00+03:00); without it the protocol\'s, or none.',
    'Exit 0 when the post was written, 1 when it was refused, 2 on wrong use or unreadable input.',
  ],
  options: { to: { type: 'string' }, as: { type: 'string', multiple: true }, published: { type: 'string' }, 'front-matter': { type: 'boolean' } },
  async run({ positionals, options, json, output, version }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongUse('publish needs exactly one note.');
    if (typeof options.to !== 'string' || options.to === '') throw new WrongUse('publish needs --to DIR, the folder that the post goes into.');
    const asked = Array.isArray(options['as']) ? options['as'].map(String) : ['html'];
    for (const each of asked) if (!Object.hasOwn(forms, each)) throw new WrongUse(`There is no form "${each}" of a post; there are ${Object.keys(forms).join(', ')}.`);
    const file = await readNoteFile(name);
    const { note, text } = file;
    const published = typeof options['published'] === 'string' ? readPublished(options['published'], note.protocol?.zone ?? { name: 'UTC', offsetAt: () => 0 }) : undefined;
    if (published === null) throw new WrongUse(`"${String(options['published'])}" is no time of publishing; write it like 2026-04-13T10:00+03:00.`);
    const starts = lineStarts(text);
    const refused = note.protocol === null || note.problems.some((each) => each.severity === 'error');
    const made: Made[] = [];
    if (!refused) for (const each of new Set(asked)) made.push(await forms[each]!({ file, stem: stemOf(name), version, published, frontMatter: options['front-matter'] === true }));
    const found = [...note.problems, ...made.flatMap((each) => each.problems)];
    const listed = found.filter((each) => each.severity !== 'information').map((each) => problemJson(each, starts));
    const written: string[] = [];
    if (!refused && !made.some((each) => each.problems.some((problem) => problem.severity === 'error'))) {
      for (const each of made.flatMap((one) => one.files)) written.push(await writeWhole(options.to, each.path, each.content));
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
