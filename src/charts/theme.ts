// Colours of charts by theme. A specification is built with colour names; `themed` puts the theme's colours in,
// so that the preview can follow a theme switch without asking for a new chart.
//
// Hues after M. Okabe and K. Ito (2008), Color Universal Design: distinct for all common kinds of colour vision. Each is
// darkened (light themes) or lightened (dark themes) until it has a contrast of 4.5:1 or more with the background, so
// that lines and labels meet WCAG 2.2, success criteria 1.4.3 and 1.4.11. Colour is never alone: each tank has a point
// shape and a dash of its own as well.
import type { ChartTheme } from './types.ts';

/** How many tanks get a hue of their own; further tanks repeat hues with other shapes and dashes. */
export const hueCount = 7;

/** What a colour is for. */
export type ColourName =
  | 'background' | 'text' | 'muted' | 'grid' | 'axis' | 'dark' | 'twilight' | 'limit' | 'event' | 'room' | 'computed'
  | 'tank-0' | 'tank-1' | 'tank-2' | 'tank-3' | 'tank-4' | 'tank-5' | 'tank-6';
export type Colours = Readonly<Record<ColourName, string>>;

const light: Colours = {
  background: '#FFFFFF', text: '#1B2430', muted: '#566070', grid: '#DCE1E7', axis: '#8A94A1', dark: '#E3E6EC', twilight: '#F0F2F6',
  limit: '#A1243B', event: '#566070', room: '#4D4D4D', computed: '#3A4250',
  'tank-0': '#0072B2', 'tank-1': '#B84C00', 'tank-2': '#007A59', 'tank-3': '#A8477F', 'tank-4': '#7A5C00', 'tank-5': '#1F6F99', 'tank-6': '#2B2B2B',
};
const dark: Colours = {
  background: '#14181D', text: '#E6E9EE', muted: '#A7B0BC', grid: '#2C333C', axis: '#707A87', dark: '#242B35', twilight: '#1C222A',
  limit: '#FF8FA0', event: '#A7B0BC', room: '#C8CDD4', computed: '#D5DAE2',
  'tank-0': '#56B4E9', 'tank-1': '#F2994A', 'tank-2': '#2FC79A', 'tank-3': '#DE93BC', 'tank-4': '#F0E442', 'tank-5': '#9CCBEA', 'tank-6': '#E8E8E8',
};
const highContrast: Colours = {
  background: '#000000', text: '#FFFFFF', muted: '#FFFFFF', grid: '#3A3A3A', axis: '#FFFFFF', dark: '#2A2A33', twilight: '#17171C',
  limit: '#FFB3BE', event: '#FFFFFF', room: '#E0E0E0', computed: '#FFFFFF',
  'tank-0': '#6CC4F5', 'tank-1': '#FFB066', 'tank-2': '#4FE0B3', 'tank-3': '#F0B3D4', 'tank-4': '#F5EB5E', 'tank-5': '#B9DDF5', 'tank-6': '#FFFFFF',
};
const highContrastLight: Colours = {
  background: '#FFFFFF', text: '#000000', muted: '#292929', grid: '#C4C4C4', axis: '#292929', dark: '#DADCE6', twilight: '#ECEEF4',
  limit: '#7A1029', event: '#292929', room: '#292929', computed: '#111111',
  'tank-0': '#00507F', 'tank-1': '#7F3400', 'tank-2': '#00543D', 'tank-3': '#7A2E5B', 'tank-4': '#574100', 'tank-5': '#0E4C6E', 'tank-6': '#000000',
};
const print: Colours = { ...light, text: '#000000', muted: '#3C3C3C', grid: '#D6D6D6', axis: '#555555', dark: '#E4E4E4', twilight: '#F1F1F1' };

const themes: Readonly<Record<ChartTheme, Colours>> = { light, dark, 'high-contrast': highContrast, 'high-contrast-light': highContrastLight, print };

/** The colours of a theme. */
export function chartColours(theme: ChartTheme): Colours {
  return themes[theme];
}

/** The name under which a colour stands in a specification that has no theme yet. */
export function colourToken(name: ColourName): string {
  return `evenwater:${name}`;
}

/** The colour of a tank by its position in the protocol; of the room where `index` is null. */
export function tankColour(index: number | null): ColourName {
  return index === null ? 'room' : `tank-${index % hueCount}` as ColourName;
}

/** Point shapes in order of tanks (Vega's names). */
const shapes = ['circle', 'square', 'triangle-up', 'diamond', 'triangle-down', 'triangle-right', 'triangle-left'] as const;
/** Dashes in order of tanks: solid, then dashes in pixels. */
const dashes: readonly (readonly number[])[] = [[], [7, 3], [2, 3], [9, 3, 2, 3], [12, 4], [4, 2], [9, 3, 2, 3, 2, 3]];

export function tankShape(index: number | null): string {
  return index === null ? 'diamond' : shapes[(index + Math.floor(index / hueCount)) % shapes.length]!;
}
export function dashOf(index: number | null): readonly number[] {
  return index === null ? [2, 3] : dashes[index % dashes.length]!;
}

/** Of series that are no single tank's: a difference of two tanks, say. Neutral in colour, told apart by shape and dash. */
const neutralShapes = ['cross', 'diamond', 'square', 'circle'] as const;
const neutralDashes: readonly (readonly number[])[] = [[], [6, 3], [2, 2], [9, 3, 2, 3]];
export const computedShape = (index: number): string => neutralShapes[index % neutralShapes.length]!;
export const computedDash = (index: number): readonly number[] => neutralDashes[index % neutralDashes.length]!;

function replaceColours(value: unknown, colour: (name: ColourName) => string): unknown {
  if (typeof value === 'string') return value.startsWith('evenwater:') ? colour(value.slice(10) as ColourName) : value;
  if (Array.isArray(value)) return value.map((each) => replaceColours(each, colour));
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, key === 'datasets' ? each : replaceColours(each, colour)]));
  }
  return value;
}

/**
 * Replaces every colour name (`evenwater:…`) in a specification by the theme's colour.
 * @param own colours that go before the theme's, for example the editor's background
 */
export function themed(
  specification: Readonly<Record<string, unknown>>, theme: ChartTheme, own: Partial<Colours> = {},
): Record<string, unknown> {
  const colours: Colours = { ...themes[theme], ...own };
  return replaceColours(specification, (name) => colours[name] ?? colours.text) as Record<string, unknown>;
}

/** Like `themed`, with CSS variables (`--evenwater-tank-0`) that fall back on the light theme's colours. */
export function withVariables(specification: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return replaceColours(specification, (name) => `var(--evenwater-${name}, ${light[name] ?? light.text})`) as Record<string, unknown>;
}
