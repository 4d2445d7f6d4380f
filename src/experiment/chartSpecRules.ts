// How the values of a `spec:` are checked: each rule turns a piece of the YAML into JSON, or raises a problem at its place.
import { fix, problem, type Problem, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import type { TextNode, TreeNode } from '../protocol/planTree.ts';

/** Gives the checked value, or undefined after a problem. */
export type Rule = (node: TreeNode, checker: SpecChecker) => unknown;

/** What a place wants: a kind of value, with the words or bounds it takes. */
export interface Wanted { readonly wants: 'keys' | 'list' | 'text' | 'number' | 'colour' | 'field' | 'name' | 'one-of' | 'mark' | 'truth'; readonly known?: readonly string[] }

/** Keys that other drawings have and this one refuses, by the reason. */
const refusals: Readonly<Record<string, readonly string[]>> = {
  loads: ['data', 'url', 'datasets', 'lookup', 'image', 'loader', 'projection'],
  code: ['params', 'param', 'expr', 'signal', 'signals', 'calculate', 'test', 'condition', 'labelExpr', 'selection', 'window', 'joinaggregate', 'pivot', 'events', 'on', 'bind', 'select', 'init', 'update'],
  links: ['href', 'cursor'],
  settings: ['config', 'usermeta', 'embedOptions', 'theme', 'autosize', 'padding', 'background', 'view', 'style', 'patch', 'actions'],
  format: ['format', 'formatType', 'labelFormat', 'timeFormat', 'numberFormat'],
  axis: ['resolve'],
  size: ['facet', 'row', 'column', 'repeat', 'concat', 'hconcat', 'vconcat', 'columns', 'spacing', 'spec'],
  words: ['description', 'name', 'aria', 'ariaRole', 'key', 'tooltip'],
};
const refusalOf = (key: string): string | null => Object.keys(refusals).find((reason) => refusals[reason]!.includes(key)) ?? null;

const short = (value: string): string => (value.length <= 40 ? value : `${value.slice(0, 39)}…`);

export class SpecChecker {
  readonly problems: Problem[] = [];
  private readonly fields: Set<string>;

  constructor(fields: readonly string[]) { this.fields = new Set(fields); }

  /** Raises a problem about a value; gives undefined, so that a rule can end with it. */
  wants(range: SourceRange, key: string, value: string, { wants, known = [] }: Wanted): undefined {
    const close = value === '' ? null : nearestName(value, known);
    this.problems.push(problem('spec-value', range, { key, value: short(value), wants, known: known.slice(0, 24).join(', ') },
      close ? [fix('replace-with', { text: close }, [{ range, newText: close }], { preferred: true })] : []));
    return undefined;
  }

  /** A key that the place does not take: refused with its reason, or unknown. */
  refuse(key: string, range: SourceRange, known: readonly string[]): void {
    const reason = refusalOf(key);
    if (reason !== null) {
      this.problems.push(problem('spec-refused', range, { key, reason }));
      return;
    }
    const close = nearestName(key, known);
    this.problems.push(problem('spec-key', range, { key, nearest: close ?? '', known: known.join(', ') },
      close ? [fix('replace-with', { text: close }, [{ range, newText: close }], { preferred: true })] : []));
  }

  field(node: TreeNode): unknown {
    const name = node.kind === 'text' ? node.value.trim() : '';
    return this.fields.has(name) ? name : this.wants(node.range, 'field', name, { wants: 'field', known: [...this.fields] });
  }

  /** A field that a transform makes: a plain name, so that it can stand in nothing but a field's place. */
  madeField(node: TreeNode): unknown {
    const name = node.kind === 'text' ? node.value.trim() : '';
    if (!/^[A-Za-z][A-Za-z0-9_]{0,40}$/.test(name)) return this.wants(node.range, 'as', name, { wants: 'name' });
    this.fields.add(name);
    return name;
  }
}

/** The scalar that a text stands for: quoted text stays text, the rest is read as JSON would. */
function scalar(node: TextNode): string | number | boolean | null {
  const value = node.value.trim();
  if (node.style !== 'plain') return node.value;
  if (value === '' || value === 'null' || value === '~') return null;
  if (value === 'true' || value === 'false') return value === 'true';
  return /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(value) && Number.isFinite(Number(value)) ? Number(value) : value;
}

const textOf = (node: TreeNode): string => (node.kind === 'text' ? node.value.trim() : '');

/** One of the rules: the first that a value passes; the last one's problem where it passes none. */
export const either = (...rules: readonly Rule[]): Rule => (node, checker) => {
  for (const [index, rule] of rules.entries()) {
    const before = checker.problems.length;
    const value = rule(node, checker);
    // What is wrong inside a map or list is said there: another rule would only say that a text was wanted.
    if (checker.problems.length === before || index === rules.length - 1 || (node.kind !== 'text' && checker.problems.slice(before).some((each) => each.range.start !== node.range.start))) return value;
    checker.problems.length = before;
  }
  return undefined;
};

export const keys = (rules: Readonly<Record<string, Rule>>): Rule => {
  const known = Object.keys(rules);
  return (node, checker) => {
    if (node.kind !== 'map') return checker.wants(node.range, '', textOf(node), { wants: 'keys', known });
    const made: Record<string, unknown> = {};
    for (const { key, keyRange, value } of node.entries) {
      const rule = Object.hasOwn(rules, key) ? rules[key] : undefined;
      if (!rule) checker.refuse(key, keyRange, known);
      else {
        const found = rule(value, checker);
        if (found !== undefined) made[key] = found;
      }
    }
    return made;
  };
};

export const listOf = (rule: Rule, most: number): Rule => (node, checker) => (node.kind === 'list' && node.items.length <= most
  ? node.items.map((item) => rule(item, checker)) : checker.wants(node.range, '', textOf(node), { wants: 'list' }));

export const oneOf = (known: readonly string[]): Rule => (node, checker) => (node.kind === 'text' && known.includes(node.value.trim())
  ? node.value.trim() : checker.wants(node.range, '', textOf(node), { wants: 'one-of', known }));

export const numberIn = (low: number, high: number): Rule => (node, checker) => {
  const value = node.kind === 'text' ? scalar(node) : null;
  return typeof value === 'number' && value >= low && value <= high ? value
    : checker.wants(node.range, '', textOf(node), { wants: 'number', known: [String(low), String(high)] });
};

export const truth: Rule = (node, checker) => {
  const value = node.kind === 'text' ? scalar(node) : null;
  return typeof value === 'boolean' ? value : checker.wants(node.range, '', textOf(node), { wants: 'truth', known: ['true', 'false'] });
};

export const nothing: Rule = (node, checker) => (node.kind === 'text' && scalar(node) === null ? null : checker.wants(node.range, '', textOf(node), { wants: 'one-of', known: ['null'] }));

/** Words for readers: they are drawn as text and are never anything else. */
export const text = (longest: number): Rule => (node, checker) => (node.kind === 'text' && node.value.trim() !== '' && node.value.length <= longest
  ? node.value.trim() : checker.wants(node.range, '', textOf(node), { wants: 'text' }));

/** `#1f77b4`, or a colour by its English name; no gradients, patterns or addresses. */
export const colour: Rule = (node, checker) => (node.kind === 'text' && /^(?:#[0-9a-f]{3,8}|[a-z]{3,24})$/i.test(node.value.trim())
  ? node.value.trim() : checker.wants(node.range, '', textOf(node), { wants: 'colour' }));
