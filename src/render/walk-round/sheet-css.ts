/** The look of a printed walk-round: ink on paper, made to be read at arm's length in a shed and to fit two sheets. */
export const SHEET_CSS = `
:root{color-scheme:light;--ink:#1f2428;--soft:#555c63;--rule:#aab0b5;--paper:#fff;--accent:#2c4a5e;--wash:#f1f3f4}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:15px/1.4 "Noto Sans",system-ui,sans-serif}
main{max-width:56rem;margin:0 auto;padding:1.25rem}
h1{font-size:1.4rem;line-height:1.2;margin:0 0 .3rem}
h2{font-size:1rem;margin:1.2rem 0 .3rem;border-bottom:2px solid var(--ink);padding-bottom:.15rem}
p{margin:.2rem 0}
.first{border:2px solid var(--ink);padding:.5rem .7rem;margin:.7rem 0;font-weight:600}
.first p+p{font-weight:400}
.facts{color:var(--soft)}
.facts b{color:var(--ink)}
svg.passage{display:block;width:100%;height:auto;margin:.6rem 0 .2rem}
.passage text{font-family:"Noto Sans",system-ui,sans-serif;fill:var(--ink)}
.passage .no{font-size:10px;fill:var(--soft);text-anchor:middle}
.passage .lane{font-size:12px}
.passage .small{font-size:11px;fill:var(--soft)}
.passage .pos{font-size:10px;fill:var(--accent);font-weight:600;paint-order:stroke;stroke:var(--paper);stroke-width:3px}
.passage .base{stroke:var(--rule);stroke-width:1}
.passage .run{fill:none;stroke:var(--accent);stroke-width:2.5}
.passage .task{stroke:var(--rule);stroke-width:1;stroke-dasharray:2 3}
.passage .dot{fill:var(--ink)}
ol{list-style:none;margin:0;padding:0}
li{display:grid;grid-template-columns:1.4rem 2rem minmax(0,1fr) max-content;gap:0 .45rem;padding:.28rem 0;border-bottom:1px solid var(--rule);break-inside:avoid}
li input{width:1.05rem;height:1.05rem;margin:.12rem 0 0;accent-color:var(--ink)}
li .no{text-align:right;color:var(--soft);font-variant-numeric:tabular-nums}
li .time{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
li .time small{display:inline-block;min-width:5.4rem}
@media (max-width:32rem){li{grid-template-columns:1.4rem 1.4rem minmax(0,1fr) 5.4rem}li .time{white-space:normal}}
li .time small,li .more{color:var(--soft);font-size:.82rem}
li .cautions{grid-column:3/5;margin-bottom:.15rem}
li label{font-weight:600}
li.task label{font-weight:700}
li.walk label{font-weight:400;font-style:italic}
.caution{display:block;font-size:.88rem}
.caution b{border:1.5px solid var(--ink);padding:0 .3rem;margin-right:.35rem;font-size:.74rem;letter-spacing:.04em;white-space:nowrap}
.caution.danger b,.caution.warning b{background:var(--ink);color:var(--paper)}
li .more{grid-column:3/5}
.open{font-style:italic}
@page{margin:11mm}
@media print{body{font-size:8.8pt;line-height:1.22}main{max-width:none;padding:0}li{padding:.08rem 0}li .more,li .time small{font-size:7.4pt}.caution{font-size:8pt}.caution b{font-size:6.6pt}h1{font-size:14pt}h2{font-size:9.5pt;margin:.5rem 0 .1rem;break-after:avoid}.first{padding:.25rem .5rem;margin:.3rem 0}li input{width:.8rem;height:.8rem}svg.passage{max-height:45mm}.caution b,.dot{-webkit-print-color-adjust:exact;print-color-adjust:exact}}
`;
