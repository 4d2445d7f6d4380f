// The post in other forms: Markdown, summary card, narration; numbers as said.
import assert from 'node:assert/strict';
import { createNoteParser } from '../../../src/note/markdown.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { publishCard } from '../../../src/publish/card.ts';
import { parseHtml } from '../../../src/publish/markdown/htmlTree.ts';
import { publishMarkdown } from '../../../src/publish/markdown/markdownPost.ts';
import { toMarkdown } from '../../../src/publish/markdown/toMarkdown.ts';
import { publishNarration } from '../../../src/publish/narration.ts';
import { findingSentences, splitSentences } from '../../../src/publish/sentences.ts';
import { spokenText } from '../../../src/publish/spoken.ts';
import { spokenClock, spokenDate, spokenInteger } from '../../../src/words/en/speech.ts';
import { samplePostText } from './samplePost.ts';

const options = { stem: 'night', toolVersion: '1.2.3' };
const note = readNote(samplePostText, new Map());

suite('publish: Markdown', () => {
  let text = '';
  let paths: string[] = [];
  suiteSetup(async () => {
    const files = await publishMarkdown(note, options);
    text = String(files[0]!.content);
    paths = files.map((each) => each.path);
  });

  test('claims are plain words, blocks are text, no HTML and no front matter is in it', () => {
    assert.match(text, /The floating-mat tank fell to 4\.80 mg\/L, and it stayed below the open tank\. An hour after\nlights-off it had lost 5\.3 %\. A guide asks for 5 mg\/L\./);
    assert.match(text, /^- A list item with 8\.26 mg\/L$/m);
    assert.doesNotMatch(text, /```(?:protocol|readings|values|figure|methods|results|limits)|<\/?[a-z]|^---\n/);
    assert.doesNotMatch(text, /NaN|undefined|\*\*\*\*/);
  });

  test('every table is a table to a Markdown reader, every figure an image file with its text alternative', () => {
    const tokens = createNoteParser().parse(text, {});
    assert.ok(tokens.filter((token) => token.type === 'table_open').length >= 6);
    const images = tokens.flatMap((token) => token.children ?? []).filter((token) => token.type === 'image').map((token) => [token.attrGet('src'), token.content.startsWith('Line chart of ')]);
    assert.deepEqual(images, [['night-figure-1.svg', true], ['night-figure-2.svg', true]]);
    assert.deepEqual(paths, ['night.post.md', 'night-figure-1.svg', 'night-figure-2.svg']);
  });

  test('has the appendix, the references and the data section with the note\'s hash', () => {
    for (const head of ['## How each number was computed', '## References', '## Data and plan']) assert.ok(text.includes(`\n${head}\n`), head);
    assert.match(text, /\*\*Note\*\*: SHA-256 [0-9a-f]{64}/);
  });

  test('numbers of tables and figures stand out in every language; a remark under a formula stands apart from it', async () => {
    const german = readNote(samplePostText.replace('question:', 'language: de\nquestion:'), new Map());
    const [file] = await publishMarkdown(german, options);
    const said = String(file!.content);
    assert.match(text, /^\*\*Table 1\.\*\* /m);
    assert.match(text, /^\*\*Figure 1\.\*\* /m);
    assert.match(said, /^\*\*Tabelle 1\.\*\* /m);
    assert.match(said, /^\*\*Abbildung 1\.\*\* /m);
    assert.equal(toMarkdown(parseHtml('<p><code>fall(mat.DO)</code><span class="evenwater-caution">No reading at 06:30.</span></p>')), '`fall(mat.DO)` No reading at 06:30.');
  });

  test('front matter only when asked', async () => {
    const [file] = await publishMarkdown(note, { ...options, frontMatter: true, published: '2026-04-13' });
    assert.match(String(file!.content), /^---\ntitle: "Water lettuce and the night"\ndescription: "[^\n]*"\nauthor: "A keeper"\ndate: "2026-04-13"\n/);
  });

  test('comments of the author stay out, comments in code stay in; line breaks of Windows become plain', async () => {
    const other = readNote(`${samplePostText}\nbefore <!-- secret {1 mg/L = min(mat.DO)} --> after\n\n\`\`\`html\n<!-- kept -->\n\`\`\`\n`.replace(/\n/g, '\r\n'), new Map());
    const [file] = await publishMarkdown(other, options);
    assert.doesNotMatch(String(file!.content), /secret|\r/);
    assert.match(String(file!.content), /before {2}after\n\n```html\n<!-- kept -->\n```/);
  });

  test('text is escaped, marks are kept', () => {
    assert.equal(toMarkdown(parseHtml('<p>a*b_c [d] &lt;e&gt; <strong> f </strong>|<code>g`h</code></p><ol><li>1. x</li><li>2. y<ul><li>z</li></ul></li></ol>')),
      'a\\*b\\_c \\[d\\] \\<e\\> **f** \\|``g`h``\n\n1. x\n2. y\n   - z');
  });
});

