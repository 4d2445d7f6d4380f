// What the tests of the plan share: blocks out of text, bare or inside a quote, and short ways to look at the result.
import type { Block } from '../../../src/note/syntax.ts';
import { mappedText, type Piece } from '../../../src/note/mappedText.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import type { Protocol } from '../../../src/protocol/types.ts';
import { formatInstant } from '../../../src/time/text.ts';

/** A block whose content stands at `at` in the note. */
export function blockOf(text: string, at = 0): Block {
  return {
    word: 'protocol', name: null, range: { start: Math.max(0, at - 12), end: at + text.length + 3 }, infoRange: { start: Math.max(0, at - 9), end: Math.max(0, at - 1) },
    content: mappedText(text, at), closed: true, startLine: 0, endLine: text.split('\n').length + 1,
  };
}

/** The same block inside a quote: every line has `> ` before it. */
export function quotedBlock(text: string): { block: Block; note: string } {
  const lines = text.split(/(?<=\n)/);
  let note = '> ```protocol\n';
  const pieces: Piece[] = [];
  let offset = 0;
  for (const line of lines) {
    note += '> ';
    pieces.push({ offset, document: note.length, length: line.length });
    note += line;
    offset += line.length;
  }
  note += '> ```\n';
  return { block: { ...blockOf(text), range: { start: 2, end: note.length - 1 }, infoRange: { start: 5, end: 13 }, content: { text, pieces } }, note };
}

export function read(text: string): { plan: Protocol; problems: Problem[]; codes: string[] } {
  const { protocol, problems } = readProtocol(blockOf(text));
  if (!protocol) throw new Error(`no plan: ${JSON.stringify(problems)}`);
  return { plan: protocol, problems, codes: problems.map((each) => each.code) };
}

/** A plan that has no problem, with parts replaced or added. */
export function plan(parts: Partial<Record<'place' | 'tanks' | 'schedule' | 'measure' | 'more', string>> = {}): string {
  const whole = {
    place: 'place: {latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam}',
    tanks: 'tanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm, plants: lettuce}\n  open: {role: control, like: mat, plants: none}\ndiffers: [plants]',
    schedule: 'schedule:\n  start: 2026-03-14 20:00\n  light off: 22:00\n  light on: 09:30\n  end: 2026-03-15 10:00\n  every: 30 min',
    measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1 mg/L}\n  T: {what: water temperature, unit: degC, accuracy: 0.2 degC}',
    more: '', ...parts,
  };
  return `${[whole.place, whole.tanks, whole.schedule, whole.measure, whole.more].filter((part) => part !== '').join('\n')}\n`;
}

/** Local time of the plan, without seconds. */
export function local(protocol: Protocol, instant: number | null | undefined): string | null {
  return instant == null ? null : formatInstant(instant, protocol.zone).replace(/:00(?=[+-])/, '');
}

export function phases(protocol: Protocol): string[] {
  return protocol.phases.map((phase) => `${phase.id} ${local(protocol, phase.window.from)} ${local(protocol, phase.window.to)}`);
}

/** The text with a problem's preferred fix applied; null when it has none. */
export function applyFix(text: string, problem: Problem): string | null {
  const fix = problem.fixes.find((each) => each.preferred);
  if (!fix) return null;
  return [...fix.edits].sort((a, b) => b.range.start - a.range.start).reduce((result, edit) => result.slice(0, edit.range.start) + edit.newText + result.slice(edit.range.end), text);
}
