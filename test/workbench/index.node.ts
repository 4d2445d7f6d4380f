// Entry of the suite in the Node extension host.
import Mocha from 'mocha';
import { marked } from './report.ts';

export async function run(): Promise<void> {
  const mocha = new Mocha({ ui: 'tdd', color: false, timeout: 60_000, reporter: 'spec' });
  mocha.suite.emit('pre-require', globalThis, 'suite', mocha);
  await import('./suite/all.ts');
  await marked(Mocha.reporters.Base as never, () => new Promise<void>((resolve, reject) => {
    mocha.run((failures) => (failures > 0 ? reject(new Error(`${failures} tests failed.`)) : resolve()));
  }));
}
