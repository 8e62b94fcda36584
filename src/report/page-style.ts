import type { Html } from '../sheet/html.ts';
import { ACCENT, FAINT, INK } from '../sheet/svg.ts';

const LIGHT = `--page:#f7f5f0;--card:#ffffff;--ink:#1c1a16;--soft:#56524a;--line:#d8d3c7;--strong:#1c1a16;--accent:${ACCENT};--track:#ece8df;--stage:#fbfaf7;color-scheme:light;`;
const DARK =
  '--page:#15171a;--card:#1e2125;--ink:#edeae4;--soft:#b9b4aa;--line:#3b3f45;--strong:#edeae4;--accent:#f2a678;--track:#30343a;--stage:#3a3e45;color-scheme:dark;';

/** The sheet's own colours, so that its drawings follow the page into the dark; those on a card of paper stay as they are. */
const AS_DRAWN = [
  [INK, 'var(--ink)'],
  ['#ffffff', 'var(--card)'],
  ['#000000', 'var(--ink)'],
  [FAINT, 'var(--soft)'],
  [ACCENT, 'var(--accent)'],
]
  .map(
    ([from, to]) =>
      `figure:not(.paper) [fill="${from!}"],.signs [fill="${from!}"]{fill:${to!}}figure:not(.paper) [stroke="${from!}"],.signs [stroke="${from!}"]{stroke:${to!}}`,
  )
  .join('\n');

