// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/html_style.h"

namespace ohmwright::sheet {

// No "<" and no "&" in here: as XML the style element is parsed like any other text.
QByteArrayView htmlStyle()
{
    return R"css(
:root { color-scheme: light dark;
  --paper: #F6F3EC; --panel: #FCFAF5; --ink: #1F2A33; --mute: #5A646C; --line: #C9C7BF;
  --blue: #1F5A8A; --holds: #2C6A3F; --tight: #6B5900; --fails: #9E2A2B; --unknown: #5B4A8A;
  --hv: #C94A08; --hv-text: #1F2A33; }
@media (prefers-color-scheme: dark) { :root {
  --paper: #1B2126; --panel: #232B31; --ink: #ECE8DF; --mute: #A7AFB5; --line: #444D54;
  --blue: #82B6DF; --holds: #86C294; --tight: #D8C36A; --fails: #EE8F8F; --unknown: #B9A8EA;
  --hv: #FF8A3D; --hv-text: #FF8A3D; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink);
  font: 1rem/1.5 Inter, "Segoe UI", system-ui, -apple-system, "Liberation Sans", sans-serif;
  font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
main, header, footer { max-width: 62rem; margin: 0 auto; padding: 0 1.5rem; }
header { padding-top: 2.5rem; }
h1, h2, h3, h4 { line-height: 1.2; font-weight: 600; text-wrap: balance; }
h1 { font-size: 2.2rem; margin: 0 0 .3rem; }
h2 { font-size: 1.5rem; margin: 3rem 0 1rem; padding-top: .6rem; border-top: 2px solid var(--ink); }
h3 { font-size: 1.15rem; margin: 2rem 0 .6rem; }
h4 { font-size: 1rem; margin: 1.5rem 0 .4rem; }
p { margin: .6rem 0; max-width: 46rem; }
a { color: var(--blue); }
a:focus-visible, .scroll:focus-visible { outline: 2px solid var(--blue); outline-offset: 2px; }
.subtitle { font-size: 1.15rem; color: var(--mute); margin: 0 0 1rem; }
.imprint { max-width: none; display: flex; flex-wrap: wrap; gap: .2rem 2rem; margin: 0; padding: .6rem 0;
  border-top: 1px solid var(--line); border-bottom: 1px solid var(--line);
  color: var(--mute); font-size: .875rem; }
.muted, .evidence, .note, .label { color: var(--mute); }
.evidence, .note { display: block; font-size: .8125rem; line-height: 1.35; }
.exact { font-family: ui-monospace, "DejaVu Sans Mono", "Liberation Mono", monospace;
  font-size: .92em; }
.facts, .facts dd, td, th, figcaption, li { unicode-bidi: isolate; }
.facts { margin: 1rem 0; border-top: 1px solid var(--ink); }
.facts div { display: grid; grid-template-columns: minmax(8rem, 16rem) 1fr; gap: 0 1.5rem;
  padding: .4rem 0; border-bottom: 1px solid var(--line); }
.facts dt { color: var(--mute); font-size: .875rem; padding-top: .1rem; }
.facts dd { margin: 0; }
.scroll { overflow-x: auto; margin: 1rem 0; }
table { border-collapse: collapse; width: 100%; font-size: .9375rem; line-height: 1.4;
  border-bottom: 1.5px solid var(--ink); }
caption { text-align: left; font-weight: 600; padding: 0 0 .4rem; }
th, td { padding: .4rem 1rem .4rem 0; text-align: left; vertical-align: top;
  border-bottom: 1px solid var(--line); overflow-wrap: break-word; }
tr > :last-child { padding-right: 0; }
thead th { color: var(--mute); font-size: .8125rem; font-weight: 500; letter-spacing: .02em;
  border-bottom: 1.5px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: inherit; }
tbody th.group { font-weight: 600; background: var(--panel); padding: .45rem .5rem; }
tr.total > * { font-weight: 600; border-top: 1.5px solid var(--ink); }
.right, .decimal { text-align: right; }
.decimal .number { white-space: pre; }
.decimal .fraction { display: inline-block; text-align: left; }
.empty { color: var(--mute); font-style: italic; }
.mark { white-space: nowrap; font-weight: 500; margin-right: .5em; }
.mark svg { width: .95em; height: .95em; vertical-align: -.1em; margin-right: .3em; }
.holds { color: var(--holds); } .tight { color: var(--tight); }
.fails { color: var(--fails); } .unknown { color: var(--unknown); }
.hv { display: inline-block; border: 1.5px solid var(--hv); border-radius: 2px; padding: 0 .3em;
  font-size: .8em; font-weight: 600; line-height: 1.35; letter-spacing: .03em;
  color: var(--hv-text); text-decoration: none; margin-right: .5em; }
.caution { border: 1.5px solid var(--ink); padding: .8rem 1rem .8rem 3.6rem; margin: 1.25rem 0;
  position: relative; background: var(--panel); }
.caution > svg { position: absolute; left: 1rem; top: .8rem; width: 1.75rem; height: 1.75rem; }
.caution.high { border-left: 6px solid var(--hv); }
.caution .title { font-weight: 600; margin: 0; } .caution p { margin: .3rem 0 0; }
figure { margin: 1.25rem 0; }
figure > .plate { width: fit-content; max-width: 100%; }
figure .plate { border: 1px solid var(--line); background: var(--panel); display: flex;
  align-items: center; justify-content: center; }
figure img { display: block; max-width: 100%; max-height: var(--tallest, 26rem); height: auto;
  width: auto; background: #FFFFFF; }
figcaption { font-size: .875rem; line-height: 1.4; padding-top: .4rem; max-width: 46rem; }
figcaption .label { margin-right: .5em; }
.row { display: grid; gap: 1.25rem 1.5rem; margin: 1.25rem 0; }
.row.two { grid-template-columns: repeat(2, minmax(0, 1fr)); }
.row.three { grid-template-columns: repeat(3, minmax(0, 1fr)); }
.row figure { margin: 0; } .row .plate { width: auto; aspect-ratio: 4 / 3; }
.row img { max-height: 100%; object-fit: contain; }
.missing { padding: 2rem 1rem; color: var(--mute); font-style: italic; text-align: center; }
ul, ol { padding-left: 1.6rem; max-width: 46rem; } li { margin: .25rem 0; }
.ticks { list-style: none; padding-left: 0; }
.ticks > li { padding-left: 1.9rem; position: relative; }
.ticks > li::before { content: ""; position: absolute; left: 0; top: .2em; width: 1em; height: 1em;
  border: 1.5px solid var(--ink); }
.contents ol { list-style: none; padding-left: 0; columns: 2; column-gap: 2rem; }
.contents li { margin: 0; padding: .2rem 0; break-inside: avoid; }
.contents .level-2 { padding-left: 1.2rem; } .contents .level-3 { padding-left: 2.4rem; }
.sign { margin: 1.5rem 0; break-inside: avoid; }
.sign .role { font-weight: 600; margin: 0; } .sign .statement { margin: .2rem 0 0; }
.blanks { display: grid; grid-template-columns: 5fr 2fr 5fr; gap: 1.5rem; margin: 0; }
.blanks div { display: flex; flex-direction: column-reverse; min-height: 4rem; }
.blanks dt { font-size: .8125rem; color: var(--mute); border-top: 1px solid var(--ink);
  padding-top: .2rem; }
.blanks dd { margin: 0; padding-bottom: .2rem; }
footer { margin-top: 3rem; padding-top: .8rem; padding-bottom: 2rem; color: var(--mute);
  font-size: .8125rem; }
footer p { margin: .2rem 0; max-width: none; }
hr.page { border: 0; border-top: 1px dashed var(--line); margin: 3rem 0; }
.shapes { position: absolute; width: 0; height: 0; overflow: hidden; }
@media (max-width: 40rem) {
  main, header, footer { padding-left: 1rem; padding-right: 1rem; }
  .facts div { grid-template-columns: 1fr; } .contents ol { columns: 1; }
  .row.two, .row.three { grid-template-columns: 1fr; }
  .blanks { grid-template-columns: 1fr; gap: .5rem; } }
@page { size: A4; margin: 18mm 18mm 20mm;
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
@media print {
  :root { color-scheme: light; --paper: #FFFFFF; --panel: #F6F3EC; --ink: #1F2A33;
    --mute: #5A646C; --line: #C9C7BF; --blue: #1F5A8A; --holds: #2C6A3F; --tight: #6B5900;
    --fails: #9E2A2B; --unknown: #5B4A8A; --hv: #C94A08; --hv-text: #1F2A33; }
  html { font-size: 9.5pt; } main, header, footer { max-width: none; padding: 0; }
  h1 { font-size: 24pt; } h2 { font-size: 16pt; margin-top: 20pt; } h3 { font-size: 11.5pt; }
  h1, h2, h3, h4, caption { break-after: avoid; }
  .scroll { overflow: visible; } thead { display: table-header-group; }
  tr, figure, .caution, .facts div { break-inside: avoid; }
  tbody th.group { break-after: avoid; } p, li { orphans: 2; widows: 2; }
  a { color: inherit; text-decoration: none; }
  .pagebreak { break-before: page; } hr.page { visibility: hidden; margin: 0; } }
)css";
}

QByteArrayView htmlShapes()
{
    return R"svg(<svg class="shapes" xmlns="http://www.w3.org/2000/svg" aria-hidden="true" focusable="false">
<symbol id="mark-holds" viewBox="0 0 16 16"><circle cx="8" cy="8" r="7" fill="none" stroke="currentColor" stroke-width="1.4"/><path d="M4.4 8.4 7 11l4.8-5.6" fill="none" stroke="currentColor" stroke-width="1.8"/></symbol>
<symbol id="mark-tight" viewBox="0 0 16 16"><path d="M8 .9 15.1 8 8 15.1.9 8z" fill="none" stroke="currentColor" stroke-width="1.4"/><path d="M.9 8h14.2L8 15.1z" fill="currentColor"/></symbol>
<symbol id="mark-fails" viewBox="0 0 16 16"><path d="M1 1h14v14H1z" fill="currentColor"/><path d="M4.6 4.6l6.8 6.8M11.4 4.6l-6.8 6.8" fill="none" stroke="var(--paper)" stroke-width="1.9"/></symbol>
<symbol id="mark-unknown" viewBox="0 0 16 16"><circle cx="8" cy="8" r="7" fill="none" stroke="currentColor" stroke-width="1.4" stroke-dasharray="2.2 2.2"/><path d="M5.9 6.4a2.1 2.1 0 1 1 3.2 1.8c-.7.4-1.1.8-1.1 1.6" fill="none" stroke="currentColor" stroke-width="1.5"/><circle cx="8" cy="11.8" r="1" fill="currentColor"/></symbol>
<symbol id="mark-caution" viewBox="0 0 24 24"><path d="M12 2.2 22.6 21H1.4z" fill="none" stroke="currentColor" stroke-width="1.7" stroke-linejoin="round"/><path d="M12 8.6v6" fill="none" stroke="currentColor" stroke-width="2"/><circle cx="12" cy="17.6" r="1.2" fill="currentColor"/></symbol>
</svg>
)svg";
}

} // namespace ohmwright::sheet
