// What there is to draw and to say of the readings in a window: panels, dark and twilight, phases, events and limits.
import { unitWords } from '../words/units.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { convert, convertible } from '../quantities/units.ts';
import type { Instant } from '../time/instant.ts';
import { protectedBy } from '../words/criteria.ts';
import { languageOf } from '../words/languages.ts';
import { decimalText, wordsOf, type ChartFacts } from './chartWords.ts';
import type { EventLine, LimitLine } from './drawing.ts';
import { panelsOf, type Panel } from './panels.ts';
import { bandsOf, statedPhases } from './shading.ts';

/** What there is to draw and to say of the readings in a window. */
export function chartFacts(note: Note, options: FigureOptions, protocol: Protocol, { from, to }: { readonly from: Instant; readonly to: Instant }): ChartFacts {
  const panels = panelsOf(note, protocol, options, { from, to });
  return { note, protocol, panels, from, to, bands: bandsOf(protocol, from, to), phases: statedPhases(protocol, from, to), events: eventsIn(protocol, panels, from, to), limits: limitsIn(protocol, panels), facets: options.facets };
}

function eventsIn(protocol: Protocol, panels: readonly Panel[], from: Instant, to: Instant): EventLine[] {
  const places = new Set(panels.flatMap((panel) => panel.drawn.flatMap((drawn) => drawn.source.places)));
  const words = wordsOf(protocol);
  const lines: EventLine[] = [];
  for (const event of protocol.events) {
    if (event.at < from || event.at > to) continue;
    const tanks = event.tanks.map((tank) => tank.value);
    if (tanks.length > 0 && !tanks.some((tank) => places.has(tank))) continue;
    const only = tanks.length > 0 && tanks.length < protocol.tanks.length;
    lines.push({ at: event.at, tanks, label: only ? words.inTanks(event.what, tanks.map((tank) => protocol.tanks.find((each) => each.id === tank)?.label ?? tank)) : event.what, lamp: false });
  }
  const nights = protocol.schedule?.lightOff.length ?? 0;
  if (nights <= 3) {
    for (const at of protocol.schedule?.lightOff ?? []) if (at >= from && at <= to) lines.push({ at, tanks: [], label: words.lightsOff, lamp: true });
    for (const at of protocol.schedule?.lightOn ?? []) if (at >= from && at <= to) lines.push({ at, tanks: [], label: words.lightsOn, lamp: true });
  }
  return lines.sort((a, b) => a.at - b.at);
}

function limitsIn(protocol: Protocol, panels: readonly Panel[]): LimitLine[] {
  const words = wordsOf(protocol);
  const lines: LimitLine[] = [];
  panels.forEach((panel, index) => {
    const quantities = new Set(panel.drawn.map((drawn) => drawn.source.quantity));
    const { unit } = panel.drawn[0]!.source;
    for (const limit of protocol.limits) {
      if (!limit.quantity || !quantities.has(limit.quantity.value)) continue;
      for (const [side, bound] of [['at least', limit.atLeast], ['at most', limit.atMost]] as const) {
        if (!bound || !convertible(bound.value.unit, unit)) continue;
        const value = convert(bound.value.value, bound.value.unit, unit);
        if (!Number.isFinite(value)) continue;
        const decimals = Math.min(3, (String(Number(value.toPrecision(6))).split('.')[1] ?? '').length);
        lines.push({ panel: index, value, side, label: words.limitFor(`${words.sides[side]} ${decimalText(value, decimals, protocol)}${unit.print === '1' || unit.kind === 'ph' ? '' : ` ${unitWords(unit.print, languageOf(protocol.language))}`}`, protectedBy(limit.for, languageOf(protocol.language))) });
      }
    }
  });
  return lines;
}
