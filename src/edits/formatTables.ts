// The formatter: aligns readings tables and touches no value, no remark and no comment. Doing it twice changes nothing.
import { toDocumentRange } from '../note/mappedText.ts';
import type { NoteSyntax } from '../note/syntax.ts';
import type { SourceRange, TextEdit } from '../problems/problem.ts';
import { fileOf } from '../readings/file/readFileTable.ts';
import { splitLines, type Line } from '../readings/lines.ts';
import { layoutTable, type LayoutRow } from './tableLayout.ts';

type CellsLine = Extract<Line, { kind: 'cells' }>;

/** Edits that align every readings table, or only those that the range touches; one edit a changed line. */
export function formatTables(syntax: Pick<NoteSyntax, 'blocks'>, range: SourceRange | null = null): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const block of syntax.blocks) {
    if (block.word !== 'readings' || !block.closed || fileOf(block)) continue;
    if (range && (range.end < block.range.start || range.start > block.range.end)) continue;
    const text = block.content.text;
    const lines = splitLines(text).filter((line): line is CellsLine => line.kind === 'cells');
    const [head, ...rows] = lines;
    // Heads with words behind a `;` are broken in some way that is not the formatter's to mend.
    if (!head || head.tokens.length === 0 || text.slice(head.start, head.end).includes(';')) continue;
    // A row with too many or too few cells stays as its keeper left it, and so does a remark without a row.
    const whole = rows.filter((row) => row.tokens.length === head.tokens.length);
    const laidOut = layoutTable(head.tokens.map((token) => token.text), whole.map((row): LayoutRow => ({
      time: row.tokens[0]!.text, cells: row.tokens.slice(1).map((token) => token.text), remark: remarkText(row, text),
    })));
    [head, ...whole].forEach((line, index) => {
      const written = text.slice(line.start, line.end);
      if (written === laidOut[index]!) return;
      edits.push({ range: toDocumentRange(block.content, { start: line.start, end: line.end }), newText: laidOut[index]! });
    });
  }
  return edits;
}

/** The remark as written; an empty one (a bare `;`) is kept as such. */
function remarkText(row: CellsLine, text: string): string | null {
  if (row.remark) return row.remark.text;
  return text.slice(row.start, row.end).includes(';') ? '' : null;
}
