// The stylesheet of blocks and claims, shared by preview and post, and the colours it uses as CSS variables.
// Text, so that the pure rooms can put it into a post; media/evenwater.css is written from it (a test holds them equal).
import { chartColours, type Colours } from '../charts/theme.ts';
import type { ChartTheme } from '../charts/types.ts';

/** Colours of the page beside those of charts. */
const page: Readonly<Record<'light' | 'dark' | 'high-contrast' | 'high-contrast-light' | 'print', Readonly<Record<string, string>>>> = {
  light: { night: '#B7BECA', dusk: '#DDDBD0', card: '#F7F8FA', line: '#D5DAE1', strong: '#97A1AE', accent: '#0B5C86', good: '#0F6B3F', bad: '#A1243B', 'bad-ground': '#FCEEF0', warn: '#7A4B00', 'warn-ground': '#FDF5E4', code: '#EEF1F4', day: '#FFF6D6', planned: '#E3F0F8' },
  dark: { night: '#0B0E12', dusk: '#33342C', card: '#1B2026', line: '#343C46', strong: '#66717E', accent: '#7CC4EE', good: '#6FD3A0', bad: '#FF8FA0', 'bad-ground': '#3A1D24', warn: '#F2C572', 'warn-ground': '#352A14', code: '#232A32', day: '#5C5528', planned: '#17323F' },
  'high-contrast': { night: '#3D3D4A', dusk: '#26262E', card: '#000000', line: '#FFFFFF', strong: '#FFFFFF', accent: '#7CD0FF', good: '#8CF0B8', bad: '#FFB3BE', 'bad-ground': '#000000', warn: '#FFD98A', 'warn-ground': '#000000', code: '#1A1A1A', day: '#000000', planned: '#000000' },
  'high-contrast-light': { night: '#C3C8D4', dusk: '#E2E4EA', card: '#FFFFFF', line: '#292929', strong: '#292929', accent: '#00446B', good: '#00451F', bad: '#7A1029', 'bad-ground': '#FFFFFF', warn: '#4F3000', 'warn-ground': '#FFFFFF', code: '#F0F0F0', day: '#FFFFFF', planned: '#FFFFFF' },
  print: { night: '#BDBDBD', dusk: '#DEDEDE', card: '#FFFFFF', line: '#B5B5B5', strong: '#777777', accent: '#000000', good: '#000000', bad: '#000000', 'bad-ground': '#FFFFFF', warn: '#000000', 'warn-ground': '#FFFFFF', code: '#F2F2F2', day: '#FFFFFF', planned: '#F2F2F2' },
};

/** `--evenwater-text: #1B2430; …` for a theme. */
export function colourVariables(theme: ChartTheme): string {
  const colours: Readonly<Record<string, string>> = { ...chartColours(theme) satisfies Colours, ...page[theme] };
  return Object.entries(colours).map(([name, colour]) => `--evenwater-${name}: ${colour};`).join(' ');
}

