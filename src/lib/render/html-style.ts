// The style of the single HTML page that `show --format html` writes: one reading column, figures in
// columns by stage, light and dark, print. Status is told by sign and word, colour only repeats it.

/** CSS for the page's own style element. */
export const pageStyle = `
:root { color-scheme: light dark;
  --ground: light-dark(#fdfcfa, #16181b); --ink: light-dark(#1c1e21, #e9e7e3);
  --ink-2: light-dark(#55595f, #a9adb3); --line: light-dark(#d9d8d4, #33373c);
  --over: light-dark(#a8170f, #ff8f85); --close: light-dark(#7a5200, #e5b04a);
  --inside: light-dark(#2f6b3a, #8fd19c); --wash: light-dark(#f4f2ed, #1f2226); }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink);
  font: 1rem/1.5 ui-serif, Georgia, 'Times New Roman', serif; }
main { max-width: 72rem; margin: 0 auto; padding: 2rem 1.25rem 4rem; }
h1, h2, h3, h4, th, .kind, .where, .status, caption { font-family: ui-sans-serif, system-ui, sans-serif; }
h1 { font-size: 1.75rem; line-height: 1.2; } h2 { font-size: 1.35rem; } h3 { font-size: 1.1rem; }
.prose { max-width: 42rem; }
.prose img { max-width: 100%; }
section.block { margin: 1.5rem 0; overflow-x: auto; }
.kind { font-size: .8rem; font-weight: 600; color: var(--ink-2); margin: 0 0 .25rem; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .35rem .6rem .35rem 0; border-top: 1px solid var(--line); }
th { font-size: .8rem; font-weight: 600; }
table.stages { table-layout: fixed; min-width: 42rem; } table.stages th:first-child, table.stages td:first-child { width: 38%; }
table.stages .unit { width: 6rem; }
td.number, th.number { text-align: right; white-space: nowrap; }
.where, .comment { font-size: .85rem; color: var(--ink-2); }
math { font-family: 'STIX Two Math', 'Cambria Math', 'Latin Modern Math', math; font-size: 1.05em; }
.formula { display: block; overflow-x: auto; overflow-y: hidden; padding: .1rem 0; }
.status { font-size: .85rem; white-space: nowrap; }
.over { color: var(--over); } .close { color: var(--close); } .inside { color: var(--inside); }
.unknown { color: var(--over); }
.problem { border-left: 3px solid var(--over); background: var(--wash); padding: .4rem .8rem; margin: .5rem 0; }
.problem.warning, .problem.note { border-color: var(--close); }
.caution { border-left: 4px solid var(--close); background: var(--wash); padding: .6rem 1rem; }
.caution.danger { border-color: var(--over); }
pre { background: var(--wash); padding: .6rem .8rem; overflow-x: auto; font-size: .85rem; }
.bar { display: block; height: .3rem; margin-top: .2rem; background: var(--line); position: relative; max-width: 9rem; }
.bar i { display: block; height: 100%; background: currentColor; }
.bar b { position: absolute; left: 66.667%; top: -.15rem; bottom: -.15rem; width: 2px; background: var(--ink); }
@media print { main { max-width: none; padding: 0; } tr, .caution, .problem { break-inside: avoid; }
  :root { color-scheme: light; } section.block, .formula { overflow: visible; } }
`;
