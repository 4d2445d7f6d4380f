// Nothing that a note says reaches a post as markup: hostile texts in every place where a note holds text are published, and the page
// is parsed as a browser parses it. It may hold only what a page without hostile texts holds.
import assert from 'node:assert/strict';
import { parse, type DefaultTreeAdapterTypes } from 'parse5';
import { readNote } from '../../../src/experiment/readNote.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { allHostileTexts, brokenNotesOf, fileNoteOf, hostileTexts, noteOfTexts, proseOfText } from './hostileTexts.ts';

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;

const options = { stem: 'night', toolVersion: '0.0.0' };

async function post(text: string, files: ReadonlyMap<string, Uint8Array> = new Map(), stem = options.stem): Promise<string> {
  const note = readNote(text, files, undefined, { fileIsNote: true });
  return (await publishPost(note, { ...options, stem })).html;
}

function elements(node: Node): Element[] {
  const children = 'childNodes' in node ? node.childNodes : [];
  return [...('tagName' in node ? [node] : []), ...children.flatMap(elements)];
}

function textOf(node: Node): string {
  if (node.nodeName === '#text' && 'value' in node) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
}

/** The tree as names: a hostile text must not change it. Inside a drawing the room that a label takes moves ticks and lines. */
function shape(node: Node): string {
  if ('tagName' in node && node.tagName === 'svg') return '<svg></>';
  // A drawing's ticks and labels follow the widths of its texts.
  if ('tagName' in node && node.tagName === 'svg') return '<svg>';
  const children = 'childNodes' in node ? node.childNodes.map(shape).join('') : '';
  return 'tagName' in node ? `<${node.tagName}>${children}</>` : children;
}

