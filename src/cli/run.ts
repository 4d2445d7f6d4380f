// Runs the command line as a process.
import { main } from './main.ts';

const output = {
  result: (text: string): void => { process.stdout.write(`${text}\n`); },
  progress: (text: string): void => { process.stderr.write(`${text}\n`); },
  colours: process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined,
};

// A reader that stops early (`| head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => { if (error.code === 'EPIPE') process.exit(0); });

process.exitCode = await main(process.argv.slice(2), output);
