// Fonts, lines and colours of a chart: of ours, and of one that the author specified.
import { small } from './frame.ts';
import { colourToken } from './theme.ts';
import type { ChartLocale } from './types.ts';

type Json = Record<string, unknown>;

const font = 'system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';

/** Fonts, lines and colours that every chart has. */
export function chartConfig(locale: ChartLocale | null): Json {
  return {
    font,
    view: { stroke: null, fill: null },
    concat: { spacing: 46 },
    axis: {
      labelFont: font, labelFontSize: small, labelColor: colourToken('muted'), gridColor: colourToken('grid'), gridWidth: 0.7,
      domainColor: colourToken('axis'), tickColor: colourToken('axis'), labelPadding: 5, tickSize: 4,
    },
    axisY: { domain: false, ticks: false, labelPadding: 8 },
    axisX: { labelLineHeight: 13, grid: true, gridOpacity: 0.6 },
    text: { font },
    aria: false,
    ...(locale === null ? {} : { locale: { number: locale.number, time: locale.time } }),
  };
}

/** Fonts and colours of the texts and marks of somebody's own specification. */
export function ownChartConfig(locale: ChartLocale | null, narrow: boolean): Json {
  const base = chartConfig(locale);
  return {
    ...base, axis: { ...(base['axis'] as Json), titleFont: font, titleFontSize: small, titleColor: colourToken('text'), titleFontWeight: 500 },
    title: { font, fontSize: 13.5, fontWeight: 600, color: colourToken('text') }, legend: { labelFont: font, labelColor: colourToken('text'), titleFont: font, titleColor: colourToken('text'), ...(narrow ? { orient: 'bottom' } : {}) },
    axisXBand: { labelAngle: 0 }, axisXPoint: { labelAngle: 0 }, mark: { color: colourToken('tank-0') }, text: { font, color: colourToken('text') }, rule: { color: colourToken('axis') },
  };
}
