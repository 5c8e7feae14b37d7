import { switchCase } from './case-switching.ts'
import { caseName, caseNameProblem, casesOf, cellHolding, heldIn, isOwn, ownValues, type Case, type Cases, type CaseValue } from './cases.ts'
import { samePlace, type CellPlace } from './cell-place.ts'
import { sheetOf, withContent } from './commands.ts'
import { foldCase, type CellContent, type Workbook } from './document.ts'
import { applyEdits, type Edit } from './edits.ts'
import { MAX_CASE_NAME } from './limits.ts'
import { WorkbookProblem } from './problem.ts'

/** What is done with cases. Positions count from 0; `null` is the base. */

/** A case after the others, with the values that another one has of its own, or with none where it begins at the base. It is current then. */
export function makeCase(workbook: Workbook, name: string, from: number | null, note = ''): Edit[] {
  const { list } = casesOf(workbook)
  refuseName(workbook, name)
  const made: Case = { name, ...(note === '' ? {} : { note }), aside: from === null ? [] : ownValues(workbook, from) }
  return inTurn(workbook, (before) => changed(before, { list: [...list, made] }), (before) => switchCase(before, list.length))
}

export function renameCase(workbook: Workbook, at: number, name: string): Edit[] {
  const one = caseAt(workbook, at)
  refuseName(workbook, name, at)
  return changed(workbook, { list: casesOf(workbook).list.with(at, { ...one, name }) })
}

/** Nothing, or blanks alone, takes the note away. */
export function setCaseNote(workbook: Workbook, at: number, text: string): Edit[] {
  const { note: _before, ...one } = caseAt(workbook, at)
  return changed(workbook, { list: casesOf(workbook).list.with(at, text.trim() === '' ? one : { ...one, note: text }) })
}

/** Takes a case away. If it is current, the base is so from then on. */
export function removeCase(workbook: Workbook, at: number): Edit[] {
  caseAt(workbook, at)
  const leave = (before: Workbook): Edit[] => (casesOf(before).current === at ? switchCase(before, null) : [])
  return inTurn(workbook, leave, (before) => {
    const { list, current } = casesOf(before)
    return changed(before, { list: list.toSpliced(at, 1), current: current !== null && current > at ? current - 1 : current })
  })
}

/**
 * What is typed for a case, current or not. The base's value is also that of every case without one of its own. A content that a cell cannot
 * hold, and a cell that is no input, are refused.
 */
export function setInCase(workbook: Workbook, at: number | null, place: CellPlace, content: CellContent): Edit[] {
  const { list, current } = casesOf(workbook)
  const cell = inputAt(workbook, place)
  if (at === current) return [cellEdit(place, withContent(cell, content))]
  const value: CaseValue = { sheet: place.sheet, row: place.row, column: place.column, content }
  const keeper = at ?? current
  if (keeper !== null && (at !== null || isOwn(workbook, current, place))) {
    const one = caseAt(workbook, keeper)
    return changed(workbook, { list: list.with(keeper, { ...one, aside: [...one.aside.filter((other) => !samePlace(other, place)), value] }) })
  }
  // The current case has nothing of its own here: the cell shows the base's.
  return [cellEdit(place, withContent(cell, content)), ...changed(workbook, {})]
}

/** Takes back what a case has of its own in a cell: it has there what the base has. */
export function takeBack(workbook: Workbook, at: number, place: CellPlace): Edit[] {
  const { list, current } = casesOf(workbook)
  const one = caseAt(workbook, at)
  if (!isOwn(workbook, at, place)) return []
  const without = changed(workbook, { list: list.with(at, { ...one, aside: one.aside.filter((value) => !samePlace(value, place)) }) })
  const base = heldIn(workbook, null, place)
  const { rows } = sheetOf(workbook, place.sheet)
  return at === current && base ? [cellEdit(place, cellHolding(rows[place.row]?.[place.column], base)), ...without] : without
}

/**
 * Makes what a case has the base. No other case comes to have anything else by that: where it had the base's value it has it as its own from then
 * on. What was the base is a case of its own, in the place of that one.
 */
export function makeBase(workbook: Workbook, at: number): Edit[] {
  caseAt(workbook, at)
  return inTurn(workbook, (before) => switchCase(before, at), (before) => {
    const { list } = casesOf(before)
    const former = caseAt(before, at)
    const others = list.map((one, index) => (index === at ? { ...one, name: freeName(before, 'Former base') } : { ...one, aside: [...one.aside, ...former.aside.filter((value) => !one.aside.some((own) => samePlace(own, value)))] }))
    return changed(before, { list: others, current: null })
  })
}

/** Adds cells to those that are compared; one that is there already stays where it is. */
export function compareCells(workbook: Workbook, places: readonly CellPlace[]): Edit[] {
  const { compared } = casesOf(workbook)
  return changed(workbook, { compared: [...compared, ...places.filter((place) => !compared.some((other) => samePlace(other, place)))] })
}

export function stopComparing(workbook: Workbook, place: CellPlace): Edit[] {
  return changed(workbook, { compared: casesOf(workbook).compared.filter((other) => !samePlace(other, place)) })
}

/** The case of that name, `null` for the base, whatever its capitals. */
export function caseCalled(workbook: Workbook, name: string): number | null {
  const { list } = casesOf(workbook)
  const at = list.findIndex((one) => foldCase(one.name) === foldCase(name.trim()))
  if (at >= 0) return at
  if (foldCase(name.trim()) === foldCase(caseName(workbook, null))) return null
  throw new WorkbookProblem(`there is no case "${name}"; there are ${[caseName(workbook, null), ...list.map((one) => one.name)].map((one) => `"${one}"`).join(', ')}`)
}

/** A name that no case has: `like`, or with the first number behind it that is free. */
export function freeName(workbook: Workbook, like: string): string {
  const others = casesOf(workbook).list.map(({ name }) => name)
  for (let number = 1; ; number++) {
    const ending = number === 1 ? '' : ` ${number}`
    const name = like.slice(0, MAX_CASE_NAME - ending.length).trimEnd() + ending
    if (caseNameProblem(name, others) === undefined) return name
  }
}

function inTurn(workbook: Workbook, ...steps: readonly ((workbook: Workbook) => Edit[])[]): Edit[] {
  const edits: Edit[] = []
  let now = workbook
  for (const step of steps) {
    const next = step(now)
    edits.push(...next)
    now = applyEdits(now, next).workbook
  }
  return edits
}

const changed = (workbook: Workbook, change: Partial<Cases>): Edit[] => [{ kind: 'cases', cases: { ...casesOf(workbook), ...change } }]

const cellEdit = ({ sheet, row, column }: CellPlace, cell: ReturnType<typeof cellHolding>): Edit => ({ kind: 'cells', sheet, cells: [{ row, column, cell }] })

function inputAt(workbook: Workbook, place: CellPlace) {
  const cell = sheetOf(workbook, place.sheet).rows[place.row]?.[place.column]
  if (cell?.role !== 'input') throw new WorkbookProblem('only inputs differ between cases; accepted: a cell of the role input')
  return cell
}

function caseAt(workbook: Workbook, at: number): Case {
  const { list } = casesOf(workbook)
  const one = list[at]
  if (!one) throw new WorkbookProblem(`there is no case number ${at + 1}; there are ${list.length}`)
  return one
}

function refuseName(workbook: Workbook, name: string, at?: number): void {
  const problem = caseNameProblem(name, casesOf(workbook).list.filter((_, index) => index !== at).map((one) => one.name))
  if (problem !== undefined) throw new WorkbookProblem(problem)
}