suite('publish: the summary card', () => {
  test('holds question, answer, figure and the limits of the evidence, as Markdown and as SVG', async () => {
    const { files, faults } = await publishCard(note, options);
    assert.deepEqual([faults, files.map((each) => each.path)], [[], ['night-card.md', 'night-card.svg', 'night-card-figure.svg']]);
    assert.match(String(files[0]!.content), /^\*\*Does a floating mat lower the overnight oxygen minimum\?\*\*\n\n[^\n]+\n\n!\[Line chart[^\n]*\]\(night-card-figure\.svg\)\n\n[\s\S]*Limits of the evidence: The tank is the unit of comparison/);
    const svg = String(files[1]!.content);
    assert.match(svg, /^<svg [^>]*role="img" aria-labelledby="card-title"/);
    assert.equal([...svg.matchAll(/<svg/g)].length, [...svg.matchAll(/<\/svg>/g)].length);
    assert.doesNotMatch(svg, /<script|NaN|undefined|var\(/);
  });

  test('the protocol\'s answer is checked: its claims become words, a wrong number refuses the card', async () => {
    const withAnswer = (number: string): string => samplePostText.replace('\nby: A keeper', `\nanswer: The mat tank fell to {${number} mg/L = min(mat.DO)}.\nby: A keeper`);
    const good = await publishCard(readNote(withAnswer('4.80'), new Map()), options);
    assert.match(String(good.files[0]!.content), /\n\nThe mat tank fell to 4\.80 mg\/L\.\n\n/);
    const bad = await publishCard(readNote(withAnswer('4.90'), new Map()), options);
    assert.deepEqual([bad.files, bad.faults], [[], ['“4.90 mg/L”: the readings give 4.80 mg/L']]);
  });
});

suite('publish: what a quoted ± comes from', () => {
  const withAnswer = (answer: string, language = 'en'): string => samplePostText.replace('\nby: A keeper', `\nanswer: "${answer}"\nlanguage: ${language}\nby: A keeper`);
  const withoutBaseline = samplePostText.split('\n').filter((line) => !/^(?:2026-\d\d-\d\d )?2[01]:[0-5]\d /.test(line)).join('\n');
  const cardOf = async (text: string): Promise<string> => {
    const { files, faults } = await publishCard(readNote(text, new Map()), options);
    assert.deepEqual(faults, []);
    return String(files[0]!.content);
  };
  const narrationOf = (text: string): string => publishNarration(readNote(text, new Map()), 'night').text;

  test('an answer without one needs no word about it', async () => {
    assert.doesNotMatch(await cardOf(withAnswer('The mat tank fell to {4.80 mg/L = min(mat.DO)}.')), /± (?:quoted|in)/);
  });

  test('a computed answer is the contrast where there is one, and its own sentence says what its ± is', async () => {
    const text = await cardOf(samplePostText);
    assert.match(text, /\n\nIn the dark phase the difference in dissolved oxygen \(treatment minus control\) had on average changed by −1\.77 ± 1\.67 mg\/L from the baseline: this is the contrast, its ± from the scatter of the paired readings\.\n\n/);
    assert.match(text, /Limits of the evidence: The tank is/);
  });

  test('without a contrast the computed answer and the narration say that the ± is the instruments\' alone', async () => {
    assert.match(await cardOf(withoutBaseline), / 2\.94 ± 0\.01 mg\/L more than [^\n]*\.\n\n[\s\S]*Limits of the evidence: Each ± quoted comes from the instruments alone; how far the tanks drift apart by themselves is not in it\. The tank is/);
    assert.match(narrationOf(withoutBaseline), /\d\. Each plus or minus quoted comes from the instruments alone;/);
  });

  test('the author\'s own answer has its ± told too; where both kinds are quoted, each is named', async () => {
    assert.match(await cardOf(withAnswer('It began at {8.21 ± 0.12 mg/L = first(mat.DO)}.')), /Limits of the evidence: Each ± quoted comes from the instruments alone;/);
    assert.match(await cardOf(withAnswer('The contrast is {−1.77 ± 1.67 mg/L = contrast(DO, dark)}.')), /Limits of the evidence: Each ± quoted comes from scatter, not from the instruments\./);
    const both = 'Es begann bei {8,21 ± 0,12 mg/L = first(mat.DO)}; der Kontrast ist {−1,77 ± 1,67 mg/L = contrast(DO, dark)}.';
    const german = samplePostText.replace(/(\d)\.(\d+) (mg\/L|%) =/g, '$1,$2 $3 =').replace('\nby: A keeper', `\nanswer: "${both}"\nlanguage: de\nby: A keeper`);
    const text = await cardOf(german);
    assert.match(text, /Das ± in „8,21 ± 0,12 mg\/L“ folgt allein aus den Messgeräten; wie weit die Becken von selbst auseinanderlaufen, steckt nicht darin\./);
    assert.match(text, /Das ± in „−1,77 ± 1,67 mg\/L“ folgt aus der Streuung, nicht aus den Messgeräten\./);
    assert.match(narrationOf(german), /Das plus oder minus in „acht Komma zwei eins plus oder minus null Komma eins zwei Milligramm pro Liter“ folgt allein aus den Messgeräten/);
  });

  test('the methods say which ± come from scatter instead', async () => {
    const [file] = await publishMarkdown(readNote(`${samplePostText}\n{−1.77 ± 1.67 mg/L = contrast(DO, dark)} and {? = slope(mat.DO, dark)} and {? = respiration(mat.DO, dark)}\n`, new Map()), options);
    assert.match(String(file!.content), /JCGM 100:2008\*?\); those of contrasts follow from the scatter of the paired readings, those of slopes follow from the scatter about the line, where there are readings enough for it,? and those of fitted nights follow from the scatter about the fit, with what the instruments add\./);
    const [plain] = await publishMarkdown(readNote(withoutBaseline, new Map()), options);
    assert.match(String(plain!.content), /repeats \(\*?JCGM 100:2008\*?\)\.\s/);
  });
});

