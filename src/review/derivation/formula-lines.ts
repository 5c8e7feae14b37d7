import type { FunctionDefinition } from '../../../functions/define.ts'
import type { Given } from '../../../functions/given.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import type { FormulaSource, ReferredCells } from './formula-source.ts'
import { FormulaWriter } from './formula-writer.ts'
import type { Where } from './where.ts'

/** A formula as an engineer would write it down, from its tree. */
export function formulaLines(tree: FormulaNode, saying: Saying): FormulaLines {
  const writer = new FormulaWriter(saying)
  const words = writer.write(tree, 'words').text
  const equalities = writer.equalities(tree)
  return { words, equalities: equalities.filter((text, at) => text !== equalities[at - 1]), reasons: [...writer.reasons], wheres: [...writer.wheres.values()], uses: [...writer.uses.values()], functions: [...writer.functions], calls: [...writer.calls.values()] }
}

/** How cells and numbers are said in a formula that is put into words. */
export interface Saying {
  readonly source: FormulaSource
  /** A number as it is printed; of a cell, as that cell would be. */
  readonly print: (value: number, place?: CellPlace) => string
  /** What a cell is called. */
  readonly nameOf: (place: CellPlace) => string
  readonly rangeName: (cells: ReferredCells) => string
  /** What else is to be said of a cell whose number is put in: that it was converted on its way here. */
  readonly about?: (place: CellPlace) => Where | undefined
}

/** A formula as an engineer would write it down. */
export interface FormulaLines {
  /** With the names of what it refers to: `Load [3] × (1 + Margin [2])`. */
  readonly words: string
  /** With numbers and units put in, as far as possible; each equal to the next, and the last to the result. */
  readonly equalities: readonly string[]
  /** Why this branch of the formula was taken and no other. */
  readonly reasons: readonly string[]
  /** What the numbers come from that stand in them: conversions, functions in functions, which row was found. */
  readonly wheres: readonly Where[]
  /** The cells that had a part in it. */
  readonly uses: readonly ReferredCells[]
  /** The functions of the catalogue that had a part in it, in the order of writing. */
  readonly functions: readonly FunctionDefinition[]
  /** Their calls with what they were given, as far as it is known; those in others first. */
  readonly calls: readonly FunctionCall[]
}

export interface FunctionCall {
  readonly definition: FunctionDefinition
  readonly given: readonly Given[]
  /** In words, with numbers. */
  readonly phrase: string
}
