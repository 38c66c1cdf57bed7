/**
 * The look of the field page: black on white for sunlight, targets for gloves, signs before colours; the same on paper.
 *
 * INVARIANT: text against its ground has a contrast of 7:1 or more, and what can be pressed is at least 48 px high.
 */
export const FIELD_CSS = `
:root{color-scheme:only light;--ink:#0b0f0c;--soft:#3d443f;--line:#0b0f0c;--hair:#9aa39d;--paper:#fff;--wash:#eef1ee;--deep:#123c34;--alarm:#8a1500;--touch:52px}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:18px/1.4 "Noto Sans",system-ui,-apple-system,"Segoe UI",sans-serif}
#page{max-width:44rem;margin:0 auto;padding:0 1rem calc(var(--touch) + 3.5rem)}
#page-head{padding:.75rem 0 .6rem;border-bottom:3px solid var(--line);display:grid;grid-template-columns:1fr auto;gap:.15rem 1rem;align-items:center}
h1{font-size:1.1rem;line-height:1.2;margin:0}
#page-head p{margin:0;font-size:.83rem;line-height:1.3;color:var(--soft);grid-column:1}
#waiting{grid-column:2;grid-row:1/3;max-width:9.5rem;line-height:1.15;font-size:.95rem;padding:.3rem .7rem}
#waiting[data-many="0"]{border-color:var(--hair);font-weight:500}
#waiting:not([data-many="0"]){background:var(--ink);color:var(--paper)}
h2{font-size:1.5rem;line-height:1.15;margin:1rem 0 .6rem}
h2:focus{outline:none}
h3{font-size:1.15rem;margin:1.75rem 0 .5rem}
p{margin:.6rem 0}
.small{font-size:.92rem;color:var(--soft)}
.big{font-size:1.3rem;font-weight:700;line-height:1.25}
.deference{border-left:6px solid var(--line);padding:.1rem 0 .1rem .75rem;font-weight:600;font-size:.95rem;line-height:1.3}
button,summary,.tick,input:not([type=checkbox]),select{min-height:var(--touch);font:inherit;color:inherit}
button{background:var(--paper);border:2px solid var(--line);border-radius:6px;padding:.4rem 1rem;font-weight:600;cursor:pointer;touch-action:manipulation}
button.wide{display:block;width:100%;margin:.75rem 0}
button.main{background:var(--deep);border-color:var(--deep);color:#fff}
input:not([type=checkbox]),select{width:100%;background:var(--paper);border:2px solid var(--line);border-radius:6px;padding:.4rem .75rem}
::placeholder{color:var(--soft);opacity:1}
label{font-weight:600}
.labelled{margin:.9rem 0;display:grid;gap:.25rem}
.tick{display:flex;align-items:center;gap:.9rem;font-weight:500;cursor:pointer;padding:.3rem 0;touch-action:manipulation}
.tick input{flex:none;width:32px;height:32px;margin:0;accent-color:var(--deep)}
:focus-visible{outline:4px solid #0a3fb0;outline-offset:2px}
summary{display:flex;align-items:center;cursor:pointer;list-style:none;touch-action:manipulation}
summary::-webkit-details-marker{display:none}
summary::after{content:"";flex:none;width:.6em;height:.6em;margin-left:auto;border:solid var(--ink);border-width:0 3px 3px 0;transform:rotate(45deg);translate:0 -.15em}
details[open]>summary::after{transform:rotate(225deg);translate:0 .15em}
fieldset{border:0;padding:0;margin:.9rem 0}
legend{font-weight:700;padding:0}
.plan{border:2px solid var(--hair);border-radius:6px;padding:0 .75rem;margin:.75rem 0}
.plan>summary{font-weight:600}
.verdict{font-size:1.35rem;line-height:1.25;font-weight:800;border:4px solid var(--line);border-radius:6px;padding:.75rem;margin:1rem 0}
.verdict.held{background:var(--alarm);border-color:var(--alarm);color:#fff}
.verdict.cannot-tell{border-style:dashed}
.verdict.work-due-first{background:var(--ink);color:#fff}
.reasons{padding-left:1.2rem}
.reasons li{margin:.35rem 0}
.group h3,.group.quiet>summary{border-bottom:3px solid var(--line);padding-bottom:.25rem;gap:.6rem;font-size:1.15rem;font-weight:700}
.group.quiet{margin-top:1.75rem}
.group h3{display:flex}
.mark{display:inline-block;min-width:1.1em;text-align:center}
.count{margin-left:.5rem;font-weight:500;color:var(--soft)}
.rows,.waiting,.cautions,.walk ol,.later{list-style:none;margin:0;padding:0}
.rows>li{border-bottom:1px solid var(--hair)}
.rows summary{flex-wrap:wrap;padding:.6rem 2rem .6rem 0;position:relative;column-gap:.75rem;align-content:center}
.rows summary::after{position:absolute;right:.3rem;top:1.3rem}
.row-title{font-weight:700;width:100%}
.row-numbers{font-weight:600;font-variant-numeric:tabular-nums}
.row-reason{color:var(--soft)}
.why{padding:.25rem 0 .5rem}
.why-headline{font-weight:600}
.why-hold{border-left:6px solid var(--alarm);padding-left:.75rem;font-weight:700;color:var(--alarm)}
.note{border-left:6px solid var(--line);padding-left:.75rem;font-weight:600}
.evidence{margin:.75rem 0;font-size:.95rem}
.evidence dt{font-weight:700;margin-top:.5rem}
.evidence dd{margin:0;overflow-wrap:anywhere}
.caution{border:2px solid var(--line);padding:.45rem .6rem;margin:.35rem 0;background:var(--paper);font-weight:500}
.caution strong{letter-spacing:.04em}
.caution strong::before{content:"\\26A0\\FE0E  "}
.caution.danger{border-color:var(--alarm);border-width:4px}
.caution.danger strong{color:var(--alarm)}
.caution.notice strong::before,.caution.mechanic strong::before{content:""}
.walk ol{border-top:3px solid var(--line)}
.walk h3{margin-bottom:.5rem}
.line{border-bottom:1px solid var(--hair);padding:.5rem 0}
.line .tick{font-weight:700}
.line.step .tick,.line.walk .tick{font-weight:500}
.line[data-ticked] .tick span{text-decoration:line-through;text-decoration-thickness:2px}
.line-number{font-variant-numeric:tabular-nums}
.line-time{font-weight:500;color:var(--soft)}
.line-note{margin:.15rem 0 .15rem calc(32px + .9rem);font-size:.95rem;color:var(--soft)}
.line .labelled,.follows{margin-left:calc(32px + .9rem)}
.finish{margin-top:2rem;border-top:3px solid var(--line)}
.countdown{font-size:4.5rem;line-height:1;font-weight:800;font-variant-numeric:tabular-nums;margin:.5rem 0}
.due-item{border:4px solid var(--line);border-radius:6px;padding:.5rem .75rem;margin:.75rem 0}
.due-item p{font-size:1.2rem}
.later li{padding:.4rem 0;border-bottom:1px solid var(--hair);font-variant-numeric:tabular-nums}
.kinds{display:grid;grid-template-columns:repeat(auto-fit,minmax(8.5rem,1fr));gap:.5rem}
.kinds [aria-pressed=true]{background:var(--ink);color:#fff}
.choices{max-height:22rem;overflow:auto;border:2px solid var(--hair);border-radius:6px;padding:0 .75rem}
.said:empty{display:none}
.said{background:var(--wash);border-left:6px solid var(--deep);padding:.6rem .75rem;font-weight:600}
.said.wrong{border-color:var(--alarm)}
.waiting li{border-bottom:1px solid var(--hair);padding:.6rem 0;display:grid;gap:.4rem}
.waiting .when{font-weight:700;font-variant-numeric:tabular-nums}
.waiting button{justify-self:start}
code{font:.95em/1.3 "Noto Sans Mono",ui-monospace,monospace;overflow-wrap:anywhere}
.off-screen{position:fixed;left:-9999px}
#tabs{position:fixed;inset:auto 0 0;background:var(--paper);border-top:3px solid var(--line);display:flex;justify-content:center;padding-bottom:env(safe-area-inset-bottom)}
#tabs button{flex:1 1 0;max-width:9rem;min-height:64px;border:0;border-radius:0;padding:.3rem .15rem;font-size:.95rem;line-height:1.15;border-right:1px solid var(--hair)}
#tabs button:last-child{border-right:0}
#tabs [aria-current=page]{background:var(--deep);color:#fff}
#tabs :focus-visible,.rows :focus-visible{outline-offset:-4px}
@media (prefers-reduced-motion:no-preference){summary::after{transition:transform .12s}}
@media print{
html{font-size:8.5pt}body{font-size:10.5pt}
#page{max-width:none;padding:0}
#tabs,#waiting,.plan,button,.finish,.group.quiet,#timer,#write,#hand-over,.labelled,.rows summary::after{display:none!important}
section.screen{display:block!important}
#walk{break-before:page}
.rows summary{min-height:0;padding:.25rem 0}
.rows>li,.line,.caution{break-inside:avoid}
.tick{min-height:0}.tick input{width:16px;height:16px}
.line-note{margin-left:calc(16px + .9rem)}
.verdict,.verdict.held,.verdict.work-due-first{background:#fff;color:#000;border-color:#000;padding:.4rem .6rem}
.why{display:none}
h2{break-after:avoid}h3{break-after:avoid}
@page{margin:14mm}
}
`;
