import type { Html } from './html.ts';
import { ACCENT } from './svg.ts';

/** Black line work on white, one accent that never carries meaning alone, 11 pt for arm's length. */
export const PAGE_STYLE: Html = {
  html: `
@page { margin: 12mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #111; font: 11pt/1.38 system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
body { margin: 0; }
main { width: 186mm; max-width: 100%; margin: 0 auto; overflow-wrap: anywhere; }
@media screen { main { padding: 10mm 0; } }
header { border-bottom: 1mm solid #111; padding-bottom: 3mm; }
.kind { margin: 0; font-size: 10pt; font-weight: 700; letter-spacing: .16em; text-transform: uppercase; color: ${ACCENT}; }
h1 { margin: 0; font-size: 25pt; line-height: 1.15; }
.verdict { margin: 2.5mm 0 0; font-size: 14pt; line-height: 1.3; font-weight: 700; }
h2 { margin: 8mm 0 3mm; font-size: 16pt; line-height: 1.2; break-after: avoid; }
h3 { margin: 5mm 0 2mm; font-size: 13pt; line-height: 1.25; break-after: avoid; }
h4 { margin: 3mm 0 1mm; font-size: 11pt; break-after: avoid; }
p, ul, ol { margin: 0 0 2mm; }
ul { padding-left: 5mm; }
figure { margin: 0 0 4mm; break-inside: avoid; }
figcaption { font-size: 9.5pt; }
svg { display: block; max-width: 100%; height: auto; }
.which { display: flex; align-items: center; gap: 4mm; margin: 0 0 1.5mm; }
.which h2 { margin: 0; padding: .4mm 3mm; font-size: 12pt; color: #fff; background: #111; border: .3mm solid #111; }
.which b { font-size: 19pt; line-height: 1.1; }
.pictures { margin-top: 5mm; }
.cautions { margin-top: 5mm; padding: 3mm 5mm 2mm; border: .9mm solid #111; border-left: 5mm solid #111; break-inside: avoid; }
.cautions h2 { margin: 0 0 2mm; }
.cautions li { margin-bottom: 1.2mm; }
.heights thead th { font-size: 9.5pt; }
.key { display: grid; grid-template-columns: 1fr 1fr; gap: 6mm; font-size: 10pt; break-inside: avoid; }
.key ul { list-style: none; padding: 0; }
.key li { margin-bottom: 1mm; }
.solids { display: flex; flex-wrap: wrap; gap: 6mm; margin-top: 3mm; }
.solids figure { margin: 0; break-inside: avoid; }
.solids svg { width: 78mm; height: auto; }
.number, .letter { display: inline-block; min-width: 5.2mm; padding: 0 .8mm; margin-right: 1.2mm; text-align: center; font-size: 10pt; line-height: 4.9mm; border: .35mm solid #111; }
.number { border-radius: 3mm; }
.letter { color: #fff; background: #111; }
.need { break-inside: avoid; border-top: .3mm solid #111; }
.beside { display: grid; grid-template-columns: 70mm 1fr; gap: 6mm; }
.beside figure { margin: 0; }
.chance b { font-size: 22pt; line-height: 1.1; }
table { width: 100%; border-collapse: collapse; font-size: 10.5pt; }
th, td { padding: 1.2mm 2mm 1.2mm 0; text-align: left; vertical-align: top; border-bottom: .2mm solid #777; }
th { font-weight: 400; }
td { font-weight: 700; font-variant-numeric: tabular-nums; }
thead th { font-weight: 700; border-bottom: .5mm solid #111; }
.milling { margin: 2mm 0; font-size: 9.5pt; }
.milling thead th { font-size: 9.5pt; }
.heights { table-layout: fixed; }
.heights th:nth-child(1) { width: 25%; }
.heights th:nth-child(2) { width: 11%; }
th, td { overflow-wrap: break-word; }
.heights td, .heights tbody th { font-size: 9.5pt; font-weight: 400; }
.strike { border: .8mm solid #111; padding: 1mm; }
.sources { padding-left: 6mm; }
.keep { break-inside: avoid; }
.work { break-before: page; }
.work h2 { margin-top: 0; }
.steps h3 { padding: .8mm 3mm; color: #fff; background: #111; }
.steps ol { list-style: none; padding: 0; }
.steps > ol > li { display: grid; grid-template-columns: 7mm 5.5mm 1fr; gap: 2.5mm; padding: 1.6mm 0; border-bottom: .2mm solid #999; break-inside: avoid; }
.tick { width: 5.5mm; height: 5.5mm; margin-top: .2mm; border: .5mm solid #111; }
.boxes { display: flex; flex-wrap: wrap; gap: 1.5mm 5mm; margin-top: 1.5mm; }
.box { display: inline-flex; align-items: flex-end; gap: 1.5mm; font-size: 10pt; }
.box i { display: block; width: 19mm; height: 7mm; border: .3mm solid #111; }
footer { margin-top: 6mm; padding-top: 2mm; border-top: .3mm solid #111; font-size: 9pt; }
@media (max-width: 700px) { main { padding: 0 4mm; } .beside, .key { grid-template-columns: 1fr; } }
`,
};
