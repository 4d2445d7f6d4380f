// What a chart shows, worked out to the last label: all that its specification is made from.
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Instant } from '../time/instant.ts';
import type { Drawn, Panel } from './panels.ts';
import type { Point } from './points.ts';
import type { Band, StatedPhase } from './shading.ts';
import type { Axis } from './ticks.ts';
import type { ChartLocale } from './types.ts';

export interface LimitLine { readonly panel: number; readonly value: number; readonly label: string; readonly side: 'at least' | 'at most' }
export interface EventLine { readonly at: Instant; readonly label: string; readonly lamp: boolean; /** Empty: all of them. */ readonly tanks: readonly string[] }

export interface Drawing {
  readonly panels: readonly Panel[];
  readonly axes: readonly Axis[];
  readonly from: Instant;
  readonly to: Instant;
  /** Milliseconds to add to an instant to get the axis's wall-clock number. */
  readonly offset: number;
  readonly bands: readonly Band[];
  readonly phases: readonly StatedPhase[];
  readonly events: readonly EventLine[];
  readonly limits: readonly LimitLine[];
  /** `Europe/Amsterdam, UTC+01:00`. */
  readonly zoneLabel: string;
  /** null: Vega's own, English. */
  readonly locale: ChartLocale | null;
  readonly title: string | null;
  readonly facets: FigureOptions['facets'];
  readonly width: number;
  /** What is shown beside the pointer, where the drawing stands in a page that can. */
  readonly tip: (drawn: Drawn, point: Point) => string;
}
