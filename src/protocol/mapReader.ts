// Reads one map of the plan against its schema entry: unknown, missing and doubled keys, values of the wrong shape.
import { fix, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import { quoted, replaceWith, shorten, type Collector } from './collector.ts';
import type { ListNode, MapEntry, MapNode, TextNode, TreeNode } from './planTree.ts';
import { schemaKey, type SchemaKey } from './schema.ts';
import type { Placed } from './types.ts';

const isEmpty = (node: TreeNode): boolean => node.kind === 'text' && node.value.trim() === '';

export class MapReader {
  readonly schema: SchemaKey;
  readonly collector: Collector;
  /** Where problems of the whole map stand: the key above it. */
  readonly place: SourceRange;
  readonly node: MapNode;
  private readonly found = new Map<string, MapEntry>();

  constructor(node: MapNode, schema: SchemaKey, place: SourceRange, collector: Collector, optional: readonly string[] = []) {
    this.node = node;
    this.schema = schema;
    this.place = place;
    this.collector = collector;
    const seen = new Map<string, MapEntry>();
    for (const entry of node.entries) {
      const before = seen.get(entry.key);
      if (before) {
        collector.add('duplicate-key', entry.keyRange, { key: entry.key }, [], [{ range: before.keyRange, message: 'first-written-here', args: { key: entry.key } }]);
        continue;
      }
      seen.set(entry.key, entry);
      if (schema.type === 'named' || schemaKey(schema, entry.key)) this.found.set(entry.key, entry);
      else this.reportUnknown(entry);
    }
    for (const key of schema.keys ?? []) {
      const entry = this.found.get(key.key);
      if (key.required && !optional.includes(key.key) && (!entry || isEmpty(entry.value))) {
        collector.add('missing-key', entry?.keyRange ?? place, { key: key.key, of: schema.type === 'map' && schema.key !== 'protocol' ? schema.key.toLowerCase() : 'plan', example: `${key.key}: ${key.example.replace(/\n/g, ' ').trim()}` });
      }
    }
  }

  private reportUnknown(entry: MapEntry): void {
    const known = (this.schema.keys ?? []).map((key) => key.key);
    const nearest = nearestName(entry.key, known.filter((key) => !this.node.entries.some((other) => other.key === key)));
    this.collector.add('unknown-key', entry.keyRange, { key: shorten(entry.key, 40), nearest: nearest ?? '', known },
      nearest ? [replaceWith(entry.keyRange, nearest)] : []);
    // A misspelt key still says what it says: it is read as the nearest one, so that nothing else falls with it.
    if (nearest && !this.found.has(nearest)) this.found.set(nearest, { ...entry, key: nearest });
  }

  /** All entries, in order; of a `named` map those with the author's names. */
  entries(): MapEntry[] { return [...this.found.values()]; }

  entry(key: string): MapEntry | null {
    const entry = this.found.get(key);
    return entry && !isEmpty(entry.value) ? entry : null;
  }

  keyRange(key: string): SourceRange { return this.found.get(key)?.keyRange ?? this.place; }

  wrongType(node: TreeNode, key: string, expected: string): void {
    this.collector.add('wrong-type', node.range, { key, expected, found: node.kind });
  }

  /** The key's text as a node, or null when absent, empty or no text. */
  textNode(key: string): TextNode | null {
    const entry = this.entry(key);
    return entry ? this.asText(entry.value, key) : null;
  }

  asText(node: TreeNode, key: string): TextNode | null {
    if (node.kind === 'text') return node;
    if (node.kind === 'list' && node.items.every((item) => item.kind === 'text')) {
      // `plants: [moss, fern]` where one text is wanted: said, and read as one text.
      this.wrongType(node, key, 'text');
      const value = node.items.map((item) => (item as TextNode).value).join(', ');
      return { kind: 'text', value, mapped: { text: value, pieces: [{ offset: 0, document: node.range.start, length: 0 }] }, range: node.range, style: 'plain' };
    }
    if (node.kind === 'map' && node.entries.length <= 1 && node.entries.every((entry) => isEmpty(entry.value))) {
      const written = `{${node.entries.map((entry) => entry.key).join('')}}`;
      this.collector.add('needs-quotes', node.range, { key, text: written, reason: 'start' }, [replaceWith(node.range, quoted(written), { safe: true })]);
    } else this.wrongType(node, key, 'text');
    return null;
  }

  text(key: string): Placed<string> | null {
    const node = this.textNode(key);
    return node ? { value: node.value.trim(), range: node.range } : null;
  }

  /** A map under a key. */
  map(key: string): MapReader | null {
    const entry = this.entry(key);
    const schema = schemaKey(this.schema, key);
    return entry && schema ? this.asMap(entry.value, schema, entry.keyRange) : null;
  }

  asMap(node: TreeNode, schema: SchemaKey, place: SourceRange, optional: readonly string[] = []): MapReader | null {
    if (node.kind === 'map') return new MapReader(node, schema, place, this.collector, optional);
    this.wrongType(node, schema.key, 'map');
    return null;
  }

  /** The maps of a list; a single map stands for a list of one. `optional` names the keys that an item may lack. */
  maps(key: string, optional: (item: MapNode) => readonly string[] = () => []): { reader: MapReader; range: SourceRange }[] {
    const entry = this.entry(key);
    const schema = schemaKey(this.schema, key);
    if (!entry || !schema) return [];
    const items = entry.value.kind === 'list' ? entry.value.items : [entry.value];
    const result: { reader: MapReader; range: SourceRange }[] = [];
    for (const item of items) {
      if (isEmpty(item)) continue;
      if (item.kind === 'map') {
        const place = item.entries[0]?.keyRange ?? item.range;
        result.push({ reader: new MapReader(item, schema, place, this.collector, optional(item)), range: item.range });
      } else this.wrongType(item, key, 'maps');
    }
    return result;
  }

  /** The texts of a list; a single text stands for a list of one, with commas read as separators where they can only be that. */
  texts(key: string, splitCommas = false): TextNode[] {
    const entry = this.entry(key);
    if (!entry) return [];
    const items = entry.value.kind === 'list' ? (entry.value satisfies ListNode).items : [entry.value];
    const result: TextNode[] = [];
    for (const item of items) {
      if (isEmpty(item)) continue;
      if (item.kind !== 'text') { this.wrongType(item, key, 'texts'); continue; }
      if (splitCommas && entry.value.kind === 'text' && item.value.includes(',')) {
        const parts = item.value.split(',').map((part) => part.trim()).filter((part) => part !== '');
        this.collector.add('wrong-type', item.range, { key, expected: 'texts', found: 'text' }, [
          fix('replace-with', { text: `[${parts.join(', ')}]` }, [{ range: item.range, newText: `[${parts.join(', ')}]` }], { preferred: true, safe: true })]);
        result.push(...parts.map((part) => ({ ...item, value: part })));
      } else result.push(item);
    }
    return result;
  }
}
