/** The codes that a file takes for granted by number (ECMA-376, part 1, 18.8.30, all languages); General, 0, is none. */
export const BUILT_IN_FORMATS: ReadonlyMap<number, string> = new Map([
  [1, '0'], [2, '0.00'], [3, '#,##0'], [4, '#,##0.00'], [9, '0%'], [10, '0.00%'], [11, '0.00E+00'], [12, '# ?/?'], [13, '# ??/??'],
  [14, 'mm-dd-yy'], [15, 'd-mmm-yy'], [16, 'd-mmm'], [17, 'mmm-yy'], [18, 'h:mm AM/PM'], [19, 'h:mm:ss AM/PM'], [20, 'h:mm'], [21, 'h:mm:ss'], [22, 'm/d/yy h:mm'],
  [37, '#,##0 ;(#,##0)'], [38, '#,##0 ;[Red](#,##0)'], [39, '#,##0.00;(#,##0.00)'], [40, '#,##0.00;[Red](#,##0.00)'],
  [45, 'mm:ss'], [46, '[h]:mm:ss'], [47, 'mmss.0'], [48, '##0.0E+0'], [49, '@'],
])

/** Whether a code shows a number as a date or a time: it has a sign for one outside texts, colours and conditions. */
export const isDateFormat = (code: string): boolean =>
  /[ymdhs]/i.test(code.replace(/"[^"]*"|\\.|_.|\*./g, '').replace(/\[(?![hms]+\])[^\]]*\]/gi, '').replace(/General/gi, ''))

/** `2026-11-27`, `2026-11-27T08:30:00` as days since 1899-12-30; undefined for anything else. */
export function dayNumber(text: string): number | undefined {
  const found = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/.exec(text)
  if (found === null) return undefined
  const [, year, month, day, hours = 0, minutes = 0, seconds = 0] = found
  const days = Math.round((Date.UTC(Number(year), Number(month) - 1, Number(day)) - Date.UTC(1899, 11, 30)) / 86_400_000)
  return Number.isFinite(days) ? days + (Number(hours) + Number(minutes) / 60 + Number(seconds) / 3600) / 24 : undefined
}
