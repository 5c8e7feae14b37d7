import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { eachCell } from '../../workbook/cells.ts'
import type { FindingKind, Found, Mend } from '../finding.ts'
import { quotedFormula } from '../finding-words.ts'
import { merge, type CellFound } from '../merge.ts'
import type { OddOne } from '../odd-along.ts'
import { oddOnes } from '../odd-ones.ts'
import type { Survey } from '../survey.ts'
import { templateDifferences } from '../template-differences.ts'

/** Typed values where a formula belongs: they follow nothing any more. */
export const overwrittenFormulas: FindingKind = {
  kind: 'overwritten-formulas',
  heading: 'Values typed where a formula belongs',
  about: 'A number that was typed over a formula, or copied as a value, stays as it is when its inputs change. Held against the template, the neighbours in column and row, and the role of the cell; inputs are not looked at where neither has a formula.',
  find(survey) {
    const cells = new Map<string, CellFound>()
    const add = (key: string, one: CellFound): void => {
      if (!cells.has(key)) cells.set(key, one)
    }
    for (const one of againstTemplate(survey)) add(placeKey(one), one)
    for (const one of amongFormulas(survey)) add(placeKey(one), one)
    for (const one of inResultCells(survey)) add(placeKey(one), one)
    return merge([...cells.values()])
  },
}

const placeKey = ({ found: { sheet, area: { top, left } } }: CellFound): string => `${top}:${left}:${sheet}`

function againstTemplate(survey: Survey): CellFound[] {
  const title = survey.template?.title ?? ''
  return templateDifferences(survey).filter(({ now }) => now !== 'formula').map(({ sheet, row, column, cell, expected }): CellFound => {
    const isWhole = !expected.content.includes('#REF!')
    return typed(sheet, row, column, cell, `where the template “${title}” has a formula, ${quotedFormula(expected.content)}.`, 'template',
      isWhole ? { words: 'Put the template’s formula back', cell: { ...expected, ...looksOf(cell) } } : undefined)
  })
}

function amongFormulas(survey: Survey): CellFound[] {
  // Where the template has an input, one may be typed.
  const isMeant = ({ sheet, row, column }: OddOne): boolean => survey.template?.cell({ sheet: sheet.name, row, column })?.role === 'input'
  return oddOnes(survey).filter((odd) => !isFormula(odd.cell.content) && !isMeant(odd)).map(({ sheet, row, column, cell, neighbour, expected, way, isBetween }): CellFound =>
    typed(sheet, row, column, cell, `where the ${isBetween ? `cells ${way === 'down' ? 'above and below' : 'on both sides'} have` : 'other cells of the column have'} a formula, here ${quotedFormula(expected)}.`, 'neighbours',
      { words: 'Fill in the neighbours’ formula', cell: { ...neighbour, ...looksOf(cell), content: expected } }))
}

function inResultCells({ workbook }: Survey): CellFound[] {
  return workbook.sheets.flatMap((sheet) => {
    const found: CellFound[] = []
    eachCell(sheet, (cell, row, column) => {
      if (cell.content === null || isFormula(cell.content) || (cell.role !== 'result' && cell.role !== 'check')) return
      found.push(typed(sheet, row, column, cell, `in a cell for a ${cell.role}: it follows from nothing. Where it is meant as an input, make it one.`, 'role', undefined))
    })
    return found
  })
}

/** What is kept of the cell when its formula comes back. */
const looksOf = (cell: Cell | undefined): Partial<Cell> => (cell?.note === undefined ? {} : { note: cell.note })

function typed(sheet: Sheet, row: number, column: number, cell: Cell | undefined, where: string, against: string, mend: { readonly words: string; readonly cell: Cell } | undefined): CellFound {
  const content = cell?.content ?? null
  const what = content === null ? 'Nothing stands' : `${typeof content === 'string' ? `“${content}”` : String(content).toUpperCase()} is typed`
  const edit: Mend | undefined = mend && { words: mend.words, edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: mend.cell }] }] }
  const found: Found = {
    // A unit that was typed is meant, and numbers follow it.
    severity: cell?.role === 'unit' ? 'remark' : 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
    reason: `${what} ${where}`, key: content === null ? 'nothing' : `typed ${String(content)}`, ...(edit && { mend: edit }),
  }
  return { found, alike: `${against}${found.severity}${content === null ? 'nothing' : ''}` }
}
