/** The look of the page of a rule graph: ink on paper, one accent, the same in print. */
export const RULE_GRAPH_CSS = `
:root{color-scheme:light;--ink:#1f2428;--soft:#555c63;--rule:#7d858c;--paper:#fff;--accent:#2c4a5e;--wash:#eef1f3}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.45 "Noto Sans",system-ui,sans-serif}
main{max-width:1180px;margin:0 auto;padding:1.5rem 1.25rem 2.5rem}
h1{font-size:1.5rem;line-height:1.25;margin:0}
h2{font-size:1.1rem;margin:1.75rem 0 .5rem}
.schedule,.deference{color:var(--soft);margin:.25rem 0 1rem}
.deference{border-top:1px solid var(--rule);padding-top:.75rem;margin-top:1.75rem;color:var(--ink)}
figure{margin:0}
figure>svg{display:block;max-width:100%;height:auto}
.outline{fill:var(--paper);stroke:var(--ink);stroke-width:1.25}
.inner{fill:none;stroke:var(--ink);stroke-width:.75}
.joint .outline{fill:var(--wash);stroke-dasharray:5 3}
.edge-bar{fill:var(--accent)}
.fold{fill:none;stroke:var(--ink);stroke-width:1}
.condition .outline{stroke:var(--accent)}
.edge{fill:none;stroke:var(--rule);stroke-width:1.25}
.tip{fill:var(--rule)}
text{font-family:"Noto Sans",system-ui,sans-serif;fill:var(--ink)}
.line{font-size:13px}
.task .line{font-weight:700}
.small,.role{font-size:11px;fill:var(--soft)}
.role{text-anchor:end;font-style:italic}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:.4rem 1.5rem;margin:.75rem 0 0;padding:0;font-size:.85rem;color:var(--soft)}
.legend li{display:flex;align-items:center;gap:.5rem}
.words small{color:var(--soft)}
.words,.words ul{padding-left:1.25rem}
.words li{margin:.2rem 0}
@media print{body{font-size:11pt}main{max-width:none;padding:0}figure,li{break-inside:avoid}}
`;
