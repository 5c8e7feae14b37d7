import { findUnit, type Unit } from '../../functions/units/units.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import type { Sheet } from '../workbook/document.ts'
import type { FormulaNode } from '../workbook/formula/tree.ts'
import { isOneCell, isPair, referredCells } from './derivation/formula-source.ts'
import type { Survey } from './survey.ts'
import { handedOn } from './value-source.ts'

/** A number that was typed, and that a comparison is held to. */
export interface TypedLimit {
  readonly value: number
  readonly unit: Unit
  /** The input that holds it; none of a number in the formula. */
  readonly place?: CellPlace
}

/** A side of a comparison as a typed quantity: of an input, or a number in the formula with the unit of the other side. */
export function typedLimit(survey: Survey, home: Sheet, side: FormulaNode, other: FormulaNode): TypedLimit | undefined {
  const literal = side.kind === 'number' ? side.value : undefined
  if (literal !== undefined) {
    const unit = unitOf(survey, home, other)
    return unit === undefined ? undefined : { value: literal, unit }
  }
  const place = handedOn(side, survey.workbook, home)
  const sheet = place && survey.workbook.sheets.find((one) => one.name === place.sheet)
  const content = place && sheet?.rows[place.row]?.[place.column]?.content
  const unit = place && sheet && findUnit(survey.unit(sheet, place.row, place.column) ?? textBeside(survey, place))
  return place !== undefined && typeof content === 'number' && unit !== undefined ? { value: content, unit, place } : undefined
}

const textBeside = (survey: Survey, { sheet, row, column }: CellPlace): string => {
  const beside = survey.value(sheet, row, column + 1)
  return typeof beside === 'string' ? beside : ''
}

/** The unit that a part is in, by its call of UNIT.CONVERT or the cell that it is. */
function unitOf(survey: Survey, home: Sheet, node: FormulaNode): Unit | undefined {
  if (node.kind === 'call') {
    const asked = node.arguments.at(-1)
    if (asked?.kind === 'text') return findUnit(asked.text)
    const place = asked && handedOn(asked, survey.workbook, home)
    const text = place && survey.value(place.sheet, place.row, place.column)
    return typeof text === 'string' ? findUnit(text) : undefined
  }
  const referred = referredCells(node, { workbook: survey.workbook, home })
  if (referred === undefined || !(isOneCell(referred.area) || isPair(referred))) return undefined
  return findUnit(survey.unit(referred.sheet, referred.area.top, referred.area.left) ?? '')
}
