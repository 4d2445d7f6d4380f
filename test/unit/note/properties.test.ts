// Properties of reading a note's structure, over random documents: places lead back to the same characters, blocks are markdown-it's
// own fences, and the editor's claims are the preview's.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import markdownIt, { type Token } from 'markdown-it';
import { claimRule, type ClaimMeta } from '../../../src/note/markdown.ts';
import type { MappedText } from '../../../src/note/mappedText.ts';
import { mayBeNote, readSyntax } from '../../../src/note/readSyntax.ts';
import { blockWords, type NoteSyntax } from '../../../src/note/syntax.ts';
import { randomDocument } from './randomDocument.ts';

const plain = markdownIt({ html: true });
const ruled = markdownIt({ html: true });
claimRule(ruled);
const runs = { numRuns: 400 };

/** True when the note's character is what the taken character came from. */
function sameCharacter(taken: string, document: string): boolean {
  return taken === document || (taken === '\n' && document === '\r') || (taken === '\uFFFD' && document === '\0') || (taken === ' ' && document === '\t');
}

function assertSpells(text: string, mapped: MappedText): void {
  let offset = 0;
  let before = -1;
  for (const piece of mapped.pieces) {
    assert.equal(piece.offset, offset, 'pieces cover the text without a gap');
    for (let index = 0; index < piece.length; index++) {
      const taken = mapped.text[piece.offset + index]!;
      const document = text[piece.document + index] ?? '';
      assert.ok(sameCharacter(taken, document), `${JSON.stringify(taken)} maps to ${JSON.stringify(document)} in ${JSON.stringify(text)}`);
    }
    // A tab that stands for several spaces is told several times.
    const told = text[piece.document] === '\t' ? 1 : 0;
    if (piece.length > 0) assert.ok(piece.document >= before - told, 'pieces stand in order');
    before = piece.document + piece.length;
    offset += piece.length;
  }
  assert.equal(offset, mapped.text.length);
}

