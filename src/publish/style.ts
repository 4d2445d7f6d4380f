// The stylesheet of a post: reading column, dark mode, phone, print. Self-contained: no font or image is fetched.
import { blockStyle, colourVariables } from '../render/style.ts';

export const postStyle = `
:root { color-scheme: light dark; ${colourVariables('light')}
  --evenwater-serif: Charter, "Bitstream Charter", "Sitka Text", Cambria, "Noto Serif", "DejaVu Serif", Georgia, serif;
  --evenwater-sans: system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", "Noto Sans", Arial, sans-serif; }
@media (prefers-color-scheme: dark) { :root { ${colourVariables('dark')} } }
@media (prefers-contrast: more) { :root { ${colourVariables('high-contrast-light')} } }
@media (prefers-contrast: more) and (prefers-color-scheme: dark) { :root { ${colourVariables('high-contrast')} } }
* { box-sizing: border-box; }
html { font-size: 100%; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; scroll-behavior: smooth; }
@media (prefers-reduced-motion: reduce) { html { scroll-behavior: auto; } }
body { margin: 0; background: var(--evenwater-background); color: var(--evenwater-text); font-family: var(--evenwater-serif); font-size: 1.0625rem; line-height: 1.62; overflow-wrap: break-word; font-kerning: normal; text-rendering: optimizeLegibility; }
.skip { position: absolute; left: -100vw; top: 0; padding: 0.6rem 1rem; background: var(--evenwater-background); color: var(--evenwater-accent); font-family: var(--evenwater-sans); z-index: 1; }
.skip:focus { left: 0; }
main { max-width: 44rem; margin: 0 auto; padding: clamp(1.5rem, 5vw, 4rem) 1.15rem 4rem; }
a { color: var(--evenwater-accent); text-underline-offset: 0.15em; text-decoration-thickness: 1px; }
a:focus-visible { outline: 2px solid var(--evenwater-accent); outline-offset: 2px; border-radius: 2px; }
p { margin: 0 0 1.05rem; hanging-punctuation: first; text-wrap: pretty; }
h1, h2, h3, h4, h5, h6 { font-family: var(--evenwater-sans); font-weight: 680; line-height: 1.22; letter-spacing: -0.011em; text-wrap: balance; }
h1 { font-size: clamp(1.7rem, 1.2rem + 2.4vw, 2.5rem); letter-spacing: -0.021em; margin: 0 0 0.7rem; }
h2 { font-size: 1.42rem; margin: 2.7rem 0 0.8rem; }
h3 { font-size: 1.12rem; margin: 2rem 0 0.6rem; }
h4, h5, h6 { font-size: 1rem; margin: 1.6rem 0 0.5rem; }
header { margin: 0 0 2.2rem; }
.byline { font-family: var(--evenwater-sans); font-size: 0.9rem; color: var(--evenwater-muted); margin: 0; }
.byline span + span::before { content: "·"; margin: 0 0.5em; }
ul, ol { padding-left: 1.4rem; margin: 0 0 1.05rem; }
li { margin: 0.2rem 0; }
blockquote { margin: 1.3rem 0; padding: 0 0 0 1.1rem; border-left: 3px solid var(--evenwater-line); color: var(--evenwater-muted); }
pre, code { font-family: ui-monospace, SFMono-Regular, Menlo, Consolas, "Liberation Mono", monospace; }
code { font-size: 0.86em; padding: 0.08em 0.3em; border-radius: 0.25em; background: var(--evenwater-code); }
pre { overflow-x: auto; padding: 0.9rem 1rem; background: var(--evenwater-code); border-radius: 0.4rem; font-size: 0.82rem; line-height: 1.5; }
pre code { padding: 0; background: none; font-size: inherit; }
hr { border: 0; border-top: 1px solid var(--evenwater-line); margin: 2.4rem 0; }
img { max-width: 100%; height: auto; }
main > article > table, .evenwater-written table { border-collapse: collapse; font-family: var(--evenwater-sans); font-size: 0.86rem; font-variant-numeric: tabular-nums lining-nums; margin: 0 0 1.3rem; display: block; overflow-x: auto; max-width: 100%; }
.evenwater-written table th, .evenwater-written table td { padding: 0.3rem 0.7rem; border-bottom: 1px solid var(--evenwater-line); text-align: left; vertical-align: top; }
.evenwater-written table thead th { border-bottom-color: var(--evenwater-strong); font-weight: 600; }
.evenwater-claim { font-variant-numeric: lining-nums; }
.evenwater-mark { cursor: auto; }
.evenwater-mark a:hover { color: var(--evenwater-accent); text-decoration: underline; }
.evenwater-claim:target, li:target { background: var(--evenwater-planned); border-radius: 0.2rem; }
.evenwater-prose { font-family: var(--evenwater-serif); font-size: 1.0625rem; line-height: 1.62; }
.evenwater-block .evenwater-prose p { margin: 0 0 1.05rem; }
.evenwater-prose data { text-decoration: underline; text-decoration-color: var(--evenwater-line); text-decoration-thickness: 1px; text-underline-offset: 0.2em; }
.evenwater-block-methods, .evenwater-block-results { margin: 0 0 1.05rem; }
.working { font-family: var(--evenwater-sans); font-size: 0.82rem; line-height: 1.45; margin: -0.65rem 0 1.15rem; color: var(--evenwater-muted); }
li > .working { margin: 0.1rem 0 0.4rem; }
.working summary { cursor: pointer; width: max-content; max-width: 100%; }
.working summary:hover { color: var(--evenwater-accent); }
.working[open] { border-left: 2px solid var(--evenwater-line); padding-left: 0.8rem; }
.working ol { list-style: none; padding: 0; margin: 0.4rem 0; }
.how { font-family: var(--evenwater-sans); font-size: 0.86rem; line-height: 1.5; }
.how ol { padding: 0; list-style: none; }
.how-number { display: grid; grid-template-columns: 2rem 1fr; gap: 0 0.4rem; padding: 0.55rem 0; border-bottom: 1px solid var(--evenwater-line); margin: 0; }
.how-number > .n { color: var(--evenwater-muted); font-variant-numeric: tabular-nums; }
.how-number q, .working q { font-family: var(--evenwater-serif); font-size: 1.06em; color: var(--evenwater-text); }
.how-number code, .working code { overflow-wrap: anywhere; }
.how-number .mark { font-size: 0.72rem; color: var(--evenwater-muted); border: 1px solid var(--evenwater-line); border-radius: 1em; padding: 0 0.5em; margin-left: 0.4em; white-space: nowrap; }
.how-number .words, .working .words { color: var(--evenwater-muted); }
.how-number ul { list-style: none; margin: 0.15rem 0 0; padding: 0 0 0 0.9rem; border-left: 2px solid var(--evenwater-line); color: var(--evenwater-muted); font-size: 0.92em; }
.how-number ul.remarks { border-left-style: dotted; }
.legend { display: grid; grid-template-columns: max-content 1fr; gap: 0.15rem 1rem; font-size: 0.86rem; margin: 0.8rem 0 1.2rem; }
.legend dt, .legend dd { margin: 0; }
.legend dd { color: var(--evenwater-muted); }
.references { font-size: 0.92rem; line-height: 1.5; }
.data { font-family: var(--evenwater-sans); font-size: 0.86rem; line-height: 1.5; }
.hash { font-family: ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; font-size: 0.8rem; overflow-wrap: anywhere; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: 0.25rem 1.2rem; margin: 0 0 1.2rem; }
.facts dt { color: var(--evenwater-muted); }
.facts dd { margin: 0; }
details.whole > summary { cursor: pointer; color: var(--evenwater-accent); }
.raw th, .raw td { white-space: nowrap; }
.raw thead th { font-weight: 600; }
.raw td.remark { white-space: normal; min-width: 10rem; }
footer { margin-top: 3rem; padding-top: 1rem; border-top: 1px solid var(--evenwater-line); font-family: var(--evenwater-sans); font-size: 0.8rem; color: var(--evenwater-muted); }
.narrow { display: none; }
@media screen and (min-width: 64rem) {
  .evenwater-table.evenwater-readings, .evenwater-table.raw, .evenwater-wide { width: max-content; min-width: 100%; max-width: min(92vw, 62rem); position: relative; left: 50%; transform: translateX(-50%); }
  .evenwater-table.evenwater-readings > .evenwater-scroll, .evenwater-table.raw > .evenwater-scroll, .evenwater-wide .evenwater-scroll { container-type: normal; }
  .evenwater-card.evenwater-wide { width: min(92vw, 62rem); }
  .evenwater-card.evenwater-wide :is(p, li, svg) { max-width: 44rem; }
}
${blockStyle.trim()}
@media screen and (max-width: 34rem) {
  body { font-size: 1rem; }
  main { padding-left: 0.95rem; padding-right: 0.95rem; }
  .evenwater-card { padding: 0.85rem 0.9rem; margin-left: -0.35rem; margin-right: -0.35rem; }
  .wide { display: none; }
  .narrow { display: block; }
  .evenwater-tanks th[scope="col"] { min-width: 0; }
  .evenwater-tanks tbody th { white-space: normal; }
  .evenwater-tanks tbody th .evenwater-tag { margin-left: 0; }
  .evenwater-card .evenwater-scroll { margin-right: 0; padding-right: 0; }
  .evenwater-card th, .evenwater-card td { padding-left: 0.35rem; padding-right: 0.35rem; }
  .evenwater-scroll { margin-right: -0.95rem; padding-right: 0.95rem; }
  .facts, .legend { grid-template-columns: 1fr; gap: 0; }
  .facts dd, .legend dd { margin-bottom: 0.5rem; }
  .evenwater-readings th.evenwater-time { position: sticky; left: 0; background: var(--evenwater-background); }
}
@page { size: auto; margin: 18mm 16mm 20mm; }
.evenwater-checklist td:nth-child(2) { white-space: nowrap; }
.evenwater-checklist td:last-child { min-width: 15rem; }
.evenwater-files ul { margin-top: 0.3rem; }
@media print {
  :root { color-scheme: light; ${colourVariables('print')} }
  html { font-size: 87.5%; }
  body { font-size: 10.5pt; line-height: 1.48; }
  main { max-width: none; padding: 0; }
  .skip, .working, .evenwater-alternative, details.whole { display: none; }
  .wide { display: block !important; }
  .narrow { display: none !important; }
  .evenwater-scroll { overflow: visible; margin-right: 0; padding-right: 0; container-type: normal; }
  .evenwater-table.evenwater-readings, .evenwater-table.raw, .evenwater-wide { width: 100%; max-width: 100%; position: static; transform: none; }
  .evenwater-block table { font-size: 8pt; }
  .evenwater-block th, .evenwater-block td { padding: 1.5pt 3pt; }
  .evenwater-readings-tables > summary { display: none; }
  .evenwater-readings-tables::details-content, .evenwater-cautions::details-content { content-visibility: visible; display: block; }
  h1, h2, h3, h4, caption, .evenwater-heading { break-after: avoid; }
  figure, .evenwater-card li, tr, .how-number { break-inside: avoid; }
  thead { display: table-header-group; }
  p, li { orphans: 3; widows: 3; }
  a { color: inherit; text-decoration: none; }
  article a[href^="http"]::after { content: " (" attr(href) ")"; font-size: 0.85em; color: var(--evenwater-muted); }
  .evenwater-timeline svg, .evenwater-drawing, .evenwater-differs > *, .evenwater-bar { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
`;
