// Writes docs/reference.md from the tables that the tool itself works by: blocks, claims, protocol keys, functions, units,
// measured quantities, problems; and the codes that the manifest's setting for severities may name. `--check` compares instead of
// writing. Run with: npm run reference
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { functionGroups, functions, signatureLabel } from '../src/formula/catalogue.ts';
import { problemCodes, type ProblemCode } from '../src/problems/codes.ts';
import { exampleNote as nightNote } from '../src/formula/catalogue/exampleNote.ts';
import { exampleNote } from '../src/problems/examples.ts';
import { protocolSchema, type SchemaKey } from '../src/protocol/schema.ts';
import { measures } from '../src/quantities/measures.ts';
import { readingFields, specWords } from '../src/experiment/chartSpec.ts';
import { figureKeys } from '../src/experiment/figureBlock.ts';
import { readNote } from '../src/experiment/readNote.ts';
import { momentFunctions, summaryKeys, windowFunctions } from '../src/experiment/summaryBlock.ts';
import { assistWords } from '../src/words/assist.ts';
import { problemSentence } from '../src/words/words.ts';

const blockOptions: readonly (readonly [string, readonly string[]])[] = [['figure', figureKeys], ['summary', summaryKeys], ['limits', ['for']], ['methods', ['checklist']]];
const help: Readonly<Record<string, string>> = assistWords('en').optionHelp;
const specRows: readonly (readonly [string, readonly string[]])[] = [
  ['keys', specWords.top], ['`mark`', specWords.values.mark], ['channels of `encoding`', specWords.channels], ['of a channel', specWords.channel], ['`transform`', specWords.transform],
  ['`aggregate`, `op`', specWords.values.aggregate], ['`timeUnit`', specWords.values.timeUnit], ['fields', Object.keys(readingFields)],
];

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const code = (text: string): string => (text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``);
const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\s*\n\s*/g, ' ').trim();
const oneLine = (text: string): string => text.trim().split('\n').map((line) => line.trim()).join(' ⏎ ');

const groupTitles: Readonly<Record<string, string>> = {
  picking: 'Picking readings', summary: 'Summaries', change: 'Change', levels: 'Levels', comparison: 'Comparison', oxygen: 'Oxygen',
  water: 'Water', plan: 'The plan', arithmetic: 'Arithmetic',
};

function protocolRows(keys: readonly SchemaKey[], prefix: string): string[] {
  return keys.flatMap((key) => {
    const name = prefix === '' ? key.key : `${prefix} › ${key.key}`;
    const values = key.values ? ` (${key.values.join(', ')})` : '';
    const list = key.list === 'many' ? 'list of ' : key.list === 'one-or-many' ? 'one or a list of ' : '';
    const row = `| ${code(name)} | ${list}${key.type === 'named' ? 'named entries' : key.type}${values} | ${cell(key.description)} | ${key.type === 'map' || key.type === 'named' ? '' : code(oneLine(key.example))} |`;
    return [row, ...protocolRows(key.keys ?? [], name), ...(key.entry ? protocolRows([key.entry], name) : [])];
  });
}

function problemSection(name: ProblemCode): string {
  const entry = problemCodes[name];
  const { text, files } = exampleNote(entry.example);
  const found = readNote(text, files, undefined, { fileIsNote: true });
  const raised = [...found.problems, ...found.accepted].find((each) => each.code === name);
  const part = entry.example.note ?? entry.example.protocol ?? entry.example.addToProtocol ?? entry.example.readings ?? entry.example.values ?? entry.example.prose ?? '';
  const shown = raised ? text.slice(raised.range.start, raised.range.end).split('\n')[0]!.trim() : oneLine(part);
  return [
    `### ${name}`, '', `*${entry.severity}${entry.fixable ? ', with a fix' : ''}.* ${entry.why}`, '',
    ...(raised ? [`At ${code(shown === '' ? '(nothing)' : shown.slice(0, 90))}: ${problemSentence(raised)}`, ''] : []),
  ].join('\n');
}

const entryKeys = Array.isArray(protocolSchema) ? protocolSchema as readonly SchemaKey[] : (protocolSchema as unknown as SchemaKey).keys ?? [];

