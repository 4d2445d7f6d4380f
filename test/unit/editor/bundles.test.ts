// What the build makes for the editor: one web bundle without Node, and a loader that costs other Markdown previews nothing.
import { deepEqual, ok } from 'node:assert/strict';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';

const built = (file: string) => {
  ok(existsSync(file), `${file} is not built: run \`npm run build\` first`);
  return file;
};
const required = (file: string) => [...new Set([...readFileSync(built(file), 'utf8').matchAll(/\brequire\("([^"]+)"\)/g)].map((match) => match[1]))];

suite('bundles', () => {
  test('the web host gets one file that asks for nothing but the editor', () => {
    deepEqual(required('dist/web/extension.cjs'), ['vscode']);
    ok(!/\bimport\("(?!data:)/.test(readFileSync('dist/web/extension.cjs', 'utf8')));
  });

  test('the drawing libraries ship once for the Node host and the preview', () => {
    deepEqual(required('dist/extension.cjs').filter((name) => name?.startsWith('.')), ['./preview/chart.js']);
    const libraries = createRequire(path.resolve('dist/extension.cjs'))('./preview/chart.js') as Record<string, Record<string, unknown>>;
    const drawn = [libraries.vega?.View, libraries.vegaLite?.compile, libraries.vegaInterpreter?.expressionInterpreter];
    deepEqual(drawn.map((each) => typeof each), ['function', 'function', 'object']);
  });

  test('the chart code leaves nothing on the window', () => {
    const page = vm.createContext({ setTimeout, clearTimeout, setInterval, clearInterval, performance, console, structuredClone });
    const before = vm.runInContext('Object.getOwnPropertyNames(globalThis)', page) as string[];
    vm.runInContext(readFileSync(built('dist/preview/chart.js'), 'utf8'), page);
    deepEqual(vm.runInContext('Object.getOwnPropertyNames(globalThis)', page), before);
  });

  test('the loader of the preview is at most 10 kB', () => {
    ok(statSync(built('dist/preview/loader.js')).size <= 10_000);
  });

  test('no code is made from text in the preview', () => {
    // The chart library holds its code generator, but is told to interpret: see src/preview/chartBox.ts.
    const box = readFileSync('src/preview/chartBox.ts', 'utf8');
    ok(box.includes('ast: true') && box.includes('expr: expressionInterpreter') && box.includes('actions: false'));
    ok(!/\beval\(|new Function/.test(readFileSync(built('dist/preview/loader.js'), 'utf8')));
  });

  test('nothing of ours is put on the window', () => {
    for (const file of ['loader', 'chart', 'chartBox', 'theme', 'tooltip']) {
      ok(!/(?:window|globalThis|self)\.[A-Za-z_$]+\s*=[^=]/.test(readFileSync(`src/preview/${file}.ts`, 'utf8')), file);
    }
  });
});
