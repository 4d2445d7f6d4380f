// The words round a panel: title, heads, event labels, the legend of a narrow drawing, labels at the lines' ends, the zone.
import { labelWidth, legendSeries, small } from './frame.ts';
import { cutText, keepApart, wrapText } from './layout.ts';
import { dashed, pixelSign, pixelText, type Json, type PanelView } from './panelView.ts';
import { colourToken } from './theme.ts';

/** Room for the title above everything else. */
const titleHeight = 24;

/** The layers of the words, in the order in which they are drawn. */
export function textLayers(view: PanelView): Json[] {
  return [...titleText(view), ...headTexts(view), ...eventTexts(view), ...legend(view), ...endLabels(view), ...zoneText(view)];
}

function titleText({ drawing, frame, index }: PanelView): Json[] {
  if (index !== 0 || !drawing.title) return [];
  return pixelText([{ x: -frame.left, y: -frame.top + 9, text: cutText(drawing.title, 13.5, drawing.width) }], { fontSize: 13.5, fontWeight: 600, fill: colourToken('text') });
}

/** What the panels of one scale show, above the first of them; in a figure with a panel a tank, whose each is. */
function headTexts({ drawing, frame, index, cell, panel }: PanelView): Json[] {
  const firstOfScale = frame.cells.findIndex((each) => each !== null && drawing.panels[each]!.scale === panel.scale) === cell;
  const top = index < frame.columns && cell < frame.columns ? -frame.top + frame.legendHeight + (drawing.title ? titleHeight : 0) : 28 - frame.between;
  const texts: Json[] = [];
  if (panel.facet === null || firstOfScale) {
    texts.push(...pixelText([{ x: -frame.left, y: top + 9, text: cutText(panel.title, 11.5, drawing.width - 4) }], { fontSize: 11.5, fontWeight: 600, fill: colourToken('text') }));
  }
  if (panel.facet !== null) {
    const own = panel.drawn[0]!;
    texts.push(pixelSign(own, 5, top + 26), ...pixelText([{ x: 14, y: top + 26, text: cutText(panel.facet, small, frame.plot - 14) }], { fontWeight: 500, fill: colourToken(own.colour) }));
  }
  return texts;
}

function eventTexts({ frame, index, xOf }: PanelView): Json[] {
  return frame.eventLabels[index]!.filter(({ row }) => row >= 0).flatMap(({ event, row, align, text }) => pixelText(
    [{ x: xOf(event.at) + (align === 'left' ? 3 : -3), y: -8 - row * 14, text }],
    { fontSize: 10, align, fill: colourToken(event.lamp ? 'muted' : 'event'), ...(event.lamp ? { fontStyle: 'italic' } : {}) }));
}

function legend({ drawing, frame, index }: PanelView): Json[] {
  if (index !== 0 || frame.legend.length === 0) return [];
  return legendSeries(drawing).flatMap((drawn, entry) => {
    const place = frame.legend[entry]!;
    const [x, y] = [-frame.left + place.x, -frame.top + (drawing.title ? titleHeight : 0) + place.y + 8];
    return [
      { data: { values: [{}] }, mark: { type: 'point', x: x + 13, y, shape: 'M-1,0L1,0', size: 676, opacity: 1, filled: false, stroke: colourToken(drawn.colour), strokeWidth: 2, ...dashed(drawn) } },
      pixelSign(drawn, x + 13, y),
      ...pixelText([{ x: x + 31, y, text: cutText(drawn.label, small, drawing.width - 40) }], { fill: colourToken('text') }),
    ];
  });
}

/** Each series' name beside the end of its line, moved as little as keeps them apart. */
function endLabels({ frame, panel, xOf, yOf }: PanelView): Json[] {
  if (frame.narrow || !frame.labelled) return [];
  const { plot, height } = frame;
  const ends = panel.drawn.map((drawn) => {
    const end = drawn.points.findLast((point) => point.segment >= 0) ?? drawn.points.at(-1)!;
    const lines = wrapText(drawn.label, small, labelWidth, 3);
    return { drawn, lines, y: yOf(end.value), atEdge: plot - xOf(end.time) < 12, size: lines.length * 13 + 3 };
  });
  const middles = keepApart(ends.map((end) => ({ middle: end.y, size: end.size })), -8, height + 8);
  return ends.flatMap(({ drawn, lines, y, atEdge }, position) => {
    const middle = middles[position]!;
    const firstLine = middle - ((lines.length - 1) * 13) / 2;
    // The line's last point is its own sign when the label stands right beside it.
    const beside = atEdge && Math.abs(firstLine - y) < 5;
    return [
      ...(beside ? [] : [pixelSign(drawn, plot + 9, firstLine)]),
      ...pixelText(lines.map((line, row) => ({ x: plot + (beside ? 11 : 17), y: middle + (row - (lines.length - 1) / 2) * 13, text: line })),
        { fill: colourToken(drawn.colour), fontWeight: 500 }),
    ];
  });
}

function zoneText({ drawing, frame, index }: PanelView): Json[] {
  if (index !== drawing.panels.length - 1) return [];
  return pixelText([{ x: frame.plot, y: frame.height + 42, text: cutText(drawing.zoneLabel, 10, drawing.width - 8) }], { fontSize: 10, align: 'right', fill: colourToken('muted') });
}
