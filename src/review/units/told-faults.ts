import { printAddress, printReference, quoteSheetName, type Area, type CellAddress, type Reference } from '../../workbook/address.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { withContent } from '../../workbook/commands.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import type { Found, Mend } from '../finding.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'
import { cellMeaningsOf, referentsOf, unitFaults, type Referent, type UnitFault } from './analysis.ts'
import type { CellMeanings } from './cell-meanings.ts'
import type { FaultKind, Piece, Stretch } from './fault.ts'

/** The faults of one kind as findings, neighbours with the same one together. */
export function toldFaults(survey: Survey, kind: FaultKind): Found[] {
  const meanings = cellMeaningsOf(survey)
  return merge(unitFaults(survey).filter(({ fault }) => fault.kind === kind).map((one) => ({ found: told(survey, one, meanings), alike: one.fault.key })))
}

function told(survey: Survey, one: UnitFault, meanings: CellMeanings): Found {
  const { fault: { severity, words, key, causes }, cell: { sheet, row, column } } = one
  const teller = new Teller(survey, one, meanings)
  const mend = teller.mend()
  return {
    severity, sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
    reason: teller.say(words), key, causes: teller.causes(causes), ...(mend && { mend }),
  }
}

/** Puts a fault into the words of one of the formulas that have it. */
class Teller {
  readonly #one: UnitFault
  readonly #meanings: CellMeanings
  readonly #tokens: readonly Token[]
  readonly #all: readonly Referent[]

  constructor(survey: Survey, one: UnitFault, meanings: CellMeanings) {
    this.#one = one
    this.#meanings = meanings
    this.#tokens = tokenise(one.cell.formula)
    this.#all = referentsOf(survey, one.cell.formula, one.cell.sheet)
  }

  say(pieces: readonly Piece[], shorten: (text: string) => string = shortened): string {
    return pieces.map((piece) => this.#piece(piece, shorten)).join('')
  }

  causes(stretches: readonly Stretch[]): readonly CellPlace[] {
    const places = stretches.flatMap((stretch) => this.#referents(stretch)).flatMap(({ sheet, area }) => cornersOf(area).map((place) => ({ sheet: sheet.name, ...place })))
    return [...new Map(places.map((place) => [`${place.row}:${place.column}:${place.sheet}`, place])).values()].slice(0, MOST_CAUSES)
  }

  mend(): Mend | undefined {
    const { fault: { mend }, cell } = this.#one
    if (mend === undefined) return undefined
    const words = this.say(mend.words)
    const { sheet } = cell
    if ('unitCell' in mend) {
      const at = this.#declared()
      const unit = at && sheet.rows[at.row]?.[at.column]
      // Over a column it would be the unit of all others too, and a formula there has its reasons.
      if (at === undefined || unit === undefined || at.row !== cell.row || isFormula(unit.content)) return undefined
      return { words, edits: [cellEdit(sheet, at, withContent(unit, mend.unitCell))] }
    }
    const [first, last] = this.#one.tokensOf(mend.replace)
    const tokens = this.#tokens
    const by = this.say(mend.by, (text) => text)
    const formula = `${textOf(tokens, 0, first - 1)}${by}${textOf(tokens, last + 1, tokens.length - 1)}`
    return { words, edits: [cellEdit(sheet, cell, withContent(cell.cell, formula))] }
  }

  #piece(piece: Piece, shorten: (text: string) => string): string {
    if (typeof piece === 'string') return piece
    if ('declared' in piece) {
      const at = this.#declared()
      if (at === undefined) return ''
      return piece.declared === 'address' ? printAddress(at.row, at.column) : this.#unitReference(at, this.#one.cell.row, null)
    }
    if ('quantityOf' in piece) return this.#quantity(piece.quantityOf)
    if ('unitCellOf' in piece) return this.#unitOf(piece.unitCellOf, (at, referent) => this.#unitReference(at, referent.area.top, referent.reference.sheet))
    if ('firstIn' in piece) {
      const [referent] = this.#referents(piece.firstIn)
      const at = referent && this.#meanings.first(referent.sheet, referent.area, piece.unit)
      return referent === undefined || at === undefined ? '' : `${referent.sheet === this.#one.cell.sheet ? '' : `${quoteSheetName(referent.sheet.name)}!`}${printAddress(at.row, at.column)}`
    }
    return shorten(withoutParentheses(withoutDollars(this.#textOf(piece))))
  }

  /** `C7:D7`, or `C7&C$4` of what has its unit over it. */
  #quantity(stretch: Stretch): string {
    const text = this.#textOf(stretch)
    return this.#unitOf(stretch, (at, { area, reference }) => {
      const { from } = reference
      return at.row === area.top ? printReference({ ...reference, to: { ...from, column: at.column } }) : `${text}&${this.#unitReference(at, area.top, reference.sheet)}`
    })
  }

  #unitOf(stretch: Stretch, print: (at: CellAddress, referent: Referent) => string): string {
    const [referent] = this.#referents(stretch)
    const at = referent && this.#meanings.unitCell(referent.sheet, { row: referent.area.top, column: referent.area.left })
    return referent === undefined || at === undefined ? this.#textOf(stretch) : print(at, referent)
  }

  /** A unit over a column stays where it is when the formula is filled down. */
  #unitReference(at: CellAddress, row: number, sheet: Reference['sheet']): string {
    return printReference({ sheet, from: { ...at, rowAbsolute: at.row !== row, columnAbsolute: false }, to: null })
  }

  #declared(): CellAddress | undefined {
    const { sheet, row, column } = this.#one.cell
    return this.#meanings.unitCell(sheet, { row, column })
  }

  #referents(stretch: Stretch): readonly Referent[] {
    const [first, last] = this.#one.tokensOf(stretch)
    const [from, to] = [this.#tokens[first]?.start ?? 0, this.#tokens[last]?.end ?? 0]
    return this.#all.filter(({ start, end }) => start >= from && end <= to)
  }

  #textOf(stretch: Stretch): string {
    return textOf(this.#tokens, ...this.#one.tokensOf(stretch))
  }
}

const MOST_CAUSES = 12
const MOST_QUOTED = 48

const textOf = (tokens: readonly Token[], first: number, last: number): string => tokens.slice(first, last + 1).map(({ text }) => text).join('')

const shortened = (text: string): string => (text.length > MOST_QUOTED ? `${text.slice(0, MOST_QUOTED - 1)}…` : text)

/** As a reader says it: which part of an address stays when it is filled is of no matter to a unit. */
const withoutDollars = (text: string): string => text.replace(/\$(?=[A-Za-z]{1,3}\$?\d|\d)/g, '')

/** As the formula's tree has it: the outer ones belong to what stands around. */
function withoutParentheses(text: string): string {
  if (!text.startsWith('(') || !text.endsWith(')')) return text
  let depth = 0
  for (const [index, letter] of [...text].entries()) {
    if (letter === '(') depth++
    if (letter === ')' && --depth === 0 && index < text.length - 1) return text
  }
  return withoutParentheses(text.slice(1, -1))
}

const cornersOf = ({ top, bottom, left, right }: Area): CellAddress[] => (top === bottom && left === right ? [{ row: top, column: left }] : [{ row: top, column: left }, { row: bottom, column: right }])

const cellEdit = (sheet: Sheet, { row, column }: CellAddress, cell: ReturnType<typeof withContent>): Edit => ({ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell }] })
