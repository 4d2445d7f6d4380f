// `evenwater recheck POST.html`: is every number of a post what its own note and data give?
import { recheckPost } from '../../publish/recheck.ts';
import { differenceNoun, differenceSentence, faultSentence } from '../../publish/recheckWords.ts';
import { exit, printJson, wrongUse, type Command } from '../command.ts';
import { lineStarts, placeOf, problemJson } from '../places.ts';
import { readPost } from '../wholeFiles.ts';

export const recheck: Command = {
  name: 'recheck',
  options: {},
  async run({ positionals, json, output, version, language, say }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw wrongUse('recheck-needs');
    const html = await readPost(name);
    const report = await recheckPost(html, version);
    if (report.files.length === 0 && report.madeWith === '') throw wrongUse('carries-no-note', { name });
    const starts = lineStarts(html);
    const noteErrors = report.note ? report.note.problems.filter((each) => each.severity === 'error').map((each) => problemJson(each, lineStarts(report.note!.text), language)) : [];
    const differences = report.differences.map((each) => ({ kind: each.kind, ...placeOf(each.range, starts), formula: each.formula, printed: each.printed, computed: each.computed }));
    const faults = report.faults.map((each) => ({ kind: each.kind, path: each.path, message: faultSentence(each, language) }));
    if (json) {
      printJson(output, {
        post: name, holds: report.holds, madeWith: report.madeWith, version, sameVersion: report.sameVersion, published: report.published,
        files: report.files.map((file) => ({ path: file.path, role: file.role, sha256: file.sha256, bytes: file.bytes.length })),
        faults, claims: report.claims, values: report.values, differences, noteErrors, unjudged: report.unjudged,
      });
    } else {
      if (!report.sameVersion) output.result(say('other-version', { name, madeWith: report.madeWith, version }));
      for (const each of faults) output.result(say('fault-in-post', { name, fault: each.message }));
      for (const each of noteErrors) output.result(say('error-inside', { name, line: each.line, column: each.column, code: each.code, message: each.message }));
      for (const each of differences) output.result(say('differs', { place: `${name}:${each.line}:${each.column}`, noun: differenceNoun(each.kind, language), difference: differenceSentence(each, language) }));
      if (report.unjudged > 0) output.progress(say('unjudged', { count: report.unjudged }));
      output.progress(report.holds ? say('holds', { name, claims: report.claims, values: report.values }) : say('does-not-hold', { name, count: differences.length }));
    }
    return report.holds ? exit.well : exit.problems;
  },
};
