// The plan's times with their problems: the step between the instant grammar and the collector.
import { fix } from '../problems/problem.ts';
import type { Instant, Zone } from '../time/instant.ts';
import { replaceWith, type Collector } from './collector.ts';
import { readInstantText, readWindowText, type InstantFault, type InstantScope } from './instants.ts';
import type { TextNode } from './planTree.ts';
import type { Placed, Window } from './types.ts';

/** Says what is wrong with a time. `node` is the whole text, `key` its key. */
function reportFault(found: InstantFault, node: TextNode, key: string, collector: Collector): void {
  const { range } = node;
  switch (found.code) {
    case 'bad-time':
      collector.add('bad-time', range, { key, text: found.args.text ?? '' });
      break;
    case 'bad-time-name': {
      const mended = found.replacement === null ? null : node.value.replace(found.args.name ?? '', found.replacement);
      collector.add('bad-time', range, { key, text: found.args.name ?? '' }, mended === null ? [] : [replaceWith(range, mended)]);
      break;
    }
    case 'time-name-has-none':
      collector.add('time-name-has-none', range, { key, name: found.args.name });
      break;
    case 'time-name-has-several':
      collector.add('time-name-has-several', range, { key, name: found.args.name, names: found.args.names },
        found.args.names.slice(0, 6).map((name) => fix('replace-with', { text: name }, [{ range, newText: node.value.replace(found.args.name, name) }])));
      break;
    default:
      collector.add(found.code, range, { key, ...found.args },
        found.replacements.map((text) => fix('replace-with', { text }, [{ range, newText: node.value.replace(found.args.time ?? '', text) }])));
  }
}

export function readInstant(node: TextNode, key: string, scope: InstantScope, collector: Collector): Placed<Instant> | null {
  const { instant, fault } = readInstantText(node.value, scope);
  if (fault) reportFault(fault, node, key, collector);
  return instant === null ? null : { value: instant, range: node.range };
}

export function readWindow(node: TextNode, key: string, scope: InstantScope, phase: (name: string) => Window | null, collector: Collector): Placed<Window> | null {
  const { window, faults } = readWindowText(node.value, scope, phase);
  for (const each of faults) reportFault(each, node, key, collector);
  if (!window) return null;
  if (window.to < window.from) {
    collector.add('window-backwards', node.range, { key, text: node.value.trim() });
    return null;
  }
  return { value: window, range: node.range };
}

/** A scope that knows only the given names. */
export function scopeOf(zone: Zone, after: Instant | null, names: Readonly<Record<string, readonly Instant[]>>, options: Partial<Pick<InstantScope, 'strictlyAfter' | 'dates'>> = {}): InstantScope {
  const numbered = (name: string): readonly Instant[] | null => {
    const match = /^(.+)-(\d+)$/.exec(name);
    const all = match ? names[match[1]!] : undefined;
    const one = all?.[Number(match?.[2] ?? 0) - 1];
    return one === undefined ? null : [one];
  };
  return { zone, after, names: (name) => (Object.hasOwn(names, name) ? names[name]! : numbered(name)), knownNames: Object.keys(names), ...options };
}