const markdownElements = ['h1', 'h2', 'p', 'em', 'strong', 's', 'code', 'pre', 'blockquote', 'ul', 'ol', 'li', 'table', 'thead', 'tbody', 'tr', 'th', 'td', 'a', 'img', 'hr', 'br', 'div', 'span'];
const markdownAttributes = ['href', 'title', 'src', 'alt', 'start', 'rel', 'class', 'id', 'style'];
const allowedStyles = /^(?:[a-z-]+:\s?[a-z0-9#.%(), -]+;?\s*)*$/i;

const withoutFigure = (note: string): string => note.replace(/```figure[^]*?```\n/, '');

/** What harmless pages are made of: names of elements, and attributes by element. */
async function vocabulary(): Promise<{ names: Set<string>; attributes: Set<string>; style: string; head: string }> {
  const html = await post(noteOfTexts('plain') + proseOfText('plain'));
  const document = parse(html);
  const all = elements(document);
  const style = all.filter(({ tagName }) => tagName === 'style').map(textOf).join('');
  const head = shape(all.find(({ tagName }) => tagName === 'head')!);
  return {
    names: new Set([...all.map(({ tagName }) => tagName), ...markdownElements]),
    attributes: new Set([...all.flatMap(({ attrs }) => attrs.map(({ name }) => name)), ...markdownAttributes]), style, head,
  };
}

/** Fails where the page holds anything that could run, fetch or leave the page's own vocabulary. */
function assertHarmless(html: string, harmless: Awaited<ReturnType<typeof vocabulary>>, where: string): void {
  const document = parse(html);
  const all = elements(document);
  for (const element of all) {
    const { tagName, attrs } = element;
    assert.ok(harmless.names.has(tagName), `${where}: <${tagName}>`);
    assert.ok(!['script', 'iframe', 'object', 'embed', 'base', 'form', 'input', 'button', 'foreignObject', 'animate', 'set', 'use', 'image', 'link', 'math', 'template', 'noscript'].includes(tagName), `${where}: <${tagName}>`);
    for (const { name, value } of attrs) {
      assert.ok(harmless.attributes.has(name), `${where}: <${tagName} ${name}>`);
      assert.ok(!/^on/i.test(name), `${where}: ${name}`);
      if (name === 'style') assert.match(value, allowedStyles, `${where}: style="${value}"`);
      if (name === 'href') {
        const bare = value.replace(/[\u0000-\u0020\u007F-\u009F\u200B-\u200F\u2028\u2029\uFEFF]/g, '');
        // The files that the page carries are saved, never opened: only kinds that no browser runs, in base64.
        const carried = attrs.some((each) => each.name === 'download') && /^data:(?:text\/markdown|text\/csv|application\/octet-stream);base64,[A-Za-z0-9+/=]*$/.test(value);
        assert.ok(carried || /^(?:https?:|mailto:)/i.test(bare) || !/^[^/?#]*:/.test(bare), `${where}: href="${value}"`);
      }
      if (name === 'src') assert.match(value, /^data:image\/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]+$/, `${where}: src`);
      if (/url\(/i.test(value) && name !== 'title' && name !== 'alt' && !name.startsWith('data-') && !name.startsWith('aria-') && name !== 'content' && name !== 'href' && name !== 'class') {
        assert.match(value, /^url\(["']?#[\w-]+["']?\)$/, `${where}: ${name}="${value}"`);
      }
    }
  }
  assert.equal(all.filter(({ tagName }) => tagName === 'style').map(textOf).join(''), harmless.style, `${where}: the stylesheet`);
  assert.equal(all.filter(({ tagName }) => tagName === 'title' ).filter(({ namespaceURI }) => namespaceURI.endsWith('xhtml')).length, 1, `${where}: one title`);
  const ids = all.flatMap(({ attrs }) => attrs.filter(({ name }) => name === 'id').map(({ value }) => value));
  assert.equal(new Set(ids).size, ids.length, `${where}: an id stands twice`);
  assert.doesNotMatch(html, /[\u0000-\u0008\u000B\u000C\u000E-\u001F]/, `${where}: a control character`);
  assert.doesNotMatch(html, /[\u202A-\u202E\u2066-\u2069]/, `${where}: a mark that turns the direction of the text after it`);
  assert.doesNotMatch(html, /undefined|NaN|\[object /, where);
}

/** The text as a page may show it: control characters and marks of direction replaced. */
function tame(text: string): string {
  return text.replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\u202A-\u202E\u2066-\u2069]/g, '\uFFFD').replace(/\s+/g, ' ').trim();
}

suite('hostile texts in a post', () => {
  let harmless: Awaited<ReturnType<typeof vocabulary>>;
  let plainShape: string;
  suiteSetup(async function () {
    this.timeout(120_000);
    harmless = await vocabulary();
    plainShape = shape(parse(await post(withoutFigure(noteOfTexts('plain')))));
  });

  for (const [name, text] of Object.entries(hostileTexts)) {
    test(`${name}: in every free text of a note, and in prose`, async () => {
      const html = await post(noteOfTexts(text) + proseOfText(text));
      assertHarmless(html, harmless, name);
      const said = textOf(parse(html)).replace(/\s+/g, ' ');
      if (!/[\uD800-\uDFFF]/.test(text) && text.length < 500) {
        const shown = said.split(tame(text)).length - 1;
        assert.ok(shown >= 12, `${name}: the text is shown ${shown} times only`);
      }
    });

  }

  for (const [half, text] of allHostileTexts.entries()) {
    test(`all hostile texts, part ${half + 1}: in a data file, its path and the name of the post`, async () => {
      const { note, path, file } = fileNoteOf(text);
      const html = await post(withoutFigure(note.replace(/^# .*\n/, '').replace(/^title: .*\n/m, '')), new Map([[path, new TextEncoder().encode(file)]]), text);
      assertHarmless(html, harmless, 'file');
    });
  }

  test('the check itself sees harm', async () => {
    const html = await post(noteOfTexts('plain'));
    for (const harm of ['<script>1</script>', '<p onclick="x">', '<a href="java\tscript:x">x</a>', '<img src="http://evil.example">', '<p style="background:url(http://evil.example)">', '<style>p{}</style>', '<svg><animate/></svg>',
      '<iframe></iframe>', '<title>x</title>', '\u202Ex', '\u0007', '<base href="x">', '<p id="main">', 'NaN']) {
      assert.throws(() => assertHarmless(html.replace('</header>', () => `${harm}</header>`), harmless, harm), assert.AssertionError, harm);
    }
  });

  for (const [half, text] of allHostileTexts.entries()) {
    test(`all hostile texts, part ${half + 1}: in names, heads, cells, formulas and options`, async () => {
      for (const [index, note] of brokenNotesOf(text).entries()) assertHarmless(await post(note), harmless, `broken note ${index}`);
    }).timeout(240_000);
  }

  test('a hostile text in the plan leaves the page\'s structure as it is', async () => {
    for (const [half, text] of allHostileTexts.entries()) {
      const hostile = noteOfTexts('plain').replace(/^title: .*$/m, () => `title: ${JSON.stringify(text)}`).replace(/^question: .*$/m, () => `question: ${JSON.stringify(text)}`).replace('label: "plain"', () => `label: ${JSON.stringify(text)}`);
      assert.equal(shape(parse(await post(withoutFigure(hostile)))), plainShape, `part ${half + 1}`);
    }
  });
});
