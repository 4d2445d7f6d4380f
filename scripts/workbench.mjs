// `npm run workbench`: serves the samples in a full editor in the browser, at a loopback address, with the extension loaded.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { installMissing, root, run } from './install.mjs';
import { prepareWorkbench } from './workbench/install.mjs';
import { pageAddress, startServer } from './workbench/server.mjs';

installMissing();
if (run(process.execPath, ['scripts/build.mjs']) !== 0) process.exit(1);
const prepared = prepareWorkbench({ browser: false });
if (prepared.reason) {
  console.error(`The workbench cannot run here: ${prepared.reason}.`);
  process.exit(1);
}

const folder = path.join(root, 'samples');
const file = 'overnight-oxygen.tank.md';
const server = await startServer({ port: Number(process.env.PORT) || undefined, settings: { 'workbench.reduceMotion': 'auto' } });
console.log(`The samples in an editor, with Evenwater loaded from this folder:\n\n  ${pageAddress(server, { folder, file: existsSync(path.join(folder, file)) ? file : undefined, extension: root })}\n\nOpen the preview with Ctrl+K V. End with Ctrl+C.`);
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void server.stop().then(() => process.exit(0)));
