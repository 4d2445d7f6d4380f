// Property tests run from one seed, so that a failure on one machine is a failure on all. SEED=random explores.
import fc from 'fast-check';

if (process.env['SEED'] !== 'random') fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 20260411) });