/** Rules for everything that src/render makes. */
export const blockStyle = `
.evenwater-block { font-family: var(--evenwater-sans, system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif); font-size: 0.875rem; line-height: 1.45; color: var(--evenwater-text); margin: 1.6rem 0; }
.evenwater-block p { margin: 0.5rem 0; }
.evenwater-hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }

.evenwater-claim { text-decoration: underline; text-decoration-color: var(--evenwater-strong); text-decoration-thickness: 1px; text-underline-offset: 0.2em; }
.evenwater-condition { text-decoration-style: dashed; }
.evenwater-stated { text-decoration-style: dotted; }
.evenwater-unbroken { white-space: nowrap; }
.evenwater-unchecked { text-decoration-style: dotted; text-decoration-thickness: 2px; }
.evenwater-mark { font-family: system-ui, sans-serif; font-size: 0.68em; line-height: 0; margin-left: 0.06em; color: var(--evenwater-muted); cursor: help; user-select: none; }
.evenwater-mark a { color: inherit; text-decoration: none; padding: 0.5em 0.05em; }
.evenwater-claim.evenwater-loud { background: var(--evenwater-bad-ground); color: var(--evenwater-bad); text-decoration: underline wavy var(--evenwater-bad); font-weight: 600; padding: 0 0.15em; }
.evenwater-claim.evenwater-unfilled { background: var(--evenwater-warn-ground); color: var(--evenwater-warn); text-decoration: underline dashed var(--evenwater-warn); }
.evenwater-complaint { font-family: system-ui, sans-serif; font-size: 0.82em; font-weight: 600; color: var(--evenwater-bad); background: var(--evenwater-bad-ground); border: 1px solid var(--evenwater-bad); border-radius: 0.25rem; padding: 0 0.3rem; margin: 0 0 0 0.3rem; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
.evenwater-unfilled + .evenwater-mark + .evenwater-complaint, .evenwater-unfilled + .evenwater-complaint { color: var(--evenwater-warn); background: var(--evenwater-warn-ground); border-color: var(--evenwater-warn); }

.evenwater-problems { list-style: none; margin: 0 0 0.8rem; padding: 2px 0 0; }
.evenwater-problem { display: flex; gap: 0.6rem; margin: 0 0 0.3rem; padding: 0.5rem 0.75rem; border-left: 4px solid var(--evenwater-bad); background: var(--evenwater-bad-ground); border-radius: 0 0.3rem 0.3rem 0; }
.evenwater-problem.evenwater-warning { border-left-color: var(--evenwater-warn); background: var(--evenwater-warn-ground); }
.evenwater-sign { flex: none; width: 1.25rem; height: 1.25rem; border-radius: 50%; border: 1.5px solid var(--evenwater-bad); color: var(--evenwater-bad); font-size: 0.75rem; font-weight: 700; line-height: 1.15rem; text-align: center; }
.evenwater-to-source { all: unset; font-weight: 700; cursor: pointer; text-decoration: underline; text-underline-offset: 0.15em; margin-right: 0.3em; }
.evenwater-to-source:focus-visible { outline: 2px solid currentcolor; outline-offset: 2px; }
.evenwater-warning .evenwater-sign { border-color: var(--evenwater-warn); color: var(--evenwater-warn); }
.evenwater-empty { color: var(--evenwater-muted); font-style: italic; }
.evenwater-source-text { overflow-x: auto; padding: 0.75rem; background: var(--evenwater-code); border-radius: 0.3rem; }

.evenwater-card { border: 1px solid var(--evenwater-line); border-radius: 0.6rem; background: var(--evenwater-card); padding: 1rem 1.25rem 1.1rem; }
.evenwater-label { font-size: 0.72rem; font-weight: 650; letter-spacing: 0.09em; text-transform: uppercase; color: var(--evenwater-muted); }
.evenwater-card > .evenwater-label { margin: 0; }
.evenwater-question { font-size: 1.12rem; font-weight: 600; line-height: 1.35; text-wrap: balance; }
.evenwater-block .evenwater-question { margin: 0.2rem 0 0.4rem; }
.evenwater-place, .evenwater-preface, .evenwater-differs-words { color: var(--evenwater-muted); }
.evenwater-block h3.evenwater-heading { font-family: inherit; font-size: 0.875rem; font-weight: 650; line-height: 1.3; margin: 1.2rem 0 0.35rem; padding: 0; border: 0; color: inherit; }
.evenwater-block ul, .evenwater-block ol { margin: 0.3rem 0; padding-left: 1.3rem; }
.evenwater-block li { margin: 0.2rem 0; }
.evenwater-block code { font-family: ui-monospace, SFMono-Regular, Menlo, Consolas, "Liberation Mono", monospace; font-size: 0.9em; padding: 0.08em 0.3em; border-radius: 0.25em; background: var(--evenwater-code); color: inherit; overflow-wrap: anywhere; }
.evenwater-tag { display: inline-block; margin-left: 0.4em; padding: 0 0.45em; border: 1px solid var(--evenwater-line); border-radius: 1em; font-size: 0.72rem; font-weight: 500; line-height: 1.35rem; color: var(--evenwater-muted); white-space: nowrap; background: var(--evenwater-background); }
.evenwater-planned { border-color: var(--evenwater-accent); color: var(--evenwater-accent); }
.evenwater-undeclared { border-color: var(--evenwater-warn); border-style: dashed; color: var(--evenwater-warn); font-weight: 650; }
.evenwater-tank-mark { display: inline-block; width: 0.7em; height: 0.7em; margin-right: 0.4em; vertical-align: -0.02em; }
.evenwater-id { margin-left: 0.4em; font-weight: 400; }
.evenwater-state { font-size: 0.82rem; color: var(--evenwater-muted); }
.evenwater-kept { color: var(--evenwater-good); }
.evenwater-crossed { color: var(--evenwater-bad); font-weight: 650; }
.evenwater-none { color: var(--evenwater-muted); }
.evenwater-why { color: var(--evenwater-muted); }

.evenwater-timeline { margin: 0.6rem 0 0.2rem; }
.evenwater-timeline svg { display: block; overflow: visible; font-family: inherit; font-size: 11px; fill: var(--evenwater-text); }
.evenwater-bar { fill: var(--evenwater-day); stroke: var(--evenwater-strong); stroke-width: 1; }
.evenwater-band-dark { fill: var(--evenwater-night); }
.evenwater-band-twilight { fill: var(--evenwater-dusk); }
.evenwater-phase { font-weight: 600; }
.evenwater-slot { stroke: var(--evenwater-text); stroke-width: 1; }
.evenwater-mark-lamp { stroke: var(--evenwater-muted); stroke-width: 1; stroke-dasharray: 2 2; }
.evenwater-mark-event { stroke: var(--evenwater-text); stroke-width: 1.4; }
.evenwater-label-lamp { fill: var(--evenwater-muted); font-style: italic; }
.evenwater-tick { fill: var(--evenwater-muted); font-variant-numeric: tabular-nums; }

.evenwater-scroll { overflow-x: auto; max-width: 100%; container-type: inline-size; }
.evenwater-scroll:focus-visible { outline: 2px solid var(--evenwater-accent); outline-offset: 2px; }
.evenwater-block table { border-collapse: collapse; width: 100%; margin: 0; font-size: 0.82rem; line-height: 1.35; font-variant-numeric: tabular-nums lining-nums; display: table; }
.evenwater-block caption { caption-side: top; text-align: left; padding: 0 0 0.5rem; font-size: 0.82rem; color: var(--evenwater-muted); text-wrap: pretty; }
.evenwater-caption { display: block; position: sticky; left: 0; max-width: min(100%, 100cqw, 48rem); }
.evenwater-number-label { font-weight: 650; color: var(--evenwater-text); }
.evenwater-block th, .evenwater-block td { padding: 0.28rem 0.55rem; border: 0; border-bottom: 1px solid var(--evenwater-line); text-align: left; vertical-align: top; background: none; }
.evenwater-block tr { background: none; border: 0; }
.evenwater-block thead th, .evenwater-block thead td { font-weight: 600; vertical-align: bottom; border-bottom: 1px solid var(--evenwater-strong); }
.evenwater-block thead tr:first-child:not(:last-child) th { border-bottom-color: var(--evenwater-line); }
.evenwater-block tbody th { font-weight: 500; }
.evenwater-block tbody tr:last-child > * { border-bottom: 1px solid var(--evenwater-strong); }
.evenwater-block td.evenwater-number { text-align: right; white-space: nowrap; }
.evenwater-table { margin: 1.1rem 0; }
.evenwater-table th.evenwater-time { white-space: nowrap; }
.evenwater-readings th.evenwater-group, .evenwater-readings td.evenwater-group { border-left: 1px solid var(--evenwater-line); }
.evenwater-readings thead tr:last-child th { text-align: right; font-weight: 500; color: var(--evenwater-muted); white-space: nowrap; }
.evenwater-readings thead th { padding-top: 0.2rem; padding-bottom: 0.2rem; }
.evenwater-step { color: var(--evenwater-muted); }
.evenwater-difference { font-weight: 600; }
.evenwater-date th { padding-top: 0.55rem; font-weight: 600; color: var(--evenwater-muted); }
.evenwater-skipped td, .evenwater-missed td { text-align: center; color: var(--evenwater-muted); font-style: italic; }
.evenwater-number .evenwater-flag, .evenwater-time .evenwater-flag { display: block; margin-left: 0; }
.evenwater-number .evenwater-sign-flag { display: inline; margin-left: 0.15em; font-size: inherit; }
.evenwater-flag { margin-left: 0.35em; font-size: 0.72rem; color: var(--evenwater-muted); font-weight: 400; white-space: nowrap; }
.evenwater-note-letter { margin-left: 0.15em; line-height: 0; color: var(--evenwater-muted); font-style: italic; font-weight: 400; }
.evenwater-table-notes { font-size: 0.78rem; color: var(--evenwater-muted); }
.evenwater-block .evenwater-table-notes { margin: 0.4rem 0 0; padding-left: 1.4rem; }
.evenwater-differs > * { background: var(--evenwater-planned) !important; }
.evenwater-tanks th[scope="col"] { min-width: 8rem; }
.evenwater-role { display: block; font-weight: 400; color: var(--evenwater-muted); font-size: 0.78rem; }
.evenwater-tanks tbody th { white-space: nowrap; }
.evenwater-tanks tbody th .evenwater-tag { margin-left: 0.3em; }
.evenwater-values .evenwater-how code { background: none; padding: 0; color: var(--evenwater-muted); }
.evenwater-caution { display: block; margin-top: 0.15rem; font-size: 0.78rem; color: var(--evenwater-muted); text-wrap: pretty; }
.evenwater-values th code { white-space: nowrap; }
.evenwater-values td.evenwater-number { font-weight: 600; }
.evenwater-block td.evenwater-loud, .evenwater-block span.evenwater-loud { color: var(--evenwater-bad); white-space: normal; text-align: left; }
.evenwater-summary table, .evenwater-what-if table { font-size: 0.78rem; }
.evenwater-table.evenwater-summary th, .evenwater-table.evenwater-summary td, .evenwater-what-if th, .evenwater-what-if td { padding-left: 0.35rem; padding-right: 0.35rem; }
.evenwater-summary thead tr:last-child th, .evenwater-what-if thead tr:last-child th { text-align: right; }
.evenwater-summary tbody th { min-width: 6.5rem; text-wrap: balance; }
.evenwater-summary td.evenwater-none { color: var(--evenwater-muted); }
.evenwater-summary-last > * { border-top: 1px solid var(--evenwater-strong); }
/* A table wider than its place shows a shadow at the side where more of it is; its first column stays. */
.evenwater-summary .evenwater-scroll { background: linear-gradient(to left, var(--evenwater-background) 40%, transparent) right / 3rem 100% no-repeat local, linear-gradient(to left, var(--evenwater-line), transparent) right / 1rem 100% no-repeat scroll; }
.evenwater-summary tbody th, .evenwater-summary thead tr:first-child > th:first-child { position: sticky; left: 0; z-index: 1; background: var(--evenwater-background); }
@container (max-width: 44rem) {
  .evenwater-table.evenwater-summary th, .evenwater-table.evenwater-summary td { padding-left: 0.25rem; padding-right: 0.25rem; }
  .evenwater-summary tbody th { min-width: 4.6rem; hyphens: auto; }
  .evenwater-summary thead th { overflow-wrap: break-word; hyphens: auto; }
  .evenwater-block .evenwater-summary td.evenwater-number { white-space: normal; }
  .evenwater-summary td.evenwater-number data { display: inline-block; }
}
.evenwater-limits data { white-space: nowrap; }
.evenwater-limits td.evenwater-number { text-align: left; white-space: normal; min-width: 7.5rem; }
.evenwater-limits table { font-size: 0.78rem; }
.evenwater-limits th, .evenwater-limits td { padding-left: 0.35rem; padding-right: 0.35rem; }
.evenwater-source { color: var(--evenwater-muted); min-width: 9rem; }

.evenwater-figure { margin: 1rem 0; }
.evenwater-figure figcaption { margin: 0.4rem 0 0; font-size: 0.82rem; color: var(--evenwater-muted); text-wrap: pretty; }
.evenwater-drawing { display: block; max-width: 100%; height: auto; }
.evenwater-chart { contain: layout paint; }
.evenwater-block summary { cursor: pointer; color: var(--evenwater-muted); font-size: 0.82rem; }
.evenwater-block summary:focus-visible { outline: 2px solid var(--evenwater-accent); outline-offset: 2px; }
.evenwater-alternative { margin: 0.2rem 0; font-size: 0.82rem; color: var(--evenwater-muted); }
.evenwater-cautions { margin-top: 1.1rem; border-top: 1px solid var(--evenwater-line); padding-top: 0.7rem; }
.evenwater-preparation { margin-top: 1.1rem; border-top: 1px solid var(--evenwater-line); padding-top: 0.7rem; }
.evenwater-block ul.evenwater-design { list-style: none; padding: 0; margin: 0.3rem 0; }
.evenwater-block li.evenwater-design-point { display: flex; gap: 0.6rem; margin: 0.45rem 0; }
.evenwater-design-point .evenwater-sign { border-color: var(--evenwater-strong); color: var(--evenwater-muted); }
.evenwater-design-point.evenwater-warning .evenwater-sign { border-color: var(--evenwater-warn); color: var(--evenwater-warn); }
.evenwater-design-point .evenwater-why { font-size: 0.82rem; text-wrap: pretty; }
.evenwater-checklist td:nth-child(2) { white-space: nowrap; }
.evenwater-block ul.evenwater-checklist { list-style: none; padding-left: 0.1rem; }
.evenwater-checklist li { padding-left: 1.35rem; text-indent: -1.35rem; }
.evenwater-checklist li::before { content: ""; display: inline-block; box-sizing: border-box; width: 0.8em; height: 0.8em; margin-right: 0.55rem; border: 1.2px solid var(--evenwater-strong); border-radius: 0.15em; vertical-align: -0.05em; text-indent: 0; }
.evenwater-alarm { margin: 0.5rem 0 1.1rem; padding: 0.9rem 1.1rem; border: 4px solid var(--evenwater-bad); border-radius: 0.4rem; background: var(--evenwater-bad-ground); font-size: 1rem; }
.evenwater-alarm p { margin: 0.25rem 0; }
.evenwater-alarm-head { font-size: 1.45rem; font-weight: 800; line-height: 1.2; color: var(--evenwater-bad); }
.evenwater-alarm-do { font-size: 1.2rem; font-weight: 700; line-height: 1.3; }
.evenwater-alarm.evenwater-written-up { border-width: 2px; font-size: 0.875rem; }
.evenwater-written-up .evenwater-alarm-head { font-size: 1.05rem; }
.evenwater-written-up .evenwater-alarm-do { font-size: inherit; font-weight: 400; }
.evenwater-label-sun { fill: var(--evenwater-muted); font-style: italic; }
.evenwater-mark-sun { stroke: var(--evenwater-muted); stroke-width: 1; stroke-dasharray: 1 3; }
.evenwater-typed-phase { stroke: var(--evenwater-text); stroke-width: 1.2; fill: none; }
.evenwater-cite { font-style: normal; }
`;

