// English sentences of the methods on the plan itself: when it was fixed, what was changed since, what run it repeats, and how
// order and treatment were drawn.
import { listedText } from './grammar.ts';

const partWords: Readonly<Record<string, string>> = {
  question: 'the question', hypothesis: 'the hypothesis', place: 'the place', tanks: 'the description of the tanks', differs: 'the intended difference', schedule: 'the schedule',
  events: 'the events', measure: 'the instruments', equalise: 'the steps of equalisation', phases: 'the phases', limits: 'the limits', stop: 'the stop rules', order: 'the reading order',
  seed: 'the seed', pairWithin: 'the pairing of readings', expect: 'the expectations',
};
const many = new Set(['events', 'measure', 'equalise', 'phases', 'limits', 'stop', 'expect']);
const were = (names: readonly string[]): string => (names.length > 1 || many.has(names[0] ?? '') ? 'were' : 'was');
const parts = (names: readonly string[]): string => listedText(names.map((name) => partWords[name] ?? name));

export const planWords = {
  kept: (args: { time: string; before: boolean }): string => `The plan was sealed on ${args.time}${args.before ? ', before the first reading,' : ''} and has not been changed since.`,
  changed: (args: { time: string; parts: readonly string[] }): string => `The plan was sealed${args.time === '' ? '' : ` on ${args.time}`}; after that ${args.parts.length === 0 ? 'it was changed' : `${parts(args.parts)} ${were(args.parts)} changed`}.`,
  repeats: (args: { name: string; digest: string }): string => `This run repeats the one of ${args.name}${args.digest === '' ? '' : ` (plan ${args.digest})`}`,
  repeatsAlike: (head: string): string => `${head} with the same plan on other dates.`,
  repeatsOther: (head: string, changed: readonly string[]): string => `${head} on other dates. Besides the dates ${parts(changed)} ${were(changed)} changed.`,
  repeatsPlain: (head: string): string => `${head}.`,
  alternating: (): string => 'The tank that was read first changed from one time to the next.',
  drawn: (seed: string): string => `For each time the order in which the tanks were read was drawn${seed === '' ? '' : ` from the seed ${seed}`}.`,

};
