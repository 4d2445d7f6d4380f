// German sentences of the methods on the plan itself: when it was fixed, what was changed since, what run it repeats, and how
// order and treatment were drawn.
import type { planWords as english } from '../en/methodsPlan.ts';
import { listedText } from './grammar.ts';

const partWords: Readonly<Record<string, string>> = {
  question: 'die Frage', hypothesis: 'die Vermutung', place: 'der Standort', tanks: 'die Beschreibung der Becken', differs: 'der beabsichtigte Unterschied', schedule: 'der Zeitplan',
  events: 'die Ereignisse', measure: 'die Messgeräte', equalise: 'die Angleichungsschritte', phases: 'die Phasen', limits: 'die Grenzen', stop: 'die Abbruchregeln', order: 'die Reihenfolge der Ablesung',
  seed: 'der Startwert', pairWithin: 'die Zusammenlegung von Messwerten', expect: 'die Erwartungen',
};
const many = new Set(['events', 'measure', 'equalise', 'phases', 'limits', 'stop', 'expect']);
const changed = (names: readonly string[]): string =>
  `${names.length > 1 || many.has(names[0] ?? '') ? 'wurden' : 'wurde'} ${listedText(names.map((name) => partWords[name] ?? name))} geändert`;

export const planWords: typeof english = {
  kept: ({ time, before }) => `Der Plan wurde am ${time}${before ? ', vor der ersten Ablesung,' : ''} versiegelt und seither nicht geändert.`,
  changed: ({ time, parts }) => `Der Plan wurde ${time === '' ? '' : `am ${time} `}versiegelt; danach ${parts.length === 0 ? 'wurde er geändert' : changed(parts)}.`,
  repeats: ({ name, digest }) => `Dieser Versuch wiederholt den von ${name}${digest === '' ? '' : ` (Plan ${digest})`}`,
  repeatsAlike: (head) => `${head} nach demselben Plan an anderen Tagen.`,
  repeatsOther: (head, parts) => `${head} an anderen Tagen. Außer den Tagen ${changed(parts)}.`,
  repeatsPlain: (head) => `${head}.`,
  alternating: () => 'Das zuerst abgelesene Becken wechselte von Ablesung zu Ablesung.',
  drawn: (seed) => `Für jede Ablesung wurde die Reihenfolge der Becken ausgelost${seed === '' ? '' : ` (Startwert ${seed})`}.`,
};