suite('publish: the narration sheet', () => {
  test('numbers as said', () => {
    const cases: [string, string][] = [
      ['It was 5.83 mg/L.', 'It was five point eight three milligrams per litre.'],
      ['At 07:30 it rose.', 'At half past seven in the morning it rose.'],
      ['from 22:00 to 00:00', 'from ten o\'clock at night to midnight'],
      ['1 mg/L and 0.42 mg/L/h', 'one milligram per litre and zero point four two milligrams per litre per hour'],
      ['lost 5.0 % at 24.1 °C', 'lost five point zero per cent at twenty-four point one degrees Celsius'],
      ['2.5 ± 0.1 mg/L', 'two point five plus or minus zero point one milligrams per litre'],
      ['about 2–3 h', 'about two to three hours'],
      ['-0.3 K, −2 °C', 'minus zero point three degrees, minus two degrees Celsius'],
      ['on 2026-03-15', 'on the fifteenth of March twenty twenty-six'],
      ['1006.4 hPa', 'one thousand and six point four hectopascals'],
      ['3.1 h below', 'three point one hours below'],
      ['6 snails', 'six snails'],
      ['6 in a row', 'six in a row'],
      ['an uncut 450 µS/cm', 'an uncut four hundred and fifty microsiemens per centimetre'],
      ['tank2 and H2O stay', 'tank2 and H2O stay'],
    ];
    for (const [printed, said] of cases) assert.equal(spokenText(printed), said);
    assert.deepEqual([0, 13, 20, 99, 100, 101, 342, 1000, 1001, 12345, 2000000].map(spokenInteger), ['zero', 'thirteen', 'twenty', 'ninety-nine', 'one hundred', 'one hundred and one',
      'three hundred and forty-two', 'one thousand', 'one thousand and one', 'twelve thousand three hundred and forty-five', 'two million']);
    assert.deepEqual([[0, 0], [12, 0], [6, 15], [6, 45], [11, 45], [12, 30], [23, 53], [18, 7], [23, 45], [15, 31]].map(([hour, minute]) => spokenClock(hour!, minute!)),
      ['midnight', 'noon', 'quarter past six in the morning', 'quarter to seven in the morning', 'quarter to noon', 'half past noon', 'seven minutes to midnight',
        'seven minutes past six in the evening', 'quarter to midnight', 'twenty-nine minutes to four in the afternoon']);
    assert.equal(spokenDate(2009, 12, 31), 'the thirty-first of December two thousand and nine');
  });

  test('no digit is left in the findings; sentences are numbered from 1', () => {
    const { text, faults } = publishNarration(note, 'night');
    const lines = text.trimEnd().split('\n').slice(2);
    assert.deepEqual(faults, []);
    lines.forEach((line, index) => assert.match(line, new RegExp(`^${index + 1}\\. [A-Z]\\D*[.?!]$`), line));
    assert.ok(lines.some((line) => line.includes('fell to four point eight zero milligrams per litre')), text);
  });

  test('sentences end where they end', () => {
    assert.deepEqual(splitSentences('It was 5.83 mg/L. Then it rose, e.g. At noon. “So,” he said. J. Smith left. 3 tanks.'),
      ['It was 5.83 mg/L.', 'Then it rose, e.g. At noon.', '“So,” he said.', 'J. Smith left.', '3 tanks.']);
    assert.equal(findingSentences(note).length, 3);
  });
});
