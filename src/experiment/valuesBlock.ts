// Reads `values` blocks: one `name = formula` a line. Blank lines and lines that start with # are passed over.
import { fix, problem, type Problem } from '../problems/problem.ts';
import { sliceMapped, toDocumentRange } from '../note/mappedText.ts';
import type { Block } from '../note/syntax.ts';
import type { ResultDefinition } from '../formula/context.ts';

export interface ValueLine extends ResultDefinition { readonly block: number }

const line = /^([ \t]*)(\p{L}[\p{L}\p{N}-]*)([ \t]+=[ \t]+)(.*\S)[ \t]*$/u;

/**
 * All named results of a note, in order.
 * @param isReserved tells whether a name already means something in formulas
 */
export function readValueBlocks(blocks: readonly Block[], isReserved: (name: string) => boolean): { results: ValueLine[]; problems: Problem[] } {
  const results: ValueLine[] = [];
  const problems: Problem[] = [];
  const seen = new Map<string, ValueLine>();
  blocks.forEach((block, index) => {
    if (block.word !== 'values') return;
    let offset = 0;
    for (const text of block.content.text.split('\n')) {
      const start = offset;
      offset += text.length + 1;
      const bare = text.replace(/\r$/, '');
      if (bare.trim() === '' || bare.trimStart().startsWith('#')) continue;
      const wholeLine = toDocumentRange(block.content, { start: start + bare.length - bare.trimStart().length, end: start + bare.trimEnd().length });
      const match = line.exec(bare);
      if (!match) {
        problems.push(problem('value-line-unreadable', wholeLine, { line: bare.trim() }));
        continue;
      }
      const [, indent, name, separator, formula] = match as unknown as [string, string, string, string, string];
      const nameStart = start + indent.length;
      const formulaStart = nameStart + name.length + separator.length;
      const nameRange = toDocumentRange(block.content, { start: nameStart, end: nameStart + name.length });
      const result: ValueLine = { name, nameRange, formula: sliceMapped(block.content, formulaStart, formulaStart + formula.length), block: index };
      if (isReserved(name)) problems.push(problem('result-name-reserved', nameRange, { name }));
      const first = seen.get(name);
      if (first) {
        problems.push(problem('result-named-twice', nameRange, { name }, [
          fix('rename-result', { name: `${name}-2` }, [{ range: nameRange, newText: `${name}-2` }]),
        ], [{ range: first.nameRange, message: 'first-named-here', args: { name } }]));
        continue;
      }
      seen.set(name, result);
      results.push(result);
    }
  });
  return { results, problems };
}
