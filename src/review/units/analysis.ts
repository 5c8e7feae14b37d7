import { parseReference, type Area, type Reference } from '../../workbook/address.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import { namedReference } from '../../workbook/formula/references.ts'
import { isReferenceKind, referenceExtents, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { formulaTree } from '../../workbook/formula/tree.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { CellMeanings, type Numbered } from './cell-meanings.ts'
import { bareRatioFault, declaredFault } from './declared-unit.ts'
import type { Fault, FaultKind, Stretch } from './fault.ts'
import { Inference } from './infer.ts'
import { unitQuantity } from './known-unit.ts'
import { siteOf, type Site } from './site.ts'
import { UNKNOWN, type Meaning } from './meaning.ts'

/** Cells that a formula refers to, where it does. */
export interface Referent extends Stretch {
  readonly sheet: Sheet
  readonly area: Area
  readonly reference: Reference
}

/** A formula with a fault of its units. */
export interface UnitFault {
  readonly cell: FormulaCell
  readonly fault: Fault
  /** The tokens of a stretch of the formula that the fault was found in first, one of the same form: first and last. */
  readonly tokensOf: (stretch: Stretch) => readonly [first: number, last: number]
}

/** Everything about units that is found in the formulas of a workbook: worked out once a survey. */
export function unitFaults(survey: Survey): readonly UnitFault[] {
  return analysisOf(survey).faults
}

export const cellMeaningsOf = (survey: Survey): CellMeanings => analysisOf(survey).meanings

/** What a formula refers to, by names too, in the order of writing. */
export function referentsOf(survey: Survey, formula: string, home: Sheet): readonly Referent[] {
  return tokenise(formula).flatMap(({ kind, text, start, end }) => {
    const reference = isReferenceKind(kind) ? parseReference(text) : kind === 'name' ? namedReference(survey.workbook.names, text) : undefined
    const resolved = reference && survey.resolve(reference, home)
    return resolved ? [{ start, end, reference, ...resolved }] : []
  })
}

function analysisOf(survey: Survey): Analysis {
  const known = analyses.get(survey)
  if (known !== undefined) return known
  const made = new Analysis(survey)
  analyses.set(survey, made)
  return made
}

const analyses = new WeakMap<Survey, Analysis>()

/** What formulas of one form with cells of the same meaning have in common. */
interface FormAnalysis {
  readonly root: Meaning
  readonly faults: readonly Fault[]
  readonly tokensOf: UnitFault['tokensOf']
}

/** From cell to cell without declared unit, no further than this. */
const MOST_STEPS = 40

class Analysis {
  readonly meanings: CellMeanings
  readonly #survey: Survey
  readonly #forms = new Map<string, FormAnalysis>()
  readonly #roots = new Map<Sheet, Map<number, Meaning | null>>()
  readonly #site: Site | undefined
  #steps = 0
  #faults: readonly UnitFault[] | undefined

  constructor(survey: Survey) {
    this.#survey = survey
    this.meanings = new CellMeanings(survey, (sheet, row, column) => this.#root(sheet, row, column))
    this.#site = siteOf(survey)
  }

  get faults(): readonly UnitFault[] {
    this.#faults ??= this.#survey.formulas.flatMap((cell) => {
      const { faults, tokensOf } = this.#analyse(cell)
      return faults.map((fault) => ({ cell, fault, tokensOf }))
    })
    return this.#faults
  }

  /** Of a formula in a cell without unit; undefined where it is being worked out. */
  #root(sheet: Sheet, row: number, column: number): Meaning | undefined {
    const known = this.#roots.get(sheet) ?? new Map<number, Meaning | null>()
    this.#roots.set(sheet, known)
    const key = row * 2 ** 15 + column
    const found = known.get(key)
    if (found !== undefined) return found ?? undefined
    const cell = sheet.rows[row]?.[column]
    if (!cell || !isFormula(cell.content) || this.#steps >= MOST_STEPS) return undefined
    known.set(key, null)
    this.#steps++
    const { root } = this.#analyse({ sheet, row, column, cell, formula: cell.content })
    this.#steps--
    known.set(key, root)
    return root
  }

  #analyse({ formula, sheet, row, column, cell }: FormulaCell): FormAnalysis {
    const declared = DECLARED_ROLES.has(cell.role) ? (this.#survey.unit(sheet, row, column) ?? '') : undefined
    const key = `${this.#formOf(formula, sheet)}|${declared ?? 'any'}`
    const known = this.#forms.get(key)
    if (known !== undefined) return known
    const made = this.#tryForm(formula, sheet, declared)
    this.#forms.set(key, made)
    return made
  }

  /** The formula without its addresses, and what stands in the cells: the same of all formulas that one look is enough for. A name is the same cells everywhere. */
  #formOf(formula: string, home: Sheet): string {
    const referents: Referent[] = []
    let [text, at] = ['', 0]
    for (const { start, end } of referenceExtents(formula)) {
      const reference = parseReference(formula.slice(start, end))
      const resolved = reference && this.#survey.resolve(reference, home)
      if (!resolved) continue
      text += `${formula.slice(at, start)}#${this.#held(resolved.sheet, resolved.area).id};`
      at = end
      referents.push({ start, end, reference, ...resolved })
    }
    return `${text}${formula.slice(at)}|${this.#unitCells(referents).map((of) => of.join('.')).join()}`
  }

  /** Of a formula that is nested too deep for the stack nothing is said. */
  #tryForm(formula: string, home: Sheet, declared: string | undefined): FormAnalysis {
    try {
      return this.#newForm(formula, home, declared)
    } catch (fault) {
      if (fault instanceof RangeError) return { root: UNKNOWN, faults: [], tokensOf: () => [0, 0] }
      throw fault
    }
  }

  #newForm(formula: string, home: Sheet, declared: string | undefined): FormAnalysis {
    const tokensOf = tokenFinder(tokenise(formula))
    const tree = formulaTree(formula)
    if (tree === undefined) return { root: UNKNOWN, faults: [], tokensOf }
    const referents = referentsOf(this.#survey, formula, home)
    const unitCells = this.#unitCells(referents)
    // In parentheses a part of the tree begins before its reference.
    const placeOf = ({ start, end }: Stretch): number => referents.findIndex((one) => one.start >= start && one.end <= end)
    const unit = declared === undefined ? undefined : unitQuantity(declared)
    const inference = new Inference((node) => {
      const referent = referents[placeOf(node)]
      return referent === undefined ? UNKNOWN : this.#held(referent.sheet, referent.area).meaning
    }, {
      declared: unit === undefined ? undefined : declared,
      sitePressure: this.#site?.text,
      siteMatters: this.#site?.isStandard === false,
      isUnitOf: (node, value) => (unitCells[placeOf(node)] ?? []).includes(placeOf(value)),
      hasUnitCell: (node) => {
        const referent = referents[placeOf(node)]
        return referent !== undefined && this.meanings.unitCell(referent.sheet, { row: referent.area.top, column: referent.area.left }) !== undefined
      },
    })
    const root = inference.whole(tree)
    const within = distinct(inference.faults)
    // What is wrong within it is told of there, if the unit of the result follows from it.
    if (!within.every(({ kind }) => LEAVES_UNIT.has(kind))) return { root: root.meaning, faults: within, tokensOf }
    const fault = declared === '' ? bareRatioFault(root) : unit !== undefined && declared !== undefined ? declaredFault(root, unit, declared, inference.surroundings) : undefined
    return { root: root.meaning, faults: fault ? [...within, fault] : within, tokensOf }
  }

  #held(sheet: Sheet, area: Area): Numbered {
    return isOneCell(area) ? this.meanings.cell(sheet, area.top, area.left) : this.meanings.area(sheet, area)
  }

  /** Of each reference to a unit cell: which of the references are to values of that unit, by their places in the list. */
  #unitCells(referents: readonly Referent[]): readonly (readonly number[])[] {
    if (!referents.some(isUnitCell)) return []
    const owns = referents.map((value) => (isUnitCell(value) || !isOneCell(value.area) ? undefined : this.meanings.unitCell(value.sheet, { row: value.area.top, column: value.area.left })))
    return referents.map((unit) => {
      if (!isUnitCell(unit)) return []
      const { sheet, area: { top, left } } = unit
      return referents.flatMap((value, index) => (value.sheet === sheet && owns[index]?.row === top && owns[index]?.column === left ? [index] : []))
    })
  }
}

const DECLARED_ROLES: ReadonlySet<string> = new Set(['result', 'input'])

/** Faults of a number: what is computed with it is in its unit all the same. */
const LEAVES_UNIT: ReadonlySet<FaultKind> = new Set(['gauge-without-site', 'joined-unit', 'unit-in-exponent', 'mixed-units'])

const isUnitCell = ({ sheet, area }: Referent): boolean => isOneCell(area) && sheet.rows[area.top]?.[area.left]?.role === 'unit'

const isOneCell = ({ top, bottom, left, right }: Area): boolean => top === bottom && left === right

function tokenFinder(tokens: readonly Token[]): UnitFault['tokensOf'] {
  return ({ start, end }) => [tokens.findIndex((token) => token.start >= start), tokens.findLastIndex((token) => token.end <= end)]
}

/** The same fault twice in one formula is one. */
function distinct(faults: readonly Fault[]): readonly Fault[] {
  const seen = new Set<string>()
  return faults.filter(({ kind, key, causes }) => {
    const text = JSON.stringify([kind, key, causes.map(({ start, end }) => [start, end])])
    if (seen.has(text)) return false
    seen.add(text)
    return true
  })
}
