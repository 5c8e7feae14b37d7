import { foldCase } from '../../workbook/document.ts'
import { rewriteReferences } from '../../workbook/formula/references.ts'
import { canonicalFormula } from './canonical-formula.ts'
import { followed, type Layout } from './layout.ts'
import { isNear } from './same-value.ts'

export interface FormulasCompared {
  /** Whether a formula of the export, on the sheet `host`, is what the file has there. @param near constants may differ in their last digits */
  same(exported: string, host: string | null, inFile: string, near?: boolean): boolean
}

/** @param otherWorkings the sheets of workings, if another Lowside wrote them: their results stand in other columns then */
export function sameFormulas(layout: Layout, otherWorkings?: readonly string[]): FormulasCompared {
  const sheets = otherWorkings && new Set(otherWorkings.map(foldCase))
  const plain = (formula: string): string => canonicalFormula(sheets === undefined ? formula : rewriteReferences(formula, (reference) =>
    reference.sheet !== null && sheets.has(foldCase(reference.sheet)) ? { ...reference, from: { ...reference.from, column: 0 } } : reference))
  return {
    same(exported, host, inFile, near = false) {
      const expected = followed(exported, host, layout)
      if (expected === inFile) return true
      const [one, other] = [plain(expected), plain(inFile)]
      return one === other || (near && sameButLastDigits(one, other))
    },
  }
}

/** Whether two formulas are the same but for the last digits of long numbers. */
function sameButLastDigits(one: string, other: string): boolean {
  const [pieces, others] = [one.split(LONG_NUMBER), other.split(LONG_NUMBER)]
  return pieces.length === others.length && pieces.every((piece, index) => piece === others[index] || (index % 2 === 1 && isNear(Number(piece), Number(others[index]))))
}

const LONG_NUMBER = /(?<![\w.])(\d*\.\d{6,}(?:e[+-]?\d+)?)/