/** A block that swallowed the opening fence of another one holds the text before it; one never closed ends at marks that were to close it. */
function beforeNextFence(content: string, closed: boolean): string {
  const lines = content.split(/(?<=\n)/);
  const next = lines.findIndex((line) => blockWords.some((word) => new RegExp(`^ {0,3}(\`\`\`+|~~~+)[ \\t]*${word}([ \\t\\n]|$)`).test(line)));
  const end = next < 0 && !closed ? lines.findIndex((line) => /^ {0,3}(```+|~~~+)[ \t\n]*$/.test(line)) : next;
  return end < 0 ? content : lines.slice(0, end).join('');
}

function claimTokens(tokens: readonly Token[]): Token[] {
  return tokens.flatMap((token) => token.type === 'evenwater_claim' ? [token] : claimTokens(token.children ?? []));
}

function withoutCache({ cache: _cache, ...syntax }: NoteSyntax): Omit<NoteSyntax, 'cache'> {
  return syntax;
}

suite('properties of a note\'s structure', () => {
  test('blocks are markdown-it\'s fences with our words', () => {
    fc.assert(fc.property(randomDocument, (text) => {
      const fences = plain.parse(text, {}).filter((token) => token.type === 'fence')
        .map((token) => ({ words: token.info.trim().split(/\s+/), content: token.content, map: token.map! }))
        .filter(({ words }) => (blockWords as readonly string[]).includes(words[0]!));
      const syntax = readSyntax(text);
      assert.equal(syntax.isNote, fences.some(({ words }) => words[0] === 'protocol'));
      if (!syntax.isNote) { assert.deepEqual([syntax.blocks, syntax.claims, syntax.prose, syntax.problems], [[], [], [], []]); return; }
      assert.deepEqual(
        syntax.blocks.map(({ word, name, content, closed, startLine, endLine }) => ({ word, name, content: content.text, map: [startLine, endLine], closed })),
        fences.map(({ words, content, map }, index) => {
          const { closed } = syntax.blocks[index]!;
          return { word: words[0], name: words[1] ?? null, content: beforeNextFence(content, closed), map, closed };
        }),
      );
    }), runs);
  });

  test('places lead back to the same characters', () => {
    fc.assert(fc.property(randomDocument, (text) => {
      const { blocks, claims, prose, headings, problems } = readSyntax(text, undefined, { fileIsNote: true });
      for (const block of blocks) {
        assertSpells(text, block.content);
        assert.match(text.slice(block.range.start, block.range.end), /^(?:```|~~~)/);
        assert.equal(text.slice(block.infoRange.start, block.infoRange.end).split(/\s+/)[0], block.word);
        assert.ok(block.range.start < block.infoRange.start && block.infoRange.end <= block.range.end);
        const mark = text[block.range.start]!;
        if (block.closed) assert.equal(text.slice(block.range.end - 3, block.range.end), mark.repeat(3));
      }
      for (let index = 1; index < blocks.length; index++) assert.ok(blocks[index - 1]!.range.end <= blocks[index]!.range.start);
      for (const claim of claims) {
        assertSpells(text, claim.words);
        assertSpells(text, claim.formula);
        assert.equal(text[claim.range.start], '{');
        assert.equal(text[claim.range.end - 1], '}');
      }
      for (const run of prose) {
        if (!run.text.text.includes('±')) assertSpells(text, run.text);
        assert.ok(!/first-loss|mean\(/.test(run.text.text) || /\{/.test(text), 'no claim in prose');
      }
      for (const heading of headings) assert.ok(heading.range.start < heading.range.end || heading.text === '');
      for (const { range, fixes } of problems) {
        assert.ok(0 <= range.start && range.start <= range.end && range.end <= text.length);
        for (const { edits } of fixes) for (const edit of edits) assert.ok(0 <= edit.range.start && edit.range.start <= edit.range.end && edit.range.end <= text.length);
      }
    }), runs);
  });

  test('the editor\'s claims are the preview\'s: number, order and words', () => {
    let seen = 0;
    fc.assert(fc.property(randomDocument, (text) => {
      const shown = claimTokens(ruled.parse(text, {}));
      const { claims } = readSyntax(text);
      assert.deepEqual(
        claims.map((claim) => [claim.form, claim.words.text, claim.formula.text, claim.source]),
        shown.map((token) => { const meta = token.meta as unknown as ClaimMeta; return [meta.form, meta.words, meta.formula, meta.source]; }),
      );
      seen += claims.length;
    }), runs);
    assert.ok(seen > 150, `only ${seen} claims seen`);
  });

  test('rendering without plain braces in mind never throws, on any text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), fc.string({ unit: fc.constantFrom('`', '~', '{', '}', '|', '-', '\n', '\r', '\t', '>', ' ', '#', '=', '"', '$', '\0', '\\'), maxLength: 80 }), (a, b) => {
      const text = `${a}\n\n\`\`\`protocol\n\`\`\`\n${b}\n\n| a | b |\n|---|---|\n| ${a} | ${b} |\n`;
      const syntax = readSyntax(text, undefined, { fileIsNote: true });
      for (const block of syntax.blocks) assertSpells(text, block.content);
      for (const claim of syntax.claims) assertSpells(text, claim.words);
    }), { numRuns: 1000 });
  });

  test('reading with the syntax of another text gives the same as reading afresh', () => {
    fc.assert(fc.property(randomDocument, randomDocument, (before, text) => {
      assert.deepEqual(withoutCache(readSyntax(text, readSyntax(before))), withoutCache(readSyntax(text)));
    }), { numRuns: 400 });
  });

  test('the quick look never misses a note', () => {
    fc.assert(fc.property(randomDocument, (text) => {
      if (plain.parse(text, {}).some((token) => token.type === 'fence' && token.info.trim().split(/\s+/)[0] === 'protocol')) assert.ok(mayBeNote(text));
    }), runs);
  });
});
