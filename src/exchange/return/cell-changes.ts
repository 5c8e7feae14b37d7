import { isFormula, type Cell } from '../../workbook/document.ts'
import type { ReadCell } from '../reading/contents.ts'
import type { CellChange, InputChange } from './changes.ts'
import type { ExpectedCell } from './expected-sheet.ts'
import { cellWords, contentInFile, contentWords, plainContent } from './file-content.ts'
import type { Back } from './formula-back.ts'
import type { FormulasCompared } from './formulas-compared.ts'
import { sameComputed, valueKey } from './same-value.ts'

export interface ComparedCell {
  /** As the workbook has it. */
  readonly cell: Cell | undefined
  readonly exported: ExpectedCell | undefined
  readonly inFile: ReadCell | undefined
  readonly host: string
  readonly formulas: FormulasCompared
  readonly back: Back
}

type Placed = 'id' | 'place' | 'sheet' | 'row' | 'column'
type Difference = Omit<InputChange, Placed> | Omit<CellChange, Placed>

/** What has become of a cell; undefined where it is as it was exported. */
export function cellDifference({ cell, exported, inFile, host, formulas, back }: ComparedCell): Difference | undefined {
  const hasFormula = isFormula(cell?.content)
  if (isSame(exported, inFile, host, formulas, hasFormula)) return undefined
  const isEmpty = inFile === undefined || (inFile.formula === undefined && valueKey(inFile.value) === '')
  const words = { was: contentWords(cell?.content), is: cellWords(inFile) }
  if (inFile === undefined || isEmpty) {
    if (cell?.role === 'input' && !hasFormula) return { kind: 'input', ...words, content: null }
    return { kind: 'cellEmptied', ...words, content: null, taking: { words: 'Empties the cell.' } }
  }
  if (inFile.formula === undefined) return plainDifference(cell, inFile, words)
  const content = contentInFile(inFile, host, back)
  const kind = hasFormula ? 'formulaChanged' : cell === undefined || cell.content === null && cell.role !== 'input' ? 'cellNew' : cell.role === 'input' ? 'formulaInInput' : 'formulaEntered'
  if ('refused' in content) return { kind, ...words, content: null, taking: { refused: content.refused } }
  return { kind, ...words, content: content.content, taking: { words: `${MEANING[kind]}: ${contentWords(content.content)}` } }
}

function plainDifference(cell: Cell | undefined, inFile: ReadCell, words: { readonly was: string; readonly is: string }): Difference {
  const content = plainContent(inFile)
  const hasFormula = isFormula(cell?.content)
  if (cell?.role === 'input' && !hasFormula && 'content' in content) return { kind: 'input', ...words, content: content.content }
  const kind = hasFormula ? 'formulaOverwritten' : cell === undefined || cell.content === null ? 'cellNew' : 'contentChanged'
  return 'refused' in content ? { kind, ...words, content: null, taking: content } : { kind, ...words, content: content.content, taking: { words: MEANING[kind] } }
}

const MEANING = {
  formulaChanged: 'The cell computes otherwise',
  formulaInInput: 'The input becomes a formula',
  formulaEntered: 'A formula takes its place',
  cellNew: 'The cell comes into the workbook',
  formulaOverwritten: 'The formula goes; the value stays as it is, whatever the inputs are.',
  contentChanged: 'What stands in the file takes its place.',
} as const

/** @param computed a value of the export stands for a formula that no other program has */
function isSame(exported: ExpectedCell | undefined, inFile: ReadCell | undefined, host: string, formulas: FormulasCompared, computed: boolean): boolean {
  if (exported?.formula !== undefined && inFile?.formula !== undefined) return formulas.same(exported.formula, host, inFile.formula)
  if (exported?.formula !== undefined || inFile?.formula !== undefined) return false
  const [before, now] = [exported?.value ?? null, inFile?.value ?? null]
  return computed ? sameComputed(before, now) : valueKey(before) === valueKey(now)
}
