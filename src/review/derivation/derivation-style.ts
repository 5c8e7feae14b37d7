/** What derivations and hand calculation sheets look like beyond the report. */
export const DERIVATION_STYLE = `
.derivation h3 { margin: 9pt 0 2pt; font-size: 8.5pt; break-after: avoid; }
.derivation .of-sheet { margin-top: 11pt; color: #333; font-size: 9.5pt; font-variant-caps: all-small-caps; letter-spacing: 0.03em; }
.derivation a { color: inherit; text-decoration: none; }
.derivation .given { table-layout: fixed; }
.derivation .given th:nth-child(1) { width: 18pt; }
.derivation .given th:nth-child(2) { width: 17%; }
.derivation .given th:nth-child(3) { width: 25%; }
.derivation .given th:nth-child(4) { width: 18%; }
.derivation .given .value { font-weight: 600; }
.derivation small { color: #444; font-size: 7pt; font-weight: 400; }
.derivation .remarks, .derivation .place { color: #444; font-size: 7.2pt; }
.derivation .count { width: 18pt; color: #555; font-weight: 500; }
.derivation .step { margin-top: 5pt; padding-top: 3pt; border-top: 0.4pt solid #ccc; break-inside: avoid; }
.derivation .step.result { border-top: 1pt solid #111; }
.derivation .step-head { display: flex; gap: 6pt; }
.derivation .step-head .count { flex: none; }
.derivation .step-head .what { flex: 1; font-weight: 600; }
.derivation .step-lines { padding-left: 24pt; overflow-wrap: anywhere; }
.derivation .step-lines p { padding-left: 8pt; text-indent: -8pt; }
.derivation .words { color: #222; }
.derivation .comes { font-weight: 650; }
.derivation .where { color: #444; font-size: 7.4pt; }
.derivation .error { font-weight: 650; }
.derivation .raw { margin-top: 1pt; color: #555; font: 6.6pt/1.35 'Cascadia Mono', Menlo, Consolas, 'DejaVu Sans Mono', monospace; }
.derivation .rows { margin-top: 3pt; font-size: 7.2pt; }
.derivation .rows td { padding-block: 0.8pt; border-bottom: 0.3pt solid #ddd; }
.derivation .function { break-inside: avoid; font-size: 7.6pt; }
.derivation .function h3 span { font-weight: 400; }
.derivation .function ul { padding-left: 14pt; }
.derivation .equation { font-size: 8.5pt; }
.derivation .beside { font-size: 7.4pt; }

.hand section:first-child { break-before: auto; }
.hand h1 { font-size: 15pt; }
.hand h2 { font-size: 10pt; }
.hand .purpose { margin-top: 2pt; font-size: 8.5pt; }
.hand .equations { margin-top: 6pt; padding: 4pt 8pt; border: 0.6pt solid #777; break-inside: avoid; }
.hand .equations p + p { margin-top: 3pt; }
.hand .symbols { color: #444; font-size: 7.2pt; }
.hand .work { table-layout: fixed; }
.hand .work th:nth-child(1) { width: 18pt; }
.hand .work th:nth-child(2) { width: 44%; }
.hand .work th.lowside { width: 17%; }
.hand .work td { height: 21pt; border-bottom: 0.5pt solid #999; }
.hand .work .room { border-right: 0.5pt solid #999; border-left: 0.5pt solid #999; }
.hand .value { font-weight: 600; }
.hand .compared { table-layout: fixed; }
.hand .compared td { height: 22pt; border: 0.5pt solid #777; }
.hand .compared td:first-child { padding-left: 4pt; }
.hand .listing, .hand .facts { margin-top: 7pt; }
.hand .signature td, .hand .signature th { height: 22pt; }
.hand .caution { margin-top: 7pt; padding-block: 3pt; font-size: 8pt; }
.hand .listing.compared, .hand .facts, .hand .caution { break-inside: avoid; }
`
