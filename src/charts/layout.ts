// Where text goes in a chart: widths estimated from letter classes (no canvas, so the same everywhere), labels kept apart.

/** Rough width in pixels of a sans-serif text at a font size; a little too wide rather than too narrow. */
export function textWidth(text: string, fontSize: number): number {
  let ems = 0;
  for (const letter of text) {
    if (/[iljtfrI.,:;'|!()[\] -]/.test(letter)) ems += 0.36;
    else if (/[mwMW@%—…]/.test(letter)) ems += 0.96;
    else if (/[A-Z0-9°µ₀-₉–+=<>≤≥±]/.test(letter)) ems += 0.68;
    else if (letter.codePointAt(0)! > 0x2E80) ems += 1.05;
    else ems += 0.6;
  }
  return ems * fontSize;
}

/** Cuts a text to a width, with an ellipsis. */
export function cutText(text: string, fontSize: number, width: number): string {
  if (textWidth(text, fontSize) <= width) return text;
  const ellipsis = textWidth('…', fontSize);
  let kept = '';
  let taken = '';
  let used = 0;
  for (const letter of text) {
    taken += letter;
    used += textWidth(letter, fontSize);
    // Blanks before the ellipsis are dropped, so they take no room of their own.
    if (letter.trim() === '') continue;
    if (kept !== '' && used + ellipsis > width) break;
    kept = taken;
  }
  return `${kept}…`;
}

/** Breaks a text at spaces into at most `most` lines of a width; the last is cut. */
export function wrapText(text: string, fontSize: number, width: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines[lines.length - 1];
    if (line !== undefined && (lines.length === most || textWidth(`${line} ${word}`, fontSize) <= width)) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines.map((line) => cutText(line, fontSize, width));
}

/**
 * Moves blocks along one axis until none overlaps, as little as possible, within [low, high].
 * @returns the middle of each block, in the order given
 */
export function keepApart(blocks: readonly { readonly middle: number; readonly size: number }[], low: number, high: number): number[] {
  const order = blocks.map((block, index) => ({ index, size: block.size, middle: block.middle })).sort((a, b) => a.middle - b.middle || a.index - b.index);
  for (let round = 0; round < 60; round += 1) {
    let moved = false;
    for (let index = 1; index < order.length; index += 1) {
      const above = order[index - 1]!;
      const below = order[index]!;
      const overlap = (above.size + below.size) / 2 - (below.middle - above.middle);
      if (overlap > 0.01) {
        above.middle -= overlap / 2;
        below.middle += overlap / 2;
        moved = true;
      }
    }
    for (const each of order) each.middle = Math.min(high - each.size / 2, Math.max(low + each.size / 2, each.middle));
    if (!moved) break;
  }
  const middles = new Array<number>(blocks.length).fill(0);
  for (const each of order) middles[each.index] = Math.round(each.middle * 10) / 10;
  return middles;
}

/** A label that starts at `at` (or ends there when it would leave the width), put into the lowest free row. */
export interface RowLabel { readonly at: number; readonly width: number }
export function rowsOf(labels: readonly RowLabel[], width: number, most: number): { row: number; align: 'left' | 'right' }[] {
  const taken: [number, number][][] = [];
  return labels.map((label) => {
    const align = label.at + label.width > width && label.at > label.width ? 'right' as const : 'left' as const;
    const from = align === 'left' ? label.at : label.at - label.width;
    const to = from + label.width;
    for (let row = 0; row < most; row += 1) {
      const spans = taken[row] ?? (taken[row] = []);
      if (spans.every(([start, end]) => to < start || from > end)) {
        spans.push([from, to]);
        return { row, align };
      }
    }
    return { row: -1, align };
  });
}
