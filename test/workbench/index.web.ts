// Entry of the suite in the web extension host: mocha's browser build, the same test files.
import 'mocha/mocha.js';
import { marked } from './report.ts';

declare const mocha: { setup(options: object): void; run(done: (failures: number) => void): unknown };
declare const Mocha: { reporters: { Base: { consoleLog: typeof console.log } } };

export async function run(): Promise<void> {
  await marked(Mocha.reporters.Base, async () => {
    mocha.setup({ ui: 'tdd', reporter: 'spec', color: false, timeout: 60_000 });
    await import('./suite/all.ts');
    await new Promise<void>((resolve, reject) => {
      mocha.run((failures) => (failures > 0 ? reject(new Error(`${failures} tests failed.`)) : resolve()));
    });
  });
}