/** The stylesheet of the Markdown preview: the editor's own colours where it has them. */
export function previewStyle(): string {
  const scope = (classes: string): string => `${classes} .evenwater-block, ${classes} .evenwater-claim, ${classes} .evenwater-mark, ${classes} .evenwater-complaint`;
  const own = '--evenwater-background: var(--vscode-editor-background); --evenwater-text: var(--vscode-editor-foreground);';
  // Grounds and lines follow whatever theme the editor wears.
  const mix = (share: number): string => `color-mix(in srgb, var(--vscode-editor-foreground) ${share}%, var(--vscode-editor-background))`;
  const mixed = `--evenwater-card: ${mix(4)}; --evenwater-code: ${mix(9)}; --evenwater-line: ${mix(18)};`;
  return [
    '/* Written from src/render/style.ts; change it there. */',
    `${scope('body')} { ${colourVariables('light')} }`,
    `${scope('body.vscode-light')} { ${own} ${mixed} }`,
    `${scope('body.vscode-dark')} { ${colourVariables('dark')} ${own} ${mixed} }`,
    `${scope('body.vscode-high-contrast')} { ${colourVariables('high-contrast')} ${own} }`,
    `${scope('body.vscode-high-contrast-light')} { ${colourVariables('high-contrast-light')} ${own} }`,
    blockStyle.trim(),
    '@media print { .evenwater-alternative, .evenwater-readings-tables > summary { display: none; } }',
    '',
  ].join('\n');
}
