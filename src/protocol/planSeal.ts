// Seals a plan, and says what was changed since: one hash over all facts, and a short check for each part of the plan.
// The same checks, with times counted from the start, say what a repeat changed of the plan that it repeats.
import { wallNumber } from '../time/civil.ts';
import type { Instant } from '../time/instant.ts';
import { formatInstant, readDateTime } from '../time/text.ts';
import { compatibleInstant } from '../time/zone.ts';
import { planFacts, protocolDigest } from './digest.ts';
import { sha256Of } from './sha256.ts';
import type { Placed, Protocol } from './types.ts';

/** Parts of the plan in the order of the checks. Never reordered: only added to, at the end. */
export const planParts = [
  'question', 'hypothesis', 'place', 'tanks', 'differs', 'schedule', 'events', 'measure', 'equalise', 'phases', 'limits', 'stop', 'order', 'seed', 'pairWithin', 'expect',
] as const;
export type PlanPart = typeof planParts[number];

/** Characters of each part's check: one change in 65 536 would go unnamed, never unnoticed (the whole hash sees it). */
const checkLength = 4;

const hashOf = (value: unknown): string => sha256Of(JSON.stringify(value ?? null));

function checksOf(protocol: Protocol, relative: boolean): string {
  const facts = planFacts(protocol, relative ? protocol.schedule?.start ?? null : null) as Readonly<Record<string, unknown>>;
  return planParts.map((part) => hashOf(facts[part]).slice(0, checkLength)).join('');
}

const sealPattern = /sha256:\s*([0-9a-f]{64})(?:[.:]([0-9a-f]+))?/i;

/** Parts whose check is another than that of the text. Parts that an older text does not know are left out. */
function changedParts(protocol: Protocol, checks: string, relative: boolean): PlanPart[] {
  const now = checksOf(protocol, relative);
  return planParts.filter((_, index) => {
    const then = checks.slice(index * checkLength, (index + 1) * checkLength);
    return then.length === checkLength && then.toLowerCase() !== now.slice(index * checkLength, (index + 1) * checkLength);
  });
}

/** The value of `sealed` for the plan as it stands: time, hash over the facts, checks of the parts. */
export function planSealText(protocol: Protocol, at: Instant): string {
  const time = formatInstant(at, protocol.zone).replace(/:\d\d(?=[+-]\d\d:\d\d$|Z$)/u, '');
  return `${time} sha256:${protocolDigest(protocol)}.${checksOf(protocol, false)}`;
}

export interface PlanDeviations {
  /** When the plan was sealed, as the seal has it; null when that cannot be read. */
  readonly sealedAt: Instant | null;
  readonly range: Placed<string>['range'];
  /** Parts that were changed since. Empty with `unnamed`: something changed, and the seal has no checks that tell what. */
  readonly parts: readonly PlanPart[];
  readonly unnamed: boolean;
}

/** What was changed since the plan was sealed; null without a seal that can be read, or when nothing was. */
export function planDeviations(protocol: Protocol): PlanDeviations | null {
  const seal = protocol.sealed;
  const match = seal && sealPattern.exec(seal.value);
  if (!seal || !match || match[1]!.toLowerCase() === protocolDigest(protocol)) return null;
  const parts = match[2] ? changedParts(protocol, match[2], false) : [];
  return { sealedAt: sealedTime(protocol), range: seal.range, parts, unnamed: parts.length === 0 };
}

/** When the plan was sealed; null without a seal or when its time cannot be read. */
export function sealedTime(protocol: Pick<Protocol, 'sealed' | 'zone'>): Instant | null {
  const written = protocol.sealed ? readDateTime(protocol.sealed.value.trim().split(/\s+/)[0] ?? '') : null;
  if (!written) return null;
  const { wall, offset } = written;
  if (offset === null) return compatibleInstant(wall, protocol.zone);
  return wallNumber(wall) - offset;
}

/** The value of `repeats` in a plan that repeats this one: the note's name, the plan's hash, checks of its parts. */
export function repeatsText(protocol: Protocol, name: string): string {
  return `${name} sha256:${protocolDigest(protocol)}.${checksOf(protocol, true)}`;
}

export interface RepeatFacts {
  /** The earlier note as the plan names it. */
  readonly name: string;
  readonly digest: string | null;
  /** Parts of the plan that are not as they were, dates aside; null when the link has no checks to tell by. */
  readonly changed: readonly PlanPart[] | null;
}

/** What the plan says about the run that it repeats; null when it repeats none. */
export function repeatFacts(protocol: Protocol): RepeatFacts | null {
  const text = protocol.repeats?.value.trim();
  if (!text) return null;
  const match = sealPattern.exec(text);
  const name = (match ? text.slice(0, match.index) : text).trim().replace(/[,;]$/, '');
  return { name, digest: match?.[1]?.toLowerCase() ?? null, changed: match?.[2] ? changedParts(protocol, match[2], true) : null };
}
