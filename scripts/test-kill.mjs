// Kills the command line while it logs, 200 times: no acknowledged row may be missing and no file torn.
// `node scripts/test-kill.mjs [KILLS]`; needs dist/cli.js. About a minute and a half on two quiet cores.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { killLog } from '../test/kill/killLog.mjs';
import { root } from './install.mjs';

const cli = process.env.EVENWATER_CLI ?? path.join(root, 'dist/cli.js');
const kills = Number(process.argv[2] ?? 200);
if (!existsSync(cli)) { console.log(`${cli} is missing: node scripts/build.mjs makes it.`); console.log('0 passed, 1 failed'); process.exit(1); }

const started = Date.now();
const { failures, count } = await killLog(cli, kills, { say: (words) => console.log(`   ${words}`) });
for (const each of failures) console.log(`not ok: ${each}`);
console.log(`${count.killed} kills (${count.aimed} of them after the journal was begun), ${count.finished} runs that finished first, `
  + `${count.acknowledged} rows acknowledged, ${count.writtenUnsaid} written but killed before they were acknowledged, `
  + `${count.journaled} killed with the row in the journal only, ${count.replayed} runs that replayed it; ${Math.round((Date.now() - started) / 1000)} s`);
// A run whose kills never fell between journal and note would prove nothing.
const proves = count.killed >= kills && (kills < 100 || (count.journaled > 0 && count.replayed > 0));
if (!proves) console.log('not ok: too few kills fell where they matter.');
console.log(`${count.killed} passed, ${failures.length + (proves ? 0 : 1)} failed`);
process.exit(failures.length > 0 || !proves ? 1 : 0);
