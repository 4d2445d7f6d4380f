// The summary card for sharing: question, answer in one sentence, the figure, the limits of the evidence; as Markdown and SVG.
import { unthemedChart } from '../charts/readingsChart.ts';
import { textWidth, wrapText } from '../charts/layout.ts';
import { chartSvg } from '../charts/svg.ts';
import type { Note } from '../experiment/types.ts';
import { createRenderContext } from '../render/context.ts';
import { escapeHtml } from '../render/html.ts';
import { languageOf } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { figureSvg, type PublishedFile } from './markdown/markdownPost.ts';
import { escapeMarkdown } from './markdown/toMarkdown.ts';
import type { PostOptions } from './post.ts';
import { publishedOf, publishedWords } from './published.ts';
import { answerOf, evidenceLimits, intervalSentences } from './sentences.ts';

const width = 1000;
const margin = 48;
const font = 'system-ui, -apple-system, &quot;Segoe UI&quot;, Roboto, &quot;Helvetica Neue&quot;, Arial, sans-serif';

interface Line { readonly text: string; readonly size: number; readonly weight: number; readonly colour: string; readonly before: number }

/** Lines of a text at a size, as wide as the card. */
function lines(text: string, size: number, weight: number, colour: string, before: number): Line[] {
  const room = (width - 2 * margin) * (weight >= 600 ? 0.93 : 0.98);
  return wrapText(text, size, room, 12).map((each, index) => ({ text: each, size, weight, colour, before: index === 0 ? before : 0 }));
}

/** The figure that answers: the first `figure` block, else the first figure. */
function cardFigure(note: Note) {
  const { figures } = createRenderContext(note, 'post');
  const [block] = [...figures.keys()].sort((a, b) => Number(note.syntax.blocks[a]!.word !== 'figure') - Number(note.syntax.blocks[b]!.word !== 'figure') || a - b);
  return block === undefined ? null : figures.get(block)!;
}

/** The card's files, and why it cannot be made where a number of the answer does not hold. */
export async function publishCard(note: Note, options: PostOptions): Promise<{ files: PublishedFile[]; faults: readonly string[] }> {
  const answer = answerOf(note);
  if (answer && answer.faults.length > 0) return { files: [], faults: answer.faults };
  const title = note.protocol?.title?.value ?? note.syntax.headings.find((heading) => heading.level === 1)?.text ?? options.stem;
  const question = note.protocol?.question?.value ?? title;
  const limits = [...intervalSentences(note, answer?.quoted ?? []), ...evidenceLimits(note)];
  const language = languageOf(note.protocol?.language);
  const words = postWords(language);
  const published = publishedOf(note, options.published);
  const made = [note.protocol?.by?.value, published === null ? null : publishedWords(published, language), note.protocol?.licence?.value, `Evenwater ${options.toolVersion}`].filter((each): each is string => Boolean(each)).join(' · ');
  const figure = cardFigure(note);
  const chart = figure && (unthemedChart(note, { ...figure.options, width: 680 }) ?? figure.chart);

  const markdown = [
    `**${escapeMarkdown(question)}**`, ...(answer ? [escapeMarkdown(answer.text)] : []),
    ...(chart ? [`![${escapeMarkdown(chart.alternative)}](${encodeURI(`${options.stem}-card-figure.svg`)})`, `*${escapeMarkdown(chart.caption.map((run) => run.text).join(''))}*`] : []),
    ...(limits.length > 0 ? [words.limitsOfEvidence(limits.map(escapeMarkdown).join(' '))] : []), escapeMarkdown(made),
  ].join('\n\n');

  const above = [...(title === question ? [] : lines(title, 17, 600, '#566070', 0)), ...lines(question, 30, 700, '#1B2430', 10), ...(answer ? lines(answer.text, 21, 400, '#1B2430', 16) : [])];
  const below = [...(limits.length > 0 ? lines(words.limitsOfEvidence(limits.join(' ')), 16, 400, '#3F4955', 8) : []), ...lines(made, 14, 400, '#566070', 12)];
  let y = margin;
  const write = (all: readonly Line[]): string => all.map((each) => {
    y += each.before + each.size * 1.32;
    const wide = textWidth(each.text, each.size) > width - 2 * margin ? ` textLength="${width - 2 * margin}" lengthAdjust="spacingAndGlyphs"` : '';
    return `<text x="${margin}" y="${Math.round(y * 10) / 10}" font-size="${each.size}" font-weight="${each.weight}" fill="${each.colour}"${wide}>${escapeHtml(each.text)}</text>`;
  }).join('\n');
  const head = write(above);
  let drawing = '';
  if (chart) {
    y += 28;
    const scale = (width - 2 * margin) / chart.width;
    const inner = (await chartSvg(chart, { id: 'card' })).replace(/^<svg[^>]*>\s*<title[^>]*>[^<]*<\/title>/, '');
    drawing = `<svg x="${margin}" y="${Math.round(y)}" width="${width - 2 * margin}" height="${Math.round(chart.height * scale)}" viewBox="0 0 ${chart.width} ${chart.height}">${inner}`;
    y += chart.height * scale + 12;
  }
  const foot = write(below);
  const height = Math.ceil(y + margin);
  const alternative = [question, answer?.text ?? '', chart?.alternative ?? '', ...limits].filter((each) => each !== '').join(' ');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="card-title" font-family="${font}">`
    + `<title id="card-title">${escapeHtml(alternative)}</title>\n<rect width="${width}" height="${height}" fill="#FFFFFF"/>\n<rect width="${width}" height="10" fill="#0072B2"/>\n${head}\n${drawing}\n${foot}\n</svg>\n`;
  return {
    files: [{ path: `${options.stem}-card.md`, content: `${markdown}\n` }, { path: `${options.stem}-card.svg`, content: svg },
      ...(chart ? [{ path: `${options.stem}-card-figure.svg`, content: await figureSvg(chart, 'card-figure') }] : [])], faults: [],
  };
}
