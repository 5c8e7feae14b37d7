import { printAddress } from './address.ts'
import { byPlace, printCellPlace, samePlace, type CellPlace } from './cell-place.ts'
import { foldCase, sheetByName, type Cell, type CellContent, type Workbook } from './document.ts'
import { MAX_CASE_NAME, MAX_CASE_VALUES, MAX_CASES, MAX_COMPARED, MAX_TEXT } from './limits.ts'

/**
 * Cases: named sets of input values over one workbook. The cells of the workbook hold the values of the case that is current; what the others
 * hold in those places stands aside. So each value is kept once, and switching is an exchange of what is in the cells and what is aside.
 */

/** What a case holds in a cell; the role and the looks of the cell are those of all cases. */
export interface HeldContent {
  readonly content: CellContent
  /** As in a cell. */
  readonly restatedFrom?: string | number
}

export interface CaseValue extends CellPlace, HeldContent {}

export interface Case {
  readonly name: string
  readonly note?: string
  /** The cells in which the case has a value of its own: that value, or, while the case is current and its values stand in the cells, the base's. */
  readonly aside: readonly CaseValue[]
}

export interface Cases {
  readonly list: readonly Case[]
  /** Position of the case whose values stand in the cells; `null` for the base. */
  readonly current: number | null
  /** Results and checks that are compared, as the user chose them. */
  readonly compared: readonly CellPlace[]
}

/** What the inputs are without any case. */
export const BASE = 'Base'

export const NO_CASES: Cases = { list: [], current: null, compared: [] }

export const casesOf = ({ cases }: Workbook): Cases => cases ?? NO_CASES

/** What the current case is called. */
export const currentName = (workbook: Workbook): string => caseName(workbook, casesOf(workbook).current)

/** `null` for the base. */
export const caseName = (workbook: Workbook, at: number | null): string => (at === null ? BASE : casesOf(workbook).list[at]?.name ?? BASE)

/** Which case the cells hold, for whoever reads them elsewhere. */
export function caseInWords(workbook: Workbook): string {
  const { list, current } = casesOf(workbook)
  const others = (count: number): string => (count === 1 ? '1 other case' : `${count} other cases`)
  if (current === null) return `${BASE} (${others(list.length)} in the workbook, not shown)`
  const count = list[current]?.aside.filter((place) => differs(workbook, current, place)).length ?? 0
  return `${currentName(workbook)}, not the base: ${count === 0 ? 'no input differs' : count === 1 ? '1 input differs' : `${count} inputs differ`}`
}

/** What a case holds in a cell, `null` for the base; undefined where there is no cell. */
export function heldIn(workbook: Workbook, at: number | null, place: CellPlace): HeldContent | undefined {
  const { list, current } = casesOf(workbook)
  const own = at === null ? undefined : valueAside(list[at], place)
  if (own && at !== current) return own
  if (at !== current) {
    const base = current === null ? undefined : valueAside(list[current], place)
    if (base) return base
  }
  const cell = sheetByName(workbook, place.sheet)?.rows[place.row]?.[place.column]
  return cell && held(cell)
}

/** Whether a case has a value of its own in a cell, be it the same as the base's. */
export const isOwn = (workbook: Workbook, at: number | null, place: CellPlace): boolean => at !== null && valueAside(casesOf(workbook).list[at], place) !== undefined

/** Whether a case holds something else in a cell than the base. */
export const differs = (workbook: Workbook, at: number | null, place: CellPlace): boolean =>
  isOwn(workbook, at, place) && heldIn(workbook, at, place)?.content !== heldIn(workbook, null, place)?.content

/** The values that a case has of its own. */
export function ownValues(workbook: Workbook, at: number): readonly CaseValue[] {
  const { list, current } = casesOf(workbook)
  const aside = list[at]?.aside ?? []
  if (at !== current) return aside
  return aside.map(({ sheet, row, column }) => ({ sheet, row, column, ...(heldIn(workbook, at, { sheet, row, column }) ?? { content: null }) }))
}

/** The cells in which any case has a value of its own, in the order of the sheets and of reading. */
export function ownPlaces(workbook: Workbook): readonly CellPlace[] {
  const places = new Map<string, CellPlace>()
  for (const { aside } of casesOf(workbook).list) for (const { sheet, row, column } of aside) places.set(printCellPlace({ sheet, row, column }), { sheet, row, column })
  return inReadingOrder(workbook, [...places.values()])
}

