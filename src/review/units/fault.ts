import type { FormulaNode } from '../../workbook/formula/tree.ts'
import type { Severity } from '../finding.ts'

export const FAULT_KINDS = [
  'unlike-units', 'result-unit', 'linked-unit', 'gauge-as-absolute', 'gauge-without-site', 'difference-as-temperature', 'joined-unit', 'percent-as-share', 'mixed-units', 'unit-in-exponent',
] as const

export type FaultKind = (typeof FAULT_KINDS)[number]

/** A stretch of the formula. */
export type Stretch = Pick<FormulaNode, 'start' | 'end'>

/** A text, or what stands in its place in each formula that has the fault. */
export type Piece =
  | string
  /** As the formula has it. */
  | Stretch
  /** The unit cell that applies to the cell with the formula: "D8". */
  | { readonly declared: 'address' | 'reference' }
  /** A reference with its own unit: `C7:D7`, `C7&C$4`. */
  | { readonly quantityOf: Stretch }
  /** The unit cell of a reference: `D7`. */
  | { readonly unitCellOf: Stretch }
  /** The first of a range's cells with this unit: "D5". */
  | { readonly firstIn: Stretch; readonly unit: string }

export interface Fault {
  readonly kind: FaultKind
  readonly severity: Severity
  readonly words: readonly Piece[]
  /** What is accepted where it is accepted: the fault without addresses. */
  readonly key: string
  /** The parts of the formula whose cells cause it. */
  readonly causes: readonly Stretch[]
  readonly mend?: MendPlan
}

export type MendPlan =
  | { readonly words: readonly Piece[]; readonly replace: Stretch; readonly by: readonly Piece[] }
  | { readonly words: readonly Piece[]; readonly unitCell: string }

/** A sentence with pieces in it: say`adds ${right} in in to ${left} in ft`. */
export const say = (texts: TemplateStringsArray, ...pieces: readonly (Piece | readonly Piece[])[]): readonly Piece[] =>
  texts.flatMap((text, index) => {
    const piece = pieces[index]
    return [text, ...(piece === undefined ? [] : isList(piece) ? piece : [piece])]
  })

const isList = (piece: Piece | readonly Piece[]): piece is readonly Piece[] => Array.isArray(piece)
