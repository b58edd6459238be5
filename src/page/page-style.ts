const MOST_COLUMNS = 20;
/** Cells of the columns that a table's classes name. */
const FIGURE_COLUMNS = Array.from(
  { length: MOST_COLUMNS },
  (_, index) => `.f${String(index + 1)} :nth-child(${String(index + 1)}):is(th, td)`,
).join(",\n");

/** The page's look: black on white, or light on dark where the reader's screen asks for it; print is always light. */
export const PAGE_STYLE = `
:root { color-scheme: light dark; --paper: #fff; --ink: #16181b; --soft: #555b62; --line: #c9cdd2; --wash: #f3f4f5; --link: #1f4e79 }
@media (prefers-color-scheme: dark) {
  :root { --paper: #15171a; --ink: #e8e9ea; --soft: #a8adb3; --line: #3f444a; --wash: #1f2226; --link: #9cc3ea }
}
* { box-sizing: border-box }
html { -webkit-text-size-adjust: 100%; scroll-padding-top: 1rem }
body { margin: 0; color: var(--ink); background: var(--paper); font: 1rem/1.5 system-ui, "Segoe UI", Roboto, "Liberation Sans", sans-serif }
.top, main, .end { max-width: 60rem; margin: 0 auto; padding: 0 1rem }
.top { padding-top: 1.5rem }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .25rem; overflow-wrap: anywhere }
h2 { font-size: 1.4rem; line-height: 1.25; margin: 0 }
h3 { font-size: 1.1rem; margin: 2rem 0 .5rem }
h4 { font-size: 1rem; margin: 0 0 .25rem; overflow-wrap: anywhere }
p { margin: .25rem 0 .75rem; max-width: 46rem }
a { color: var(--link); text-underline-offset: .15em }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px }
.skip { position: absolute; left: -99rem }
.skip:focus { left: 1rem; top: .5rem; padding: .25rem .5rem; background: var(--paper) }
.sub { color: var(--soft) }
nav { display: flex; flex-wrap: wrap; gap: 0 1.1rem; margin: .5rem 0 0 }
nav p { margin: 0; padding: .2rem 0; color: var(--soft) }
nav ul { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: 0 1.1rem }
nav li { margin: 0 }
nav a { display: inline-block; padding: .2rem 0 }
.sheet { border-top: 3px solid var(--ink); margin: 2.5rem 0 0; padding: 1rem 0 0 }
main > .sheet:first-child { margin-top: 1rem }
.head { display: flex; flex-wrap: wrap; gap: .1rem 1.25rem; margin: .35rem 0 1rem; color: var(--soft) }
.head div { display: flex; gap: .4rem }
.head dt::after { content: ":" }
.head dd { margin: 0; color: var(--ink); font-weight: 600; overflow-wrap: anywhere }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: .2rem 1rem; margin: 0 }
.facts dt { color: var(--soft); grid-column: 1 }
.facts dd { margin: 0; grid-column: 2; overflow-wrap: anywhere; min-width: 0 }
.glance { background: var(--wash); padding: .8rem 1rem; border-left: 4px solid var(--ink) }
.rooms { display: grid; gap: 1rem }
.room { border: 1px solid var(--line); padding: .8rem 1rem; min-width: 0 }
.answer { font-size: 1.25rem; margin: .35rem 0 .6rem; line-height: 1.7 }
.answer small { font-size: .9rem; color: var(--soft) }
.verdict { display: inline-block; padding: 0 .55rem; border: 2px solid var(--ink); font-weight: 700; margin-right: .4rem; line-height: 1.5 }
.verdict.fails { background: var(--ink); color: var(--paper) }
.verdict.thin { border-style: dashed }
.mark { font-weight: 700 }
.key { color: var(--soft); font-size: .9rem; margin-top: .6rem }
ul, ol { margin: .25rem 0 .75rem; padding-left: 1.3rem }
li { margin: .15rem 0; overflow-wrap: anywhere }
.part > ul, .part > ol, details > ul { max-width: 50rem }
.scroll { overflow-x: auto; margin: .5rem 0 1rem; max-width: 100% }
table { border-collapse: collapse; font-size: .9rem; line-height: 1.35 }
caption { text-align: left; font-weight: 600; padding: .25rem 0; color: var(--ink) }
th, td { text-align: left; vertical-align: top; padding: .28rem .7rem .28rem 0; border-bottom: 1px solid var(--line); font-weight: 400 }
tbody th { font-weight: 600 }
thead th { font-weight: 400; color: var(--soft); border-bottom: 2px solid var(--ink); vertical-align: bottom }
table thead tr th { white-space: normal }
${FIGURE_COLUMNS} { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums }
data { font-variant-numeric: tabular-nums; white-space: nowrap }
data[title] { text-decoration: underline dotted; text-underline-offset: .2em; text-decoration-thickness: 1px }
.none { color: var(--soft) }
details { margin: .5rem 0; border: 1px solid var(--line); padding: .3rem .8rem; min-width: 0 }
summary { cursor: pointer; padding: .2rem 0 }
.pictures { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(26rem, 100%), 1fr)); gap: 1.5rem 2.5rem; align-items: start }
figure { margin: .5rem 0; min-width: 0 }
figcaption { font-weight: 600; margin-bottom: .5rem; overflow-wrap: anywhere }
figure svg { display: block; width: 100%; max-width: 46rem; height: auto }
.alike { color: var(--soft); font-size: .9rem; margin: .5rem 0 0 }
.cautions { border: 2px solid var(--ink); padding: .4rem 1rem }
.troubles { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(20rem, 100%), 1fr)); gap: .75rem }
.trouble { border: 1px solid var(--line); padding: .6rem .9rem }
.trouble h3 { margin: 0 0 .25rem; font-size: 1rem }
.checks { list-style: none; padding: 0 }
.checks li { padding-left: 1.7rem; position: relative; break-inside: avoid }
.checks li::before { content: ""; position: absolute; left: .15rem; top: .3em; width: .85rem; height: .85rem; border: 1.5px solid var(--ink) }
.blanks { display: block; color: var(--soft); font-size: .85rem }
.blank { display: inline-block; min-width: 7.5rem; border-bottom: 1px solid var(--ink); margin: .1rem .5rem .1rem 0 }
.labels { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(19rem, 100%), 1fr)); border-top: 1px dashed var(--soft); border-left: 1px dashed var(--soft) }
.label { border-right: 1px dashed var(--soft); border-bottom: 1px dashed var(--soft); padding: .6rem .8rem; font-size: .9rem; line-height: 1.35; break-inside: avoid; min-width: 0; overflow-wrap: anywhere }
.label p { margin: .1rem 0 }
.label .name { font-weight: 700; font-size: 1.15rem }
.heed { font-weight: 700 }
.sw { white-space: nowrap }
.sw b, .sw i { display: inline-block; width: 1.25rem; text-align: center; border: 1px solid var(--ink); margin-right: -1px; font-style: normal }
.sw b { background: var(--ink); color: var(--paper) }
html[data-length="m"] span.ft, html[data-length="ft"] span.m { display: none }
.tools { display: flex; flex-wrap: wrap; gap: .5rem; align-items: center; margin: .5rem 0 0 }
button, input { font: inherit; font-size: .9rem; color: inherit; background: var(--paper); border: 1px solid var(--soft); padding: .2rem .6rem; min-height: 2rem }
thead button { font: inherit; border: 0; padding: 0; min-height: 0; background: none; text-align: inherit; cursor: pointer; color: inherit; text-decoration: underline dotted; text-underline-offset: .2em }
[aria-sort="ascending"] button::after { content: " ▲" }
[aria-sort="descending"] button::after { content: " ▼" }
button[aria-pressed="true"] { background: var(--ink); color: var(--paper) }
.end { color: var(--soft); font-size: .9rem; padding-top: 1rem; padding-bottom: 3rem }
[hidden] { display: none }
@media screen and (max-width: 30rem) {
  .top { padding-top: 1rem }
  h1 { font-size: 1.35rem }
  nav, nav ul { flex-wrap: nowrap }
  nav { overflow-x: auto; white-space: nowrap; margin-top: 0 }
  .sheet { margin-top: 2rem; padding-top: .75rem }
  main > .sheet:first-child .head div + div { display: none }
  .head { gap: 0 1rem; margin: .25rem 0 .75rem }
  .facts { gap: .25rem .7rem; line-height: 1.4 }
  .glance, .room { padding: .6rem .75rem }
}
@media print {
  :root { color-scheme: light; --paper: #fff; --ink: #000; --soft: #444; --line: #bbb; --wash: #f3f4f5; --link: #000 }
  @page { margin: 14mm 13mm }
  html { font-size: 9.5pt }
  body { line-height: 1.35 }
  .top, main, .end { max-width: none; padding: 0 }
  nav, .tools, .skip { display: none }
  .sheet { break-before: page; margin: 0; padding-top: 2mm; border-top-width: 1.5pt }
  main > .sheet:first-child { break-before: auto }
  h1 { font-size: 15pt }
  h2 { font-size: 14pt }
  h3 { font-size: 11pt; margin-top: 5mm }
  h2, h3, h4, caption, figcaption, .alike { break-after: avoid }
  p, .part > ul, .part > ol { max-width: none }
  .answer { font-size: 12pt }
  .scroll { overflow: visible }
  table { font-size: 8pt }
  th, td { padding: 1pt 8pt 1pt 0 }
  .cautions ul { columns: 2; column-gap: 8mm }
  .part:has(> .labels) { break-before: page }
  thead { display: table-header-group }
  thead button { text-decoration: none }
  .scroll:has(tbody > tr:last-child:nth-child(-n + 9)) { break-inside: avoid }
  tr, .alike, .room, figure, .trouble, .glance, .cautions { break-inside: avoid }
  .pictures { grid-template-columns: 1fr 1fr; gap: 5mm 8mm }
  figure { margin: 0 }
  ul.checks { columns: 2; column-gap: 8mm }
  .label { font-size: 9.5pt }
  details { border: 0; padding: 0 }
  details::details-content { content-visibility: visible; block-size: auto; display: block }
  summary { list-style: none; font-weight: 600; break-after: avoid }
  .labels { grid-template-columns: repeat(2, 1fr) }
  .verdict.fails { background: #000; color: #fff; print-color-adjust: exact; -webkit-print-color-adjust: exact }
  .sw b { print-color-adjust: exact; -webkit-print-color-adjust: exact }
  data[title] { text-decoration: none }
  .tight table { font-size: 7pt }
  .tight th, .tight td { padding-right: 2.5pt }
}
`;
