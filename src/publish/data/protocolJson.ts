// The plan as JSON, as its author wrote it, and the JSON Schema of any plan, made from the one schema.
import type { Note } from '../../experiment/types.ts';
import { Collector } from '../../protocol/collector.ts';
import { readTree, type TreeNode } from '../../protocol/planTree.ts';
import { protocolSchema, schemaKey, type SchemaKey } from '../../protocol/schema.ts';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

function valueJson(node: TreeNode, schema: SchemaKey | null): Json {
  switch (node.kind) {
    case 'map': return Object.fromEntries(node.entries.map((entry) => [entry.key, valueJson(entry.value, schema && schemaKey(schema, entry.key))]));
    case 'list': return node.items.map((item) => valueJson(item, schema));
    case 'text': {
      const text = node.value.trim();
      return schema?.type === 'number' && /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
    }
  }
}

/** The protocol block as JSON; keys and texts as written, coordinates as numbers. */
export function protocolJson(note: Note): Json {
  const block = note.syntax.blocks.find((each) => each.word === 'protocol');
  const tree = block && readTree(block.content, new Collector());
  const plan = tree?.kind === 'map' ? valueJson(tree, protocolSchema) as { readonly [key: string]: Json } : {};
  return { $schema: './protocol.schema.json', ...plan };
}

function one(schema: SchemaKey): Json {
  const common = { description: schema.description };
  switch (schema.type) {
    case 'map': return {
      type: 'object', ...common, additionalProperties: false,
      ...(schema.keys?.some((key) => key.required) ? { required: schema.keys.filter((key) => key.required).map((key) => key.key) } : {}),
      properties: Object.fromEntries((schema.keys ?? []).map((key) => [key.key, of(key)])),
    };
    case 'named': return { type: 'object', ...common, additionalProperties: schema.entry ? of(schema.entry) : true };
    case 'number': return { type: ['number', 'string'], ...common };
    case 'choice': case 'yes-no': return schema.values ? { type: 'string', enum: [...schema.values], ...common } : { type: 'string', ...common };
    default: return { type: 'string', ...common, ...(schema.example === '' ? {} : { examples: [schema.example] }) };
  }
}

function of(schema: SchemaKey): Json {
  if (schema.list === 'many') return { description: schema.description, anyOf: [{ type: 'array', items: one(schema) }, one(schema)] };
  if (schema.list === 'one-or-many') return { description: schema.description, anyOf: [one(schema), { type: 'array', items: one(schema) }] };
  return one(schema);
}

/** JSON Schema (draft 07) of a plan. */
export function protocolJsonSchema(): Json {
  const plan = one(protocolSchema) as { readonly [key: string]: Json };
  // A tank that takes another's keys over, and a plan in the making, need not repeat what is required.
  return {
    $schema: 'http://json-schema.org/draft-07/schema#', title: 'Plan of an aquarium experiment', ...plan,
    properties: { $schema: { type: 'string' }, ...(plan['properties'] as { readonly [key: string]: Json }) },
  };
}
