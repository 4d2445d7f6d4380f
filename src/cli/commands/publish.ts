// `evenwater publish NOTE --to DIR`: a post in the form asked for, or none and the reasons.
import path from 'node:path';
import type { ProblemCode } from '../../problems/codes.ts';
import type { Problem } from '../../problems/problem.ts';
import { publishCard } from '../../publish/card.ts';
import { publishData } from '../../publish/data/dataPackage.ts';
import { publishMarkdown } from '../../publish/markdown/markdownPost.ts';
import { publishNarration } from '../../publish/narration.ts';
import { planSheet } from '../../publish/planSheet.ts';
import { publishPost } from '../../publish/post.ts';
import { readPublished } from '../../publish/published.ts';
import { said, type Say } from '../../words/commandLine.ts';
import { exit, printJson, wrongUse, type Command } from '../command.ts';
import { readNoteFile, stemOf, type NoteFile } from '../noteFiles.ts';
import { lineStarts, placeOf, problemJson, problemLine, type ProblemJson } from '../places.ts';
import { writeWhole } from '../wholeFiles.ts';

interface Making { readonly file: NoteFile; readonly stem: string; readonly version: string; readonly published: string | undefined; readonly frontMatter: boolean }
interface Made {
  readonly files: readonly { readonly path: string; readonly content: string | Uint8Array }[];
  readonly problems: readonly Problem[];
  /** Reasons for refusing that no problem of the note tells. */
  readonly faults?: readonly Say[];
}

const answerFault = (fault: string): Say => said('answer-fault', { fault });

/** What a plan may still hold: it is printed before anything is read. Any other form of a post says so. */
const unfinished: ReadonlySet<string> = new Set<ProblemCode>(['nothing-read-yet', 'template-text']);

const forms: Readonly<Record<string, (making: Making) => Promise<Made>>> = {
  async html(making) {
    const { html, problems } = await publishPost(making.file.note, postOptions(making));
    return { files: [{ path: `${making.stem}.html`, content: html }], problems };
  },
  async markdown(making) {
    return { files: await publishMarkdown(making.file.note, { ...postOptions(making), frontMatter: making.frontMatter }), problems: [] };
  },
  async card(making) {
    const { files, faults } = await publishCard(making.file.note, postOptions(making));
    return { files, problems: [], faults: faults.map(answerFault) };
  },
  async data(making) {
    const files = await publishData(making.file.note, postOptions(making));
    if (files === null) throw wrongUse('data-needs-time');
    return { files, problems: [] };
  },
  async narration(making) {
    const { text, faults } = publishNarration(making.file.note, making.stem);
    return { files: [{ path: `${making.stem}-narration.txt`, content: text }], problems: [], faults: faults.map(answerFault) };
  },
  plan(making) {
    const html = planSheet(making.file.note, { stem: making.stem, toolVersion: making.version });
    return Promise.resolve(html === null ? { files: [], problems: [], faults: [said('plan-without-tanks')] }
      : { files: [{ path: `${making.stem}-plan.html`, content: html }], problems: [] });
  },
};

const postOptions = ({ file, stem, version, published }: Making) => ({
  stem, toolVersion: version, noteName: path.basename(file.name), noteBytes: file.bytes, ...(published === undefined ? {} : { published }),
});

/** A reason for refusing, at the protocol's answer. */
function answerProblem(message: string, { note }: NoteFile, starts: readonly number[]): ProblemJson {
  return { code: 'answer-differs', severity: 'error', ...placeOf(note.protocol?.answer?.range ?? { start: 0, end: 0 }, starts), message };
}

export const publish: Command = {
  name: 'publish',
  options: { to: { type: 'string' }, as: { type: 'string', multiple: true }, published: { type: 'string' }, 'front-matter': { type: 'boolean' }, plan: { type: 'boolean' } },
  async run({ positionals, options, json, output, version, language, say }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw wrongUse('publish-needs-note');
    if (typeof options.to !== 'string' || options.to === '') throw wrongUse('publish-needs-folder');
    const asked = [...(Array.isArray(options['as']) ? options['as'].map(String) : options['plan'] === true ? [] : ['html']), ...(options['plan'] === true ? ['plan'] : [])];
    for (const each of asked) if (!Object.hasOwn(forms, each)) throw wrongUse('no-form', { form: each, forms: Object.keys(forms) });
    const file = await readNoteFile(name);
    const { note, text } = file;
    const published = typeof options['published'] === 'string' ? readPublished(options['published'], note.protocol?.zone ?? { name: 'UTC', offsetAt: () => 0 }) : undefined;
    if (published === null) throw wrongUse('no-time-of-publishing', { time: String(options['published']) });
    const starts = lineStarts(text);
    const refused = note.protocol === null || note.problems.some((each) => each.severity === 'error');
    const made: Made[] = [];
    if (!refused) for (const each of new Set(asked)) made.push(await forms[each]!({ file, stem: stemOf(name), version, published, frontMatter: options['front-matter'] === true }));
    const faults = made.flatMap((each) => each.faults ?? []).map((each) => each(language));
    const found = [...note.problems, ...made.flatMap((each) => each.problems)];
    const onlyPlan = asked.every((form) => form === 'plan');
    const listed = found.filter((each) => (unfinished.has(each.code) ? !onlyPlan : each.severity !== 'information')).map((each) => problemJson(each, starts, language));
    const written: string[] = [];
    if (!refused && faults.length === 0 && !made.some((each) => each.problems.some((problem) => problem.severity === 'error'))) {
      for (const each of made.flatMap((one) => one.files)) written.push(await writeWhole(options.to, each.path, each.content));
    }
    if (json) printJson(output, { written, problems: [...listed, ...faults.map((message) => answerProblem(message, file, starts))] });
    else {
      for (const each of listed) output.result(problemLine(name, each, output.colours));
      for (const message of faults) output.result(problemLine(name, answerProblem(message, file, starts), output.colours));
      for (const each of written) output.result(say('written', { name: each }));
      if (written.length === 0) {
        output.progress(say(note.protocol === null ? 'no-protocol-to-publish' : 'not-published', { name }));
      }
    }
    return written.length > 0 ? exit.well : exit.problems;
  },
};
