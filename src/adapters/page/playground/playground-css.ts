/**
 * The look of the playground: a bench with the text on the left and the machine on the right. Ink and steel, one accent of enamel
 * green, one of signal red; states told by word, mark and weight.
 */
export const PLAYGROUND_CSS = `
:root{color-scheme:light dark;--ink:#141a17;--soft:#4c5852;--bench:#dfe4e1;--paper:#fbfcfb;--wash:#edf1ee;--hair:#b9c3bd;--line:#5d6a63;--accent:#0b5345;--on-accent:#fff;--alarm:#a11d08;--text-in-quotes:#6b3f06;--figures:#1d3f8f;--focus:#0a4fd0;--select:#c9ddd4}
@media (prefers-color-scheme:dark){:root{--ink:#e8eeea;--soft:#a9b6af;--bench:#0e1311;--paper:#171e1b;--wash:#202a25;--hair:#3a4741;--line:#7f8f87;--accent:#6fd3b5;--on-accent:#06201a;--alarm:#ff9a85;--text-in-quotes:#e7bd83;--figures:#a5c2ff;--focus:#9ec1ff;--select:#27483d}}
*{box-sizing:border-box}
html{height:100%}
body{margin:0;min-height:100%;background:var(--bench);color:var(--ink);font:15px/1.45 "Noto Sans",system-ui,-apple-system,"Segoe UI",sans-serif;display:flex;flex-direction:column}
button,input,select{font:inherit;color:inherit}
:focus-visible{outline:3px solid var(--focus);outline-offset:1px}
.skip{position:absolute;left:-999px;background:var(--paper);padding:.5rem 1rem;z-index:9}
.skip:focus{left:.5rem;top:.5rem}
.top{display:flex;flex-wrap:wrap;align-items:baseline;gap:.25rem 1.25rem;padding:.6rem 1rem .5rem}
h1{font-size:1.15rem;margin:0;letter-spacing:-.01em}
h1 span{font-weight:400}
.top p{margin:0;flex:1 1 20rem;font-size:.87rem;color:var(--ink)}
.own{display:flex;gap:.5rem;align-items:baseline;flex-wrap:wrap}
#open-said{font-size:.87rem}
.own button,.fix,.why button{background:var(--paper);border:1px solid var(--line);border-radius:4px;padding:.3rem .7rem;cursor:pointer}
.own button:hover,.fix:hover{background:var(--wash)}
main{flex:1;display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.15fr);gap:0 .75rem;padding:0 .75rem .5rem;min-height:0}
.text,.machine{display:flex;flex-direction:column;min-height:0;min-width:0}
.tabs{display:flex;flex-wrap:wrap;gap:.15rem;flex:none;padding:.15rem .15rem 0}
.tabs [role=tab]{border:1px solid transparent;border-bottom:0;background:none;padding:.3rem .6rem;border-radius:5px 5px 0 0;cursor:pointer;white-space:nowrap;font-size:.93rem;color:var(--ink)}
.tabs [role=tab]:hover{background:var(--wash)}
.tabs [aria-selected=true]{background:var(--paper);border-color:var(--hair);font-weight:700;position:relative;top:1px}
#editor{flex:1 1 20rem;min-height:14rem;border:1px solid var(--hair);background:var(--paper);display:flex;overflow:hidden}
#editor .cm-editor{flex:1;min-width:0;height:100%;font-size:13.5px}
.cm-editor .cm-scroller{font:13.5px/1.55 "Noto Sans Mono","DejaVu Sans Mono",ui-monospace,Menlo,Consolas,monospace;overflow:auto}
.cm-editor.cm-focused{outline:3px solid var(--focus);outline-offset:-3px}
.cm-editor .cm-gutters{background:var(--wash);color:var(--soft);border-right:1px solid var(--hair)}
.cm-editor .cm-activeLine{background:color-mix(in srgb,var(--wash) 70%,transparent)}
.cm-editor .cm-cursor{border-left:2px solid var(--ink)}
.cm-editor .cm-selectionBackground,.cm-editor.cm-focused>.cm-scroller>.cm-selectionLayer .cm-selectionBackground{background:var(--select)}
.cm-editor .cm-tooltip{background:var(--paper);color:var(--ink);border:1px solid var(--line)}
.cm-editor .cm-tooltip-autocomplete ul li[aria-selected]{background:var(--accent);color:var(--on-accent)}
.hover{padding:.3rem .7rem;max-width:32rem;font:14px/1.4 "Noto Sans",system-ui,sans-serif}.hover p{margin:.3rem 0}.hover pre{margin:.3rem 0;white-space:pre-wrap}
.cm-editor .cm-diagnostic{border-left-width:5px}
.cm-editor .cm-diagnosticAction{background:var(--accent);color:var(--on-accent);border-radius:3px}
.problem-list{flex:none;max-height:28%;display:flex;flex-direction:column;border:1px solid var(--hair);border-top:0;background:var(--paper)}
h2{font-size:.95rem;margin:0}
.problem-list h2{padding:.35rem .75rem;background:var(--wash)}
#problem-count{font-weight:400;margin-left:.35rem}
#problem-count[data-worst=error]{font-weight:700;color:var(--alarm)}
#problems{list-style:none;margin:0;padding:0;overflow:auto}
#problems:empty{display:none}
#problems li{border-top:1px solid var(--hair);padding:.15rem .75rem .35rem}
.problem{display:flex;gap:.6rem;border:0;background:none;text-align:left;padding:.2rem 0;cursor:pointer;width:100%}
.problem:hover{text-decoration:underline}
.problem-mark{flex:none;width:1em;font-weight:700}
#problems .error .problem-mark,#problems .error strong{color:var(--alarm)}
.fix{margin-left:1.6rem;font-size:.87rem}
.machine{background:var(--paper);border:1px solid var(--hair)}
.suppose{padding:.6rem .9rem .5rem;border-bottom:1px solid var(--hair);background:var(--wash)}
.slide{display:grid;grid-template-columns:3.2rem minmax(0,1fr) 11.5rem;gap:.75rem;align-items:center;min-height:2.2rem}
.slide label{font-weight:700}
.slide input[type=range]{width:100%;accent-color:var(--accent);height:1.6rem}
.slide input[type=date],.slide select{width:100%;background:var(--paper);border:1px solid var(--line);border-radius:4px;padding:.2rem .4rem}
.slide-words{margin:.1rem 0 .2rem 3.95rem;display:flex;flex-wrap:wrap;gap:.1rem 1.25rem;font-size:.9rem}
.slide-words output{font-variant-numeric:tabular-nums;font-weight:600;min-width:11rem}
.choice{display:inline-flex;align-items:center;gap:.35rem;margin-right:1rem;min-height:1.6rem;cursor:pointer}
.choice input{accent-color:var(--accent);width:1.05rem;height:1.05rem;margin:0}
.work{margin-left:3.95rem;font-size:.9rem}
summary{cursor:pointer}
.verdict{padding:.55rem .9rem;border-bottom:1px solid var(--hair);display:grid;gap:.1rem}
.verdict-words{font-size:1.2rem;line-height:1.3}
.verdict.held .verdict-words{color:var(--alarm)}
.verdict.held{box-shadow:inset 8px 0 0 var(--alarm)}
.verdict.work-due-first{box-shadow:inset 8px 0 0 var(--ink)}
.verdict.cannot-tell{box-shadow:inset 8px 0 0 var(--line)}
.verdict.ready{box-shadow:inset 8px 0 0 var(--accent)}
.verdict-reason{font-size:.92rem}
.behind{font-weight:700;color:var(--alarm)}
.quiet{color:var(--soft)}
.answer{flex:1;display:grid;grid-template-columns:minmax(15rem,5fr) minmax(0,7fr);min-height:0}
.due{overflow:auto;border-right:1px solid var(--hair);padding-bottom:1rem}
.due:focus{outline:none}
.group summary{position:sticky;top:0;z-index:1;background:var(--paper);padding:.5rem .9rem .25rem;font-weight:700;list-style:none;border-bottom:1px solid var(--line)}
.group summary::-webkit-details-marker{display:none}
.mark{display:inline-block;width:1.4em}
.overdue .mark,.overdue .row-left{color:var(--alarm)}
.count{font-weight:400;color:var(--soft);margin-left:.25rem}
.group ul{list-style:none;margin:0;padding:0}
.row{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 .75rem;width:100%;text-align:left;border:0;border-bottom:1px solid var(--hair);background:none;padding:.4rem .9rem;cursor:pointer;line-height:1.35}
.row:hover{background:var(--wash)}
.row[aria-pressed=true]{background:var(--accent);color:var(--on-accent)}
.row[aria-pressed=true] span{color:inherit}
.row-title{font-weight:600}
.row-left{font-variant-numeric:tabular-nums;font-weight:600;font-size:.9rem;white-space:nowrap}
.row-reason{grid-column:1/3;color:var(--soft);font-size:.87rem}
.used{grid-column:1/3;position:relative;height:6px;margin:.25rem 0 .1rem;border-bottom:1px solid var(--hair)}
.used-fill{position:absolute;left:0;bottom:0;height:3px;width:calc(var(--used)*80%);background:currentColor}
.used::after{content:"";position:absolute;left:80%;bottom:-1px;height:7px;border-left:2px solid currentColor}
.look{display:flex;flex-direction:column;min-width:0;min-height:0;background:var(--wash)}
.look .tabs{padding-top:.4rem;padding-left:.6rem}
.detail{flex:1;overflow:auto;background:var(--paper);border-top:1px solid var(--hair);padding:.75rem 1rem 1.5rem;overflow-wrap:break-word}
.detail p{margin:.5rem 0}
.why-headline{font-size:1.1rem;font-weight:600;line-height:1.35}
.why-hold{font-weight:700;color:var(--alarm)}
.evidence{margin:1rem 0;display:grid;grid-template-columns:max-content minmax(0,1fr);gap:.3rem .9rem;font-size:.9rem;border-top:1px solid var(--hair);padding-top:.75rem}
.evidence dt{font-weight:700;grid-column:1}
.evidence dd{margin:0;grid-column:2;overflow-wrap:anywhere}
.deference{font-weight:600}
.cautions{list-style:none;margin:.5rem 0;padding:0}
.caution{border:1px solid var(--line);padding:.3rem .6rem;margin:.25rem 0;border-left-width:6px}
.caution.danger{border-color:var(--alarm)}
.caution.danger strong,.caution.warning strong{color:var(--alarm)}
.caution strong{letter-spacing:.03em}
.procedure{padding-left:1.4rem}
.walk{padding-left:2rem;margin:.75rem 0}
.walk>li{border-top:1px solid var(--hair);padding:.35rem 0}
.walk>li::marker{color:var(--soft);font-variant-numeric:tabular-nums}
.walk .task .walk-title{font-weight:700}
.detail .walk-title,.detail .walk-note{margin:.1rem 0}
.walk-note{color:var(--soft);font-size:.9rem}
figure{margin:0;overflow:auto}
figure>svg{display:block;width:max(100%,44rem);height:auto}
.outline{fill:var(--paper);stroke:var(--ink);stroke-width:1.25}
.inner{fill:none;stroke:var(--ink);stroke-width:.75}
.joint .outline{fill:var(--wash);stroke-dasharray:5 3}
.edge-bar{fill:var(--accent)}
.fold{fill:none;stroke:var(--ink)}
.condition .outline{stroke:var(--accent)}
.edge{fill:none;stroke:var(--line);stroke-width:1.25}
.tip{fill:var(--line)}
svg text{font-family:"Noto Sans",system-ui,sans-serif;fill:var(--ink)}
.line{font-size:13px}
.task .line{font-weight:700}
.small,.role{font-size:11px;fill:var(--soft)}
.role{text-anchor:end;font-style:italic}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:.3rem 1.25rem;margin:.75rem 0 0;padding:0;font-size:.85rem}
.legend li{display:flex;align-items:center;gap:.5rem}
.words small{color:var(--soft)}
.words,.words ul{padding-left:1.25rem}
.foot{margin:0;padding:.15rem .9rem;font-size:.8rem;color:var(--soft);min-height:1.5rem;border-top:1px solid var(--hair)}
@media (min-width:60.01rem){body{height:100vh;height:100dvh;overflow:hidden}}
@media (max-width:60rem){main{grid-template-columns:minmax(0,1fr);gap:.75rem}#editor{height:24rem;flex:none}.problem-list{max-height:14rem}.due{overflow:visible;border-right:0}.detail{overflow:visible}.group summary{position:static}}
@media (max-width:40rem){main{padding:0}.text,.machine{border-left:0;border-right:0}.answer{grid-template-columns:minmax(0,1fr)}.slide{grid-template-columns:3rem minmax(0,1fr)}.slide>:last-child{grid-column:2}.slide-words,.work{margin-left:3.75rem}button,.choice,summary{min-height:2.6rem}}
@media (prefers-reduced-motion:reduce){*{scroll-behavior:auto!important;transition:none!important}.cm-editor .cm-cursorLayer{animation:none!important}}
@media print{body{height:auto;overflow:visible;background:#fff}.text,.suppose,.own,.look .tabs{display:none}main,.answer{display:block}.due,.detail{overflow:visible}}
`;
