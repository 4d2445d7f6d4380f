// Every key and value of a plan with its entry of the schema, for whoever needs their places: names, colours, stretches.
import type { Note } from '../experiment/types.ts';
import type { MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import { Collector } from '../protocol/collector.ts';
import { readTree, type TreeNode } from '../protocol/planTree.ts';
import { protocolSchema, schemaKey, type SchemaKey } from '../protocol/schema.ts';

export interface PlanText { readonly path: readonly string[]; readonly entry: SchemaKey; readonly text: MappedText }
export interface PlanKey { readonly path: readonly string[]; readonly key: string; readonly keyRange: SourceRange; readonly entry: SchemaKey; /** Of the map that holds the key. */ readonly holder: SchemaKey }
export interface PlanWalk { readonly keys: readonly PlanKey[]; readonly texts: readonly PlanText[]; /** Of lists, maps and texts, outer ones first. */ readonly nodes: readonly SourceRange[] }

const empty: PlanWalk = { keys: [], texts: [], nodes: [] };

/** Walks the note's plan; empty without one. */
export function walkPlan(note: Note): PlanWalk {
  const block = note.syntax.blocks.find((each) => each.word === 'protocol');
  const tree = block ? readTree(block.content, new Collector()) : null;
  if (!tree) return empty;
  const keys: PlanKey[] = [];
  const texts: PlanText[] = [];
  const nodes: SourceRange[] = [];
  const visit = (node: TreeNode, entry: SchemaKey, path: readonly string[]): void => {
    nodes.push(node.range);
    if (node.kind === 'text') texts.push({ path, entry, text: node.mapped });
    else if (node.kind === 'list') for (const item of node.items) visit(item, entry, path);
    else {
      for (const each of node.entries) {
        const found = schemaKey(entry, each.key);
        if (!found) continue;
        const inner = [...path, each.key];
        keys.push({ path: inner, key: each.key, keyRange: each.keyRange, entry: found, holder: entry });
        nodes.push({ start: each.keyRange.start, end: Math.max(each.keyRange.end, each.value.range.end) });
        visit(each.value, found, inner);
      }
    }
  };
  visit(tree, protocolSchema, []);
  return { keys, texts, nodes };
}