/** Ink on paper, one accent that never carries meaning alone; light and dark; prints in black and white. */
export const REPORT_STYLE: Html = {
  html: `
:root{${LIGHT}}
@media (prefers-color-scheme:dark){:root:not([data-theme=light]){${DARK}}}
:root[data-theme=dark]{${DARK}}
@media print{:root,:root[data-theme=dark],:root:not([data-theme=light]){${LIGHT}--page:#ffffff}}
*{box-sizing:border-box}
html{background:var(--page);color:var(--ink);font:16px/1.5 system-ui,'Segoe UI',Roboto,'Helvetica Neue',Arial,'DejaVu Sans',sans-serif;-webkit-print-color-adjust:exact;print-color-adjust:exact;scroll-behavior:smooth}
@media (prefers-reduced-motion:reduce){html{scroll-behavior:auto}}
body{margin:0 auto;max-width:66rem;padding:0 1.5rem 4rem;overflow-wrap:anywhere}
a{color:inherit;text-decoration-thickness:1px;text-underline-offset:.18em}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
.skip{position:absolute;left:-99rem}.skip:focus{left:1rem;top:1rem;background:var(--card);padding:.4rem .8rem;z-index:2}
.top{padding-top:2.2rem}
.top>div{display:flex;justify-content:space-between;align-items:center;min-height:2.2rem}
.kind{margin:0;font-size:.8rem;font-weight:700;letter-spacing:.16em;text-transform:uppercase;color:var(--accent)}
h1{margin:0;font-size:2.5rem;line-height:1.1;letter-spacing:-.01em}
.verdict{margin:1.1rem 0 1.2rem;padding:.9rem 1.2rem;font-size:1.3rem;line-height:1.35;font-weight:650;background:var(--card);border:2px solid var(--strong);border-left-width:.7rem;border-radius:.3rem}
.verdict.bad{border-style:dashed;border-left-style:solid}
.verdict span{font-weight:800}
.lead,.small,.caution{font-size:.875rem;color:var(--soft);max-width:52rem}
nav ul{display:flex;flex-wrap:wrap;gap:.2rem 1.3rem;margin:1.2rem 0 1.8rem;padding:.6rem 0;list-style:none;border-block:1px solid var(--line);font-size:.9rem}
h2{margin:0 0 .9rem;font-size:1.55rem;line-height:1.2;letter-spacing:-.005em;break-after:avoid}
h3{margin:0;font-size:1.15rem;line-height:1.3;break-after:avoid}
h4{margin:1.3rem 0 .4rem;font-size:.8rem;letter-spacing:.06em;text-transform:uppercase;color:var(--soft);break-after:avoid}
p{margin:0 0 .7rem}
.part{margin-top:3.4rem}
figure{margin:0}
svg{display:block;width:100%;height:auto}
.wide{overflow-x:auto;background:var(--card);border:1px solid var(--line);border-radius:.3rem}
table{width:100%;border-collapse:collapse;font-size:.9rem;font-variant-numeric:tabular-nums}
th,td{padding:.45rem .8rem;text-align:left;vertical-align:baseline;border-top:1px solid var(--line);overflow-wrap:break-word}
data{white-space:nowrap}
thead th{border-top:0;font-size:.78rem;line-height:1.3;font-weight:600;color:var(--soft);vertical-align:bottom}
tbody th{font-weight:600}
th small,.makers small,.recurs small{display:block;font-weight:400;font-size:.8rem;color:var(--soft)}
td.big{font-weight:700;font-size:1.05rem;white-space:nowrap}
.mark{display:inline-block;padding:.05rem .5rem;font-size:.85rem;font-weight:650;white-space:nowrap;border:1.5px solid var(--strong);border-radius:1rem}
.mark.missed{background:var(--strong);color:var(--card);border-radius:.15rem}
.batch{margin-top:.8rem}
.map,.need,.paper,#view canvas{background:var(--card);border:1px solid var(--line);border-radius:.3rem}
.map{padding:1rem}
.reading{margin:.9rem 0 .5rem}
.signs,.keys ul{list-style:none;margin:0;padding:0}
.signs{display:flex;flex-wrap:wrap;gap:.3rem 1.4rem;font-size:.9rem}
.signs li,.keys li{display:flex;align-items:center;gap:.5rem}.keys li{padding:.14rem 0}
.signs svg{flex:none;width:26px}
.keys{display:grid;grid-template-columns:repeat(auto-fit,minmax(19rem,1fr));gap:.2rem 2rem;margin-top:.8rem;padding-top:.8rem;border-top:1px solid var(--line);font-size:.9rem}
.badge{flex:none;display:inline-grid;place-items:center;width:1.5rem;height:1.5rem;font-size:.8rem;font-weight:700;border:1.5px solid var(--strong)}
.badge.round{border-radius:50%}.badge.square{background:var(--strong);color:var(--card)}
.need{margin-bottom:1.4rem;padding:1.2rem 1.4rem 1rem}
.need header{display:grid;grid-template-columns:1fr auto;gap:.1rem 1rem;align-items:center}
.need header p{grid-column:1/-1;margin:0;font-size:.9rem;color:var(--soft)}
.spread{display:grid;grid-template-columns:minmax(0,1fr) 16rem;gap:1.6rem;margin-top:.9rem;align-items:start;break-inside:avoid}
.seen{display:grid;grid-template-columns:minmax(0,19rem) 1fr;gap:1.6rem;margin-top:.6rem;align-items:center;font-size:.9rem;color:var(--soft);break-inside:avoid}
dl{margin:0}
.figures{display:grid;grid-template-columns:6.6rem 1fr;gap:.3rem .8rem;overflow-wrap:normal;font-size:.9rem;font-variant-numeric:tabular-nums}
.figures dt{color:var(--soft)}.figures dd{margin:0;font-weight:600}
.figures .big{font-size:1.45rem;line-height:1.1;font-weight:750}
.figures dt:first-child{align-self:end}
.makers{list-style:none;margin:0;padding:0}
.makers li{display:grid;grid-template-columns:4.6rem 15rem 1fr;gap:.9rem;align-items:start;padding:.28rem 0;break-inside:avoid}
.makers .share{text-align:right;font-weight:700;font-variant-numeric:tabular-nums;white-space:nowrap}
.makers b{font-weight:550}
.bar i{display:block;height:.8rem;background:var(--accent);border:1px solid var(--strong)}
.makers .bar{margin-top:.32rem;background:var(--track)}
.recurs{display:grid;grid-template-columns:1fr 1fr;gap:0 2rem;font-size:.9rem}
.recurs dt{font-weight:600;grid-row:1}.recurs dd{margin:0;grid-row:2}
.reckonings tbody .name th{padding-top:.9rem;font-size:1rem;border-top:2px solid var(--strong)}
.reckonings tbody th{font-weight:400}.reckonings .name th,.reckonings .trials>*{font-weight:650!important}
.reckonings .words td{color:var(--soft);padding-bottom:.8rem}
.origins td:first-of-type{white-space:nowrap}
.assumed{padding:0 .35rem;border:1px dashed var(--soft);border-radius:.2rem;font-size:.8rem}
.stills{display:grid;grid-template-columns:repeat(auto-fit,minmax(24rem,1fr));gap:1rem}
.paper{padding:1rem;background:#ffffff;color:#1c1a16}
.paper figcaption{margin-top:.5rem;font-size:.85rem;color:#56524a}
.held{display:grid;gap:1.6rem}
.held h3{margin-bottom:.4rem}.held .paper{margin-bottom:.8rem}.held svg{max-width:46rem;margin:0 auto}
.held ul{margin:0;padding-left:1.2rem;font-size:.9rem}.held .bad{list-style:'✕ '}
.live-only{display:none}
#view.live .live-only{display:block}#view.live .stills{display:none}
#view canvas{display:block;width:100%;aspect-ratio:16/9;background:var(--stage);touch-action:none;cursor:grab}
.bar{display:flex;flex-wrap:wrap;gap:.5rem}
#view .bar{margin:.6rem 0}
button{font:inherit;font-size:.9rem;color:var(--ink);background:var(--card);border:1.5px solid var(--strong);border-radius:.3rem;padding:.3rem .8rem;min-height:2.1rem;cursor:pointer}
button[aria-pressed=true]{background:var(--strong);color:var(--card)}
.shown label{display:flex;align-items:center;gap:.4rem;margin-right:.9rem;font-size:.9rem}
.shown i{width:.9rem;height:.9rem;border:1.5px solid var(--strong)}
.shown .blank{background:#e6cc9c}.shown .locates{background:#8fb0c9}.shown .holds{background:#70757d}
.method{display:grid;grid-template-columns:10rem 1fr;gap:.5rem 1.4rem;font-size:.95rem}
.method dt{font-weight:600}.method dd{margin:0}
.advice li{margin-bottom:.6rem}.gain{display:block;font-size:.9rem;color:var(--soft)}
footer{margin-top:3.5rem;padding-top:1rem;border-top:1px solid var(--line);font-size:.85rem;color:var(--soft)}
pre{white-space:pre-wrap;font-size:.78rem}
${AS_DRAWN}
@media (max-width:46rem){body{padding:0 1rem 3rem}h1{font-size:1.9rem}.spread,.seen,.recurs,.method{grid-template-columns:1fr}.recurs dt,.recurs dd{grid-row:auto}.makers li{grid-template-columns:4.2rem 1fr}.makers .bar{display:none}.stills{grid-template-columns:1fr}.need{padding:1rem}}
@page{margin:14mm}
@media print{html{font-size:10.5pt}body{max-width:none;padding:0}.top{padding-top:0}#theme,nav,.skip,#view .live-only{display:none!important}#view.live .stills{display:grid}.part{margin-top:9mm}.wide{overflow:visible}tr,.paper,.map,.need header,li{break-inside:avoid}tbody{break-inside:avoid}.origins tbody{break-inside:auto}.stills{grid-template-columns:1fr 1fr}.notices{display:none}}
`,
};
