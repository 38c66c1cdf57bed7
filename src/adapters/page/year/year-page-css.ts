/** The look of the year page: ink on paper, the same in print; A4 across, one page for the time ahead, one for the time behind. */
export const YEAR_PAGE_CSS = `
:root{color-scheme:light;--ink:#1f2428;--soft:#50575e;--rule:#7d858c;--wash:#e9eef2;--accent:#1d4e6f}
*{box-sizing:border-box}
body{margin:0;background:#fff;color:var(--ink);font:16px/1.45 "Noto Sans",system-ui,sans-serif}
main{max-width:1110px;margin:0 auto;padding:1.5rem 1.25rem 2.5rem}
header{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:.25rem 2rem;border-bottom:2px solid var(--ink);padding-bottom:.5rem}
h1{font-size:1.5rem;line-height:1.2;margin:0}
header p{margin:0;color:var(--soft)}
h2{font-size:1.1rem;line-height:1.25;margin:1.75rem 0 .25rem}
h3{font-size:.95rem;margin:0}
section>p{margin:.25rem 0 .5rem;color:var(--soft);max-width:58rem}
.facts{display:flex;flex-wrap:wrap;gap:.25rem 2.5rem;margin:.75rem 0 0;padding:0;list-style:none}
.facts strong{display:block;font-size:1.15rem;font-weight:600}
.facts span{color:var(--soft);font-size:.9rem}
.wide{overflow-x:auto}
.wide:focus-visible{outline:2px solid var(--accent);outline-offset:3px}
.drawing{display:block;width:100%;min-width:880px;height:auto;overflow:visible}
.drawing text{font-family:"Noto Sans",system-ui,sans-serif;font-variant-numeric:tabular-nums}
.key{list-style:none;display:flex;flex-wrap:wrap;gap:.2rem 1.5rem;margin:.4rem 0 .2rem;padding:0;color:var(--soft);font-size:.85rem}
.key li{display:flex;align-items:center;gap:.45rem}
.levels{display:grid;grid-template-columns:repeat(auto-fill,minmax(300px,1fr));gap:1rem 1.25rem}
.levels .drawing{min-width:0}
.levels figure{margin:0}
figcaption{font-size:.85rem;color:var(--soft)}
details{margin:.75rem 0}
summary{cursor:pointer;color:var(--accent);text-decoration:underline;text-underline-offset:3px;width:max-content}
table{border-collapse:collapse;width:100%;font-size:.88rem;margin-top:.5rem}
caption{text-align:left;font-weight:600;padding:.25rem 0}
th,td{text-align:left;vertical-align:top;padding:.3rem .8rem .3rem 0;border-bottom:1px solid #c9ced2}
tbody th{font-weight:400}
footer{border-top:1px solid var(--rule);margin-top:1.75rem;padding-top:.75rem;font-size:.9rem}
footer p{margin:.25rem 0;max-width:70rem}
@media print{
@page{size:A4 landscape;margin:10mm 12mm}
body{font-size:9.5pt;line-height:1.3}
main{max-width:none;padding:0}
h1{font-size:14pt}
h2{font-size:10.5pt;margin:.5rem 0 0}
section>p{margin:.1rem 0;font-size:8.5pt;max-width:none}
.facts{margin:.3rem 0 0;gap:.1rem 1.5rem}.facts strong{font-size:9.5pt;display:inline}.facts span{font-size:8.5pt}
.key{margin:.15rem 0;font-size:8pt}
.drawing{min-width:0}
.wide{overflow:visible}
.year .drawing{max-height:147mm}
.behind{break-before:page}
.behind h2:first-child{margin-top:0}
figure,.wide{break-inside:avoid}
.levels{grid-template-columns:repeat(3,1fr);gap:.5rem 1rem}
h3{font-size:9pt}
figcaption{font-size:8pt}
details{display:none}
footer{break-inside:avoid;margin-top:.4rem;padding-top:.3rem;font-size:8pt}
}
`;
