/** What a report of differences looks like beyond the calculation report. */
export const DIFFERENCES_STYLE = `
.differences-report .effects, .differences-report .differences { table-layout: fixed; }
.differences-report .effects th:nth-child(1) { width: 15%; }
.differences-report .effects th:nth-child(3), .differences-report .effects th:nth-child(4) { width: 18%; }
.differences-report .effects th:nth-child(5) { width: 13%; }
.differences-report .differences th:nth-child(1) { width: 12%; }
.differences-report .differences th:nth-child(2) { width: 9%; }
.differences-report .differences th:nth-child(3) { width: 21%; }
.differences-report td small { display: block; color: #444; font-size: 7pt; }
.differences-report .kind { font-weight: 600; }
.differences-report .quiet { color: #444; }
.differences-report .quiet .kind { font-weight: 400; }
.differences-report .turned td { font-weight: 600; }
.differences-report .differences { margin-top: 10pt; }
.differences-report .differences caption h2 { font-size: 10pt; }
`
