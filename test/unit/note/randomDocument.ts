// Random notes for property tests: containers, fences, paragraphs, claims, tables, code, maths and HTML, put together at random.
import fc from 'fast-check';

const inline = fc.constantFrom(
  'plain words', '{2.9 % = first-loss}', '{it fell if a < b}', '{? = mean(mat.DO)}', '{4 mg/L = stated "a } b"}', '{2.9\n% = loss}', '{2 = x', '{a}', '} ', '{', '\\{2 = x}',
  '`{2 = x}`', '``{2 `= x}``', '**{2 = bold}**', '*it*', '[{2 = link}](u "t {3 = x}")', '![{2 = image}](u)', '<b title="{2 = x}">', '</b>', '<!-- {2 = x} -->', '$a {2 = x} b$',
  '$$a {2 = x} b$$', '$5', '&plusmn; 3 mg/L', '~~{2 = gone}~~', '[x]', 'a | b', '\\|', '"', '\n', '\n', ' ', '  \n', '\t', '$$', '{2 = [x](u)}', '[{2 = ](u) x}', '3.2 mg/L', 'Öl 😀',
);
const line = fc.array(inline, { minLength: 1, maxLength: 7 }).map((parts) => parts.join(' '));

const word = fc.constantFrom('protocol', 'readings', 'readings probe', 'values', 'figure x', 'methods', 'js', '', 'Readings', 'protocol x y');
const content = fc.array(fc.constantFrom('a: b', '  indented', '', '\ttab', 'time mat.DO', '> quote', '- item', '    deep', '``', '{2 = x}', '\0x'), { maxLength: 4 });
const fence = fc.record({ mark: fc.constantFrom('```', '````', '~~~', '~~~~~'), word, content, indent: fc.constantFrom('', ' ', '   ', '    '), close: fc.constantFrom('', '', '', '`', 'none') })
  .map(({ mark, word, content, indent, close }) => [`${indent}${mark}${word}`, ...content.map((each) => indent + each), ...(close === 'none' ? [] : [indent + mark + close.replace('`', mark[0]!)])].join('\n'));

const table = fc.array(fc.array(inline, { minLength: 1, maxLength: 3 }).map((parts) => parts.join(' ').replace(/\n/g, ' ')), { minLength: 2, maxLength: 6 })
  .map((cells) => `| ${cells[0]} | ${cells[1]} |\n|---|:-:|\n${cells.slice(2).map((cell) => `| ${cell} \\| x | y |`).join('\n')}`);

const leaf = fc.oneof(
  { weight: 5, arbitrary: line }, { weight: 4, arbitrary: fence }, { weight: 2, arbitrary: table },
  { weight: 1, arbitrary: line.map((text) => `# ${text.replace(/\n/g, ' ')} ##`) }, { weight: 1, arbitrary: line.map((text) => `${text}\n===`) },
  { weight: 1, arbitrary: line.map((text) => `<div>\n${text}\n</div>`) }, { weight: 1, arbitrary: line.map((text) => `<!--\n${text}\n\`\`\`readings\n\`\`\`\n-->`) },
  { weight: 1, arbitrary: line.map((text) => `    ${text}`) }, { weight: 1, arbitrary: fc.constantFrom('---', '[x]: /url "{2 = x}"', '$$\n{2 = x}\n\n{3 = x}\n$$') },
);

/** Puts every line of a text behind a container's prefix; some lines lose it (lazy lines). */
const wrap = (prefix: string, rest: string) => (text: string): string =>
  text.split('\n').map((each, index) => (index === 0 ? prefix : rest) + each).join('\n');
const container = fc.constantFrom(wrap('> ', '> '), wrap('>', '>'), wrap('- ', '  '), wrap('1. ', '   '), wrap('-\t', '\t'), wrap('>\t', '>\t'), wrap('* ', ''), wrap('> ', ''), (text: string) => text, (text: string) => text);

const wrapped = fc.tuple(container, container, fc.array(leaf, { minLength: 1, maxLength: 3 }))
  .map(([outer, inner, leaves]) => outer(inner(leaves.join('\n\n'))));

/** A random document; most are notes. */
export const randomDocument = fc.record({
  protocol: fc.constantFrom('```protocol\nquestion: x\n```\n\n', '```protocol\nquestion: x\n```\n\n', '~~~ protocol\na: b\n~~~\n', ''),
  parts: fc.array(wrapped, { maxLength: 6 }), gap: fc.constantFrom('\n\n', '\n\n', '\n'), lineBreak: fc.constantFrom('\n', '\n', '\n', '\r\n', '\r'), end: fc.constantFrom('', '\n'),
}).map(({ protocol, parts, gap, lineBreak, end }) => (protocol + parts.join(gap) + end).replace(/\n/g, lineBreak));
