/** The look of the report: ink on white whatever the theme, marks by shape and words, nothing that needs colour. */
export const REPORT_STYLE = `
.report {
  color: #111;
  background: #fff;
  color-scheme: light;
  font: 8.5pt/1.35 system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', 'DejaVu Sans', sans-serif;
  font-variant-numeric: tabular-nums lining-nums;
  font-variant-ligatures: none;
}
.report section { break-before: page; }
.report .front { break-before: auto; }
.report h1, .report h2, .report p, .report ul, .report ol { margin: 0; padding: 0; }
.report table { border-collapse: collapse; text-align: left; }
.report td, .report th { position: relative; padding: 1.6pt 4pt; vertical-align: top; overflow-wrap: anywhere; white-space: pre-line; font-weight: inherit; text-align: left; }
.report tr { break-inside: avoid; }
.report thead { break-inside: avoid; break-after: avoid; }
.report .mark { width: 8pt; height: 8pt; margin-right: 3pt; vertical-align: -1pt; }
.report sup { font-size: 6pt; font-weight: 400; line-height: 0; }

.report .kicker { color: #333; font-variant-caps: all-small-caps; font-size: 10pt; letter-spacing: 0.03em; }
.report h1 { margin-top: 2pt; font-size: 20pt; line-height: 1.2; overflow-wrap: anywhere; }
.report .purpose { margin-top: 4pt; font-size: 10pt; color: #333; }
.report .facts { width: 100%; margin-top: 14pt; font-size: 9.5pt; table-layout: fixed; }
.report .facts th { width: 20%; padding-left: 0; color: #444; }
.report .facts tr { border-top: 0.5pt solid #bbb; }
.report .facts tr:last-child { border-bottom: 0.5pt solid #bbb; }
.report .facts td, .report .facts th { padding-block: 3pt; }
.report .signature td, .report .signature th { height: 26pt; }
.report .signature .name { font-weight: 600; }
.report .signature .line { width: 24%; }
.report .signature .line small { position: absolute; bottom: 2pt; color: #555; font-size: 6.5pt; }
.report .caution { margin-top: 12pt; padding: 5pt 8pt; border: 0.8pt solid #333; font-size: 9.5pt; font-weight: 600; }

.report .front h2 { margin-bottom: 3pt; font-size: 12pt; }
.report .front > h2 { margin-top: 16pt; break-after: avoid; }
.report .listing { width: 100%; margin-top: 13pt; }
.report .listing caption { text-align: left; break-after: avoid; }
.report .listing th { border-bottom: 0.8pt solid #333; color: #333; font-size: 7.5pt; }
.report .listing td { border-bottom: 0.4pt solid #ccc; }
.report .listing td:first-child, .report .listing th:first-child { padding-left: 0; }
.report .check-marks, .report .record { table-layout: fixed; font-size: 7.5pt; }
.report .check-marks th:nth-child(1) { width: 9%; }
.report .check-marks th:nth-child(2) { width: 17%; }
.report .check-marks th:nth-child(3) { width: 32%; }
.report .record th:nth-child(1) { width: 4%; }
.report .record th:nth-child(2) { width: 19%; }
.report .record th:nth-child(3) { width: 16%; }
.report .record th:nth-child(4) { width: 20%; }
.report .record th:nth-child(6) { width: 15%; }
.report .listing .hash { font-family: monospace; font-size: 6.5pt; white-space: nowrap; }
.report .legend { margin: 3pt 0 0; font-size: 7.5pt; }
.report .legend .hash { font-family: monospace; overflow-wrap: anywhere; }
.report .legend.not-met { font-weight: 600; }
.report .sheet .checked { border-left: 2.4pt double #333; }
.report .sheet .checked-stale { border-left: 2.4pt dashed #333; }
.report .listing .not-met, .report .listing .error { font-weight: 600; }
.report .contents .count { width: 18pt; color: #555; }
.report .checks { table-layout: fixed; }
.report .checks th:nth-child(1) { width: 19%; }
.report .checks th:nth-child(2) { width: 8%; }
.report .checks th:nth-child(3) { width: 38%; }
.report .findings, .report .accepted { table-layout: fixed; font-size: 7.5pt; }
.report .findings th:nth-child(1) { width: 11%; }
.report .findings th:nth-child(2), .report .accepted th:nth-child(1) { width: 25%; }
.report .findings .warning { font-weight: 600; }
.report .accepted th:nth-child(2) { width: 32%; }
.report .accepted th:nth-child(4) { width: 15%; }
.report .methods { table-layout: fixed; font-size: 7.5pt; }
.report .methods th:nth-child(1) { width: 21%; }
.report .methods th:nth-child(2) { width: 25%; }
.report .methods th:nth-child(4) { width: 9%; }
.report .sources, .report .cautions { padding-left: 16pt; }
.report .sources { font-size: 7.5pt; }
.report .sources li, .report .cautions li { margin-top: 2pt; break-inside: avoid; }
.report .sources b { font-weight: 500; }

.report .sheet h2 { display: flex; justify-content: space-between; margin-bottom: 4pt; color: #333; font-size: 8pt; font-weight: 500; }
.report .part > p { color: #444; font-size: 7.5pt; break-after: avoid; }
.report .part ~ .part { break-before: page; }
.report .part ~ .short { margin-top: 18pt; break-before: auto; }
.report .short { break-inside: avoid; }
.report .sheet table { width: 100%; table-layout: fixed; }
.report .sheet td:first-child, .report .sheet th:first-child { padding-left: 0; }
.report .sheet tr { border-bottom: 0.4pt solid #d4d4d4; }
.report .sheet thead tr:last-child { border-bottom: 0.6pt solid #777; }
.report .together { break-inside: avoid; }
.report .first > td, .report table ~ table thead > tr:first-child > th { padding-top: 8pt; }

.report .number, .report .over-numbers { text-align: right; }
.report .number { padding-right: 8pt; white-space: nowrap; }
.report .over-numbers { padding-right: 8pt; }
.report .number i { visibility: hidden; font-style: normal; }
.report .number sup { position: absolute; right: 1pt; top: 4.5pt; }
.report .role-title { font-size: 14pt; font-weight: 650; line-height: 1.25; }
.report .row-heading > * { padding-top: 5pt; }
.report .role-heading { font-size: 9.5pt; font-weight: 650; font-variant-caps: all-small-caps; letter-spacing: 0.03em; }
.report .role-unit { padding-left: 1pt; color: #333; white-space: nowrap; }
.report .over-numbers.role-unit { padding-left: 4pt; }
.report .role-note, .report .role-text { color: #333; font-size: 7.8pt; }
.report .role-result { font-weight: 650; }
.report .sheet :is(td, th).role-input { padding-right: 3pt; padding-left: 0; }
.report .role-input > span { display: block; min-height: 11pt; padding: 0 1pt 0 4pt; border: 0 solid #111; border-width: 0 0 0.6pt 1.5pt; line-height: 11pt; }
.report .role-input.number > span { padding-right: 5pt; }
.report .role-check.not-met, .report .sheet .error { font-weight: 650; }
.report .figures h2 { margin-bottom: 4pt; font-size: 12pt; }
.report figure { margin: 14pt 0 0; break-inside: avoid; }
.report figcaption { margin-bottom: 6pt; padding-top: 4pt; border-top: 0.6pt solid #777; font-size: 9.5pt; }
.report figure p, .report figure ul { margin-top: 4pt; color: #333; font-size: 7.8pt; overflow-wrap: anywhere; }
.report figure ul { padding-left: 16pt; }
/* Of the colours of the screen none reaches the drawing: it falls back to its ink on paper. */
.report .figure-drawing { --ink: initial; --ink-quiet: initial; --line: initial; --hairline: initial; --paper-raised: initial; --accent: initial; --accent-wash: initial; --problem: initial; --problem-wash: initial; --font: initial; max-width: 100%; max-height: 7.4in; height: auto; }
.report .turned .figure-drawing { max-height: 5in; }

.report .footnotes { margin-top: 8pt; padding-left: 16pt; font-size: 7.5pt; }
.report .footnotes li { break-inside: avoid; overflow-wrap: anywhere; white-space: pre-line; }
`
