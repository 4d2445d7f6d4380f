// `evenwater recheck POST.html`: is every number of a post what its own note and data give?
import { recheckPost } from '../../publish/recheck.ts';
import { differenceNoun, differenceSentence, faultSentence } from '../../publish/recheckWords.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { lineStarts, placeOf, problemJson } from '../places.ts';
import { readPost } from '../wholeFiles.ts';

export const recheck: Command = {
  name: 'recheck',
  usage: 'POST',
  summary: 'Recompute every number of a post from the note and data inside it.',
  help: [
    'Takes note and data out of POST.html, verifies their hashes, reads and computes everything again and compares the',
    'whole page: claims, tables, generated sentences, drawings, and the values and formulas behind the numbers.',
    'A post made with another version of evenwater is said first; then numbers, values and formulas are judged, wording and layout are not.',
    'It shows that the page agrees with the data it carries, not who wrote them.',
    'Exit 0 when all agree, 1 with a line a difference, 2 on wrong use or unreadable input.',
  ],
  options: {},
  async run({ positionals, json, output, version }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw new WrongUse('recheck needs exactly one post: evenwater recheck POST.html.');
    const html = await readPost(name);
    const report = await recheckPost(html, version);
    if (report.files.length === 0 && report.madeWith === '') throw new WrongUse(`"${name}" carries no note; it was not made by evenwater publish.`);
    const starts = lineStarts(html);
    const noteErrors = report.note ? report.note.problems.filter((each) => each.severity === 'error').map((each) => problemJson(each, lineStarts(report.note!.text))) : [];
    const differences = report.differences.map((each) => ({ kind: each.kind, ...placeOf(each.range, starts), formula: each.formula, printed: each.printed, computed: each.computed }));
    const faults = report.faults.map((each) => ({ kind: each.kind, path: each.path, message: faultSentence(each) }));
    if (json) {
      printJson(output, {
        post: name, holds: report.holds, madeWith: report.madeWith, version, sameVersion: report.sameVersion, published: report.published,
        files: report.files.map((file) => ({ path: file.path, role: file.role, sha256: file.sha256, bytes: file.bytes.length })),
        faults, claims: report.claims, values: report.values, differences, noteErrors, unjudged: report.unjudged,
      });
    } else {
      if (!report.sameVersion) output.result(`${name}: made with Evenwater ${report.madeWith === '' ? '(no version stated)' : report.madeWith}, rechecked with ${version}: numbers are judged, wording and layout are not.`);
      for (const each of faults) output.result(`${name}: error: ${each.message}`);
      for (const each of noteErrors) output.result(`${name}: error in the note inside, line ${each.line}, column ${each.column}: ${each.code}: ${each.message}`);
      for (const each of differences) output.result(`${name}:${each.line}:${each.column}: error ${differenceNoun(each.kind)} differs: ${differenceSentence(each)}`);
      if (report.unjudged > 0) output.progress(`${report.unjudged} differences of wording or layout were not judged.`);
      output.progress(report.holds ? `${name}: ${report.claims} claims and ${report.values} computed values agree with the note and data inside.`
        : `${name}: does not agree with the note and data inside (${differences.length} ${differences.length === 1 ? 'difference' : 'differences'}).`);
    }
    return report.holds ? exit.well : exit.problems;
  },
};