export function inReadingOrder<Place extends CellPlace>({ sheets }: Pick<Workbook, 'sheets'>, places: readonly Place[]): Place[] {
  const order = new Map(sheets.map(({ name }, index) => [name, index]))
  const rank = ({ sheet }: CellPlace) => order.get(sheet) ?? sheets.length
  return places.toSorted((one, other) => rank(one) - rank(other) || byPlace(one, other))
}

export const held = ({ content, restatedFrom }: Cell): HeldContent => ({ content, ...(restatedFrom === undefined ? {} : { restatedFrom }) })

/** The cell with what a case holds there. A cell that is gone comes back as an input; nothing there stays nothing. */
export function cellHolding(cell: Cell | undefined, { content, restatedFrom }: HeldContent): Cell | null {
  if (!cell) return content === null ? null : { content, role: 'input', ...(restatedFrom === undefined ? {} : { restatedFrom }) }
  const { restatedFrom: _before, ...rest } = cell
  return { ...rest, content, ...(restatedFrom === undefined ? {} : { restatedFrom }) }
}

/** What is wrong with cases, with what is accepted; undefined if nothing is. */
export function casesProblem({ list, current, compared }: Cases): string | undefined {
  if (list.length > MAX_CASES) return `${list.length} cases; accepted: up to ${MAX_CASES}`
  if (compared.length > MAX_COMPARED) return `${compared.length} results to compare; accepted: up to ${MAX_COMPARED}`
  if (current !== null && list[current] === undefined) return `there is no case number ${current + 1}; there are ${list.length}`
  const values = list.reduce((sum, { aside }) => sum + aside.length, 0)
  if (values > MAX_CASE_VALUES) return `the cases would have ${values.toLocaleString('en')} values of their own; accepted: up to ${MAX_CASE_VALUES.toLocaleString('en')}`
  for (const [index, one] of list.entries()) {
    const problem = caseNameProblem(one.name, list.slice(0, index).map(({ name }) => name)) ?? valuesProblem(one)
    if (problem !== undefined) return problem
  }
  return undefined
}

/** @param others the names of the other cases */
export function caseNameProblem(name: string, others: readonly string[]): string | undefined {
  const quoted = JSON.stringify(name)
  if (name.trim() !== name || name === '' || name.length > MAX_CASE_NAME) return `${quoted} is no name of a case; accepted: 1 to ${MAX_CASE_NAME} characters, no blank at either end`
  if (foldCase(name) === foldCase(BASE)) return `"${BASE}" is what the inputs are without any case; accepted: another name`
  const taken = others.find((other) => foldCase(other) === foldCase(name))
  return taken === undefined ? undefined : `there is a case "${taken}" already, upper and lower case being the same; accepted: another name`
}

/** In an order that depends on nothing but what they say, without what stands for nothing. */
export function normalCases({ list, current, compared }: Cases): Cases | undefined {
  if (list.length === 0 && compared.length === 0) return undefined
  return {
    list: list.map(({ name, note, aside }) => ({ name, ...(note === undefined || note === '' ? {} : { note }), aside: aside.map(normalValue).toSorted(byPlace) })),
    current,
    compared: compared.map(({ sheet, row, column }) => ({ sheet, row, column })),
  }
}

/** Whether cases in their normal form say the same. */
export const sameCases = (one: Cases | undefined, other: Cases | undefined): boolean => one === other || JSON.stringify(one) === JSON.stringify(other)

const normalValue = ({ sheet, row, column, content, restatedFrom }: CaseValue): CaseValue => ({ sheet, row, column, content, ...(restatedFrom === undefined ? {} : { restatedFrom }) })

const valueAside = (one: Case | undefined, place: CellPlace): CaseValue | undefined => one?.aside.find((value) => samePlace(value, place))

function valuesProblem({ name, note = '', aside }: Case): string | undefined {
  if (note.length > MAX_TEXT) return `case "${name}": a note of ${note.length} characters; accepted: up to ${MAX_TEXT}`
  const taken = new Set<string>()
  for (const value of aside) {
    const place = printCellPlace(value)
    if (taken.has(place)) return `case "${name}", cell ${place}: two values; accepted: one`
    taken.add(place)
    const wrong = contentProblem(value.content)
    if (wrong !== undefined) return `case "${name}", sheet "${value.sheet}", cell ${printAddress(value.row, value.column)}: ${wrong}`
  }
  return undefined
}

function contentProblem(content: CellContent): string | undefined {
  if (typeof content === 'number' && !Number.isFinite(content)) return `${content} is no number that a cell holds; accepted: finite numbers`
  if (content === '') return 'empty text; accepted: null for a cell without content'
  return typeof content === 'string' && content.length > MAX_TEXT ? `${content.length} characters; accepted: up to ${MAX_TEXT}` : undefined
}
