// Writes docs/reference.md from the tables that the tool itself works by: blocks, claims, protocol keys, functions, units,
// measured quantities, problems. `--check` compares instead of writing. Run with: npm run reference
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { functionGroups, functions, signatureLabel } from '../src/formula/catalogue.ts';
import { problemCodes, type ProblemCode } from '../src/problems/codes.ts';
import { exampleNote as nightNote } from '../src/formula/catalogue/exampleNote.ts';
import { exampleNote } from '../src/problems/examples.ts';
import { protocolSchema, type SchemaKey } from '../src/protocol/schema.ts';
import { measures } from '../src/quantities/measures.ts';
import { readNote } from '../src/experiment/readNote.ts';
import { problemSentence } from '../src/words/words.ts';

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

const target = path.join(root, 'docs/reference.md');
if (process.argv.includes('--check')) {
  const same = readFileSync(target, 'utf8') === page;
  console.log(same ? 'docs/reference.md is up to date' : 'docs/reference.md is out of date: run npm run reference');
  process.exitCode = same ? 0 : 1;
} else {
  writeFileSync(target, page);
  console.log('docs/reference.md written');
}
