/** The look of a page that stands alone: the house's, with the fonts that the machine has. */
export const PAGE_STYLE = `
:root{--paper:#f8f4ec;--sheet:#fffdf8;--ink:#25211b;--soft:#5c554a;--rule:#ddd3c2;--copper:#96461b;--wash:#f4e4d5;--amber:#f8ecc9;
--read:Literata,Georgia,"Times New Roman",serif;--work:system-ui,"Segoe UI",sans-serif;color-scheme:light}
*{box-sizing:border-box}
html{background:var(--paper);color:var(--ink);font:400 1rem/1.5 var(--work);-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:1.5rem 1rem 3rem;max-width:84rem;overflow-wrap:break-word}
h1,h2,h3{font-family:var(--read);line-height:1.2;font-weight:600;margin:0 0 .75rem;text-wrap:balance}
h1{font-size:clamp(1.6rem,1.2rem + 1.8vw,2.4rem)}
h2{font-size:1.35rem;padding-bottom:.4rem;border-bottom:2px solid var(--copper)}
h3{font-size:1.1rem;margin-top:1.25rem}
a{color:var(--copper);text-underline-offset:.18em}
:focus-visible{outline:3px solid #1b4fa8;outline-offset:2px}
section,footer{margin-bottom:2.25rem}
.by{font-weight:600;margin:0 0 .5rem}
.summary{font-family:var(--read);font-size:1.18rem;line-height:1.6;max-width:46rem}
dl.facts{display:flex;flex-wrap:wrap;gap:.75rem 2.25rem;margin:0 0 1.5rem;padding:.75rem 0;border-block:1px solid var(--rule)}
.facts dt{font-size:.85rem;color:var(--soft)}.facts dd{margin:0;font-weight:600}
.notice{padding:.75rem 1rem;border-inline-start:5px solid #b98400;background:var(--amber)}
.soft{color:var(--soft)}
.player{background:var(--sheet);border:1px solid var(--rule);border-radius:6px;padding:1rem;margin-bottom:1.5rem}
video,audio{display:block;width:100%;height:auto;max-height:70vh;margin-bottom:.75rem;background:#000;border-radius:4px}
audio{background:none;min-height:3rem}
.chapters{list-style:none;margin:.75rem 0 0;padding:0}
.chapters a{display:flex;gap:.75rem;padding:.35rem .5rem;text-decoration:none;border-radius:4px}
.chapters a:hover,.chapters a[aria-current]{background:var(--wash)}
.chapters span,.time{font-variant-numeric:tabular-nums;color:var(--soft);flex:none}
.table{overflow-x:auto;margin-bottom:1rem}
table{border-collapse:collapse;width:100%;background:var(--sheet)}
caption{text-align:start;font-weight:600;padding:.4rem 0}
th,td{text-align:start;vertical-align:top;padding:.4rem .4rem;border-bottom:1px solid var(--rule)}
td.n,th.n{text-align:end;font-variant-numeric:tabular-nums;white-space:nowrap}
.wishes{display:flex;flex-wrap:wrap;gap:.5rem}.wishes[hidden],#own[hidden]{display:none}#own{display:flex;flex-wrap:wrap;align-items:center;gap:.5rem;margin-top:.5rem}#place{flex:1;min-width:8rem;min-height:1.75rem;accent-color:var(--copper)}#line{flex-basis:100%;min-height:3rem;margin:0;font-family:var(--read);font-size:1.12rem}#clock{font-variant-numeric:tabular-nums}#held{margin:.5rem 0 1rem}#held:not(:empty){padding:.5rem .75rem;background:var(--wash);border-radius:4px}
.player h2{font-size:1.1rem;border:0;margin:0;padding:0}
ul.items{list-style:none;padding:0}.items li{padding:.35rem 0;border-bottom:1px solid var(--rule)}
label{display:flex;gap:.6rem;align-items:start}
input[type=checkbox]{width:1.4rem;height:1.4rem;margin:0;flex:none;accent-color:#1d675a}
ol.steps{list-style:none;counter-reset:s;padding:0;margin:0}
.steps>li{counter-increment:s;display:grid;gap:.5rem 1.25rem;padding:1rem 0 1rem 2.75rem;position:relative;border-bottom:1px solid var(--rule)}
.steps>li::before{content:counter(s);position:absolute;inset-inline-start:0;top:1rem;font:600 1.4rem var(--read);color:var(--copper)}
.steps img{display:block;max-width:100%;height:auto;border-radius:4px;margin-bottom:.5rem}
.steps p{margin:0 0 .4rem}.sentence{font-family:var(--read);font-size:1.12rem}
.cue{display:grid;grid-template-columns:4.5rem 1fr;gap:0 .5rem;font-family:var(--read)}
.cue p{margin:0 0 .4rem}.cue .notice{grid-column:2;margin:.25rem 0 .75rem;font-family:var(--work)}
body:not([data-mirrored]) [data-hand=mirrored],[data-mirrored] [data-hand=shown]{display:none}
[data-mirrored] span[data-hand=mirrored]{background:var(--amber)}
[data-mirrored] .frame video,[data-mirrored] .steps img:not([data-hand]){transform:scaleX(-1)}
button{font:inherit;min-height:2.75rem;padding:.35rem .9rem;border:1px solid #857a68;border-radius:6px;background:var(--sheet);color:inherit;cursor:pointer}
button[aria-pressed=true]{background:var(--wash);border-color:var(--copper)}
.term{color:inherit;text-decoration:underline dotted var(--copper) 2px}
.words>div{padding:.4rem 0;border-bottom:1px solid var(--rule)}.words>div:target{background:var(--wash)}.words dt,dfn{font-weight:600;font-style:normal}.words dd{margin:0;font-family:var(--read)}
summary{cursor:pointer;font-weight:600;padding:.35rem 0}
.label{display:inline-block;padding:0 .5rem;border:1px solid var(--rule);border-radius:1rem;background:var(--sheet)}
@media (max-width:30rem){.measures tr{display:grid;grid-template-columns:1.2fr 1fr 1fr;border-bottom:1px solid var(--rule)}.measures :is(th,td){border:0}.measures :is(th,td):nth-child(4){grid-column:1/-1}
th,td{padding:.4rem .2rem;font-size:.9rem}td.n,th.n{white-space:normal}}
@media (min-width:44rem){.steps>li.pictured{grid-template-columns:minmax(0,15rem) 1fr}}
@media (min-width:66rem){.spread{display:grid;grid-template-columns:minmax(0,1fr) minmax(24rem,31rem);gap:2.25rem}
.beside{grid-column:2;grid-row:1}.text{grid-column:1;grid-row:1;min-width:0}.player{position:sticky;top:1rem;max-height:calc(100vh - 2rem);overflow:auto}}
@media print{.player,.files{display:none}body{max-width:none;padding:0}html{background:none}.spread{display:block}.steps>li,tr{break-inside:avoid}}
`;
