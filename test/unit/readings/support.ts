// A small plan and readings blocks made by hand, so that these tests stand on their own room.
import { mappedText } from '../../../src/note/mappedText.ts';
import type { Block } from '../../../src/note/syntax.ts';
import type { MeasuredQuantity, Protocol, Tank } from '../../../src/protocol/types.ts';
import { parseUnit } from '../../../src/quantities/units.ts';
import { numberValue } from '../../../src/quantities/value.ts';
import type { FileContents, ReadingsTable } from '../../../src/readings/types.ts';
import { readTable } from '../../../src/readings/readTable.ts';
import { hour, minute } from '../../../src/time/instant.ts';
import { loadZone } from '../../../src/time/zone.ts';

const nowhere = { start: 0, end: 0 };
const placed = <T>(value: T) => ({ value, range: nowhere });

function tank(id: string, index: number): Tank {
  return {
    id, idRange: nowhere, index, role: null, group: null, label: id, size: null, waterDepth: null, volume: null, runningSince: null,
    plants: null, animals: null, equipment: null, salinity: null, facts: new Map(), like: null, written: new Map(),
  };
}

export function measured(id: string, what: string, unit: string | null, rest: Partial<MeasuredQuantity> & { accuracyOf?: number; resolutionOf?: number } = {}): MeasuredQuantity {
  const parsed = unit === null ? null : parseUnit(unit)!;
  const { accuracyOf, resolutionOf, ...given } = rest;
  return {
    id, idRange: nowhere, what: placed(what), unit: parsed, unitRange: null, with: null, in: [],
    accuracy: accuracyOf === undefined ? null : numberValue(accuracyOf, parsed!),
    resolution: resolutionOf === undefined ? null : numberValue(resolutionOf, parsed!),
    calibrated: null, level: null, scale: null, ...given,
  };
}

export const start = Date.parse('2026-03-14T20:00:00+01:00');

export function plan(changes: Partial<Protocol> = {}): Protocol {
  const end = start + 14 * hour;
  const slots = Array.from({ length: 29 }, (_, index) => start + index * 30 * minute);
  return {
    range: { start: 0, end: 0 }, title: null, question: null, hypothesis: null, by: null, language: 'en', licence: null,
    place: { name: null, latitude: null, longitude: null, elevation: null, daylight: true },
    zone: loadZone('Europe/Amsterdam')!, tanks: [tank('mat', 0), tank('open', 1)], differs: [],
    schedule: { start, startRange: nowhere, end, sampling: [{ every: 30 * minute, from: start, to: end }], slots, lightOff: [], lightOn: [], range: nowhere },
    events: [],
    measure: [
      measured('DO', 'dissolved oxygen', 'mg/L', { accuracyOf: 0.1, resolutionOf: 0.01 }), measured('T', 'water temperature', 'degC', { accuracyOf: 0.2 }),
      measured('P', 'air pressure', 'hPa', { in: [placed('room')] }), measured('mood', 'behaviour', null, { scale: ['calm', 'restless', 'at surface', 'gasping'] }),
    ],
    equalise: [], phases: [], limits: [], stopRules: [], order: [], seed: null, pairWithin: 0, repeats: null, accepted: [], sealed: null, sun: [],
    ...changes,
  };
}

/** A block whose content starts at offset `at` of an imagined note. */
export function block(text: string, at = 0): Block {
  return {
    word: 'readings', name: null, range: { start: at, end: at + text.length }, infoRange: nowhere, content: mappedText(text, at),
    closed: true, startLine: 0, endLine: 0,
  };
}

export function read(text: string, options: { protocol?: Protocol; previous?: ReadingsTable | null; files?: FileContents; at?: number } = {}) {
  const result = readTable(block(text, options.at ?? 0), 0, options.protocol ?? plan(), options.previous ?? null, options.files ?? new Map());
  const shown = (range: { start: number; end: number }): string => text.slice(range.start - (options.at ?? 0), range.end - (options.at ?? 0));
  return { ...result, shown, codes: result.problems.map((problem) => problem.code) };
}
