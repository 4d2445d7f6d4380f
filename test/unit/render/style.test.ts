// media/preview.css is written from src/render/style.ts: run with EVENWATER_WRITE=1 after a change.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { previewStyle } from '../../../src/render/style.ts';

suite('render: stylesheet of the preview', () => {
  const file = new URL('../../../media/preview.css', import.meta.url);
  test('is what src/render/style.ts makes', () => {
    if (process.env['EVENWATER_WRITE'] === '1') {
      mkdirSync(new URL('.', file), { recursive: true });
      writeFileSync(file, previewStyle());
    }
    assert.equal(readFileSync(file, 'utf8'), previewStyle());
  });
  test('touches nothing but our own elements', () => {
    for (const [, selectors] of previewStyle().replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/(?:^|\})\s*([^{}@]+)\{/g)) {
      for (const selector of selectors!.split(',')) assert.match(selector, /\.evenwater-/, selector);
    }
  });
  test('fetches nothing', () => assert.doesNotMatch(previewStyle(), /url\(|@import/));
});