const page = [
  '# Reference',
  '',
  'Made by `npm run reference` from the tables that the tool works by; do not edit it by hand.',
  '',
  '## Claims',
  '',
  '| form | meaning |', '|---|---|',
  '| `{6.44 mg/L = FORMULA}` | the number must equal the formula\'s value, rounded to the decimals shown, in the unit shown |',
  '| `{? = FORMULA}` | not filled in yet: a warning; the preview shows the value, *Fill in* writes it |',
  '| `{any words if CONDITION}` | the words stand while the condition is true |',
  '| `{4.0 mg/L = stated "source"}` | stated with its source, not computed; also `{words = stated "source"}` |',
  '',
  'Four marks, everywhere: *computed*, *condition checked* (with the condition in words), *stated* (with its source), *unchecked*. A condition that',
  'holds says that the readings agree with it; it does not prove a cause.',
  '',
  '## Protocol keys',
  '',
  '| key | holds | meaning | example |', '|---|---|---|---|',
  ...protocolRows(entryKeys, ''),
  '',
  '## Options of blocks',
  '',
  '| block | option | meaning |', '|---|---|---|',
  ...blockOptions.flatMap(([block, keys]) => keys.map((key) => `| ${code(block)} | ${code(key)} | ${cell(help[`${block}.${key}`]!)} |`)),
  '',
  '````markdown', '```figure', 'show: [DO, mat.DO - open.DO]', 'uncertainty: yes', '```', '', '```summary', 'of: DO', 'rows: before-after light-off', 'show: [mean, min]', '```', '````',
  '',
  `A formula with a comma stands in quotation marks: ${code('show: ["steps(mat.DO, every 1 h)"]')}. Series of one unit share a panel; a computed series shares one only with its like.`,
  'There is no second axis: two scales on one pair of axes make lines cross at the drawer\'s will.',
  '',
  `The cells of a summary are formulas: \`mean(mat.DO, dark)\`. A figure that the readings do not give is a dash with its reason. For stretches of time: ${windowFunctions.map(code).join(', ')}; for moments: ${momentFunctions.map(code).join(', ')}.`,
  'Where all tanks of both sides are shown, treatment minus control is added; beside the change of the means from the baseline it is the `contrast`.',
  '',
  '### A specification of one\'s own',
  '',
  'Under `spec`, Vega-Lite within this list, over the data set `readings`: a row for each reading that counts (left-out ones and those outside the instrument\'s range are not in it).',
  'Times are those of the note\'s clock; tanks keep their colours and dashes; lines break where nothing was read. Every other key is a problem at its place: a drawing loads nothing, runs nothing, links nowhere.',
  '',
  '| of | possible |', '|---|---|',
  ...specRows.map(([name, words]) => `| ${name} | ${words.map(code).join(', ')} |`),
  '',
  '## Functions',
  '',
  'Values in the examples come from this note, whose readings are invented. [One night of it followed by hand](worked-night.md) goes from the readings to',
  'respiration, surface exchange and prediction, every figure worked out; [how often the intervals hold](coverage.md) was found by simulation.',
  '',
  '````markdown', nightNote.trimEnd(), '````',
  '',
  ...functionGroups.flatMap((group) => [
    `### ${groupTitles[group] ?? group}`, '',
    ...functions.filter((each) => each.group === group).flatMap((each) => [
      `**${each.signatures.map((signature) => code(signatureLabel(each.name, signature))).join(' or ')}**  `,
      `${each.definition} Gives ${each.units}.  `,
      `${each.equation === '' ? '' : `Equation: ${each.equation}.  `}${each.source === null ? '' : `Source: ${each.source.replace(/\.$/, '')}.  `}`.trimEnd(),
      `Example: ${code(each.example.formula)} gives ${each.example.gives} (${each.example.on}).`,
      '',
    ].filter((line, index) => line !== '' || index === 4)),
  ]),
  '## Measured quantities',
  '',
  '| `what:` | unit | also in | plausible range | |', '|---|---|---|---|---|',
  ...measures.map((each) => `| ${each.name} | ${each.unit ?? 'a scale of words'} | ${each.units.slice(1).join(', ')} | ${each.plausible ? `${each.plausible[0]} to ${each.plausible[1]}` : ''} | ${cell(each.means)} |`),
  '',
  'A plausible range marks a likely slip of the pen (common practice, no source unless said); it is never a limit for animals.',
  '',
  '## Problems',
  '',
  ...(Object.keys(problemCodes) as ProblemCode[]).sort().map(problemSection),
].join('\n').replace(/\n{3,}/g, '\n\n').trimEnd() + '\n';

/** The manifest with the codes that the setting for severities may name. */
function withCodes(manifest: string): string {
  const list = (Object.keys(problemCodes) as ProblemCode[]).sort().map((each) => `              ${JSON.stringify(each)}`).join(',\n');
  return manifest.replace(/("evenwater\.severity": \{[\s\S]*?"propertyNames": \{\s*"enum": \[\n)[\s\S]*?(\n\s*\])/, (_, before: string, after: string) => before + list + after);
}

const manifest = readFileSync(path.join(root, 'package.json'), 'utf8');
const pages: readonly [file: string, text: string][] = [['docs/reference.md', page], ['package.json', withCodes(manifest)]];
for (const [file, text] of pages) {
  const target = path.join(root, file);
  const same = readFileSync(target, 'utf8') === text;
  if (process.argv.includes('--check')) {
    console.log(same ? `${file} is up to date` : `${file} is out of date: run npm run reference`);
    if (!same) process.exitCode = 1;
  } else if (!same) {
    writeFileSync(target, text);
    console.log(`${file} written`);
  }
}
