import type { RemarkBook } from './remark-book.ts'

/** Takes down what is dangerous or cannot be had in a formula: it is never computed here, and what it refers to outside is never fetched. */
export function remarkFormula(formula: string, sheet: string, row: number, column: number, remarks: RemarkBook): void {
  if (!SUSPICIOUS.test(formula)) return
  const { asks, leavesFile, bare } = outside(formula)
  if (asks || ASKING.test(bare)) remarks.cell(sheet, row, column, 'The formula asks another program for data. It is not run; its last value is kept.')
  else if (leavesFile) remarks.cell(sheet, row, column, 'The formula refers to another file. That file is not opened; the last value is kept.')
  else if (FETCHING.test(bare)) remarks.cell(sheet, row, column, 'The formula fetches something from elsewhere, or calls a program. It is not run; its last value is kept.')
}

/** `[1]Sheet!A1`, `'[1]My sheet'!A1`, `'C:\folder\[other.xlsx]Sheet'!A1`, `'file:///other'#Sheet!A1`. A table's `Table[Column]` is none. */
export const isExternal = (formula: string): boolean => outside(formula).leavesFile

const SUSPICIOUS = /[[|]|:\/\/|DDE|RTD|WEBSERVICE|CALL|REGISTER|EXEC|IMAGE|IMPORT/i
const ASKING = /(?:^|[^\w.])(?:DDE|RTD)\s*\(/i
const FETCHING = /(?:^|[^\w.])(?:WEBSERVICE|CALL|REGISTER(?:\.ID)?|EXEC|IMAGE|IMPORTDATA|IMPORTXML)\s*\(/i

interface Outside {
  /** `program|topic!item` */
  readonly asks: boolean
  readonly leavesFile: boolean
  /** The formula without its texts. */
  readonly bare: string
}

/** One walk through the formula: its time grows with its length, whatever quotes and brackets it has. */
function outside(formula: string): Outside {
  let [asks, leavesFile, bare, at, before] = [false, false, '', 0, 0]
  const lastClosing = formula.lastIndexOf(']')
  while (at < formula.length) {
    const sign = formula.charAt(at)
    if (sign === '"') {
      bare += formula.slice(before, at)
      at = quoteEnd(formula, at, '"')
      before = at
    } else if (sign === "'") {
      const end = quoteEnd(formula, at, "'")
      const inside = formula.slice(at + 1, end - 1)
      const after = formula.charAt(end)
      if ((after === '!' && inside.includes('[')) || (after === '#' && inside.includes('://'))) leavesFile = true
      at = end
    } else if (sign === '[') {
      if (lastClosing > at && !OF_A_TABLE.test(formula.charAt(at - 1))) {
        const end = formula.indexOf(']', at)
        SHEET_AFTER.lastIndex = end + 1
        if (!'@#['.includes(formula.charAt(at + 1)) && SHEET_AFTER.test(formula)) leavesFile = true
        at = end + 1
      } else at++
    } else {
      if (sign === '|' && /[\w']/.test(formula.charAt(at - 1))) asks = true
      at++
    }
  }
  return { asks, leavesFile, bare: bare + formula.slice(before) }
}

/** What stands right before the bracket of a table's column. */
const OF_A_TABLE = /[\p{L}\p{N}_.\]]/u
const SHEET_AFTER = /[^\][!,()+*/ "']{0,255}!/y

/** Past the closing quote, doubled ones passed over; past the end where there is none. */
function quoteEnd(text: string, from: number, quote: string): number {
  let at = text.indexOf(quote, from + 1)
  while (at >= 0 && text.charAt(at + 1) === quote) at = text.indexOf(quote, at + 2)
  return at < 0 ? text.length + 1 : at + 1
}
