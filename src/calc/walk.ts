import type { HyperFormula, SimpleCellAddress, SimpleCellRange } from 'hyperformula'
import { areaOf, type Area, type CellAddress, type Reference } from '../workbook/address.ts'
import { cellAt, sheetByName, usedRange, type Workbook } from '../workbook/document.ts'
import { namedReference, referencesIn } from '../workbook/formula/references.ts'
import { tokenise, type Token } from '../workbook/formula/tokenise.ts'
import { labelOf } from '../workbook/words-beside.ts'
import type { CellValue } from './values.ts'

/** A cell that others are reached from: what it is called and comes to. */
export interface Place extends CellAddress {
  readonly sheet: string
  readonly label: string | undefined
  readonly value: CellValue
  /** As written; undefined where the value has none. */
  readonly unit: string | undefined
}

/** Cells that a formula refers to, where it does: a cell with its unit, or with the unit cell written after it, is one quantity. */
export interface Feed {
  /** The stretch of the formula that says it, `end` not included. */
  readonly start: number
  readonly end: number
  readonly sheet: string
  readonly area: Area
  readonly label: string | undefined
  /** Of the cell, or the number of the quantity; undefined for a range of several values. */
  readonly value: CellValue | undefined
  /** Of the value, as written. In a quantity it is what the formula says itself, beside a single cell what the sheet says. */
  readonly unit: string | undefined
  /** True where the formula takes value and unit together. */
  readonly quantity: boolean
}

/** Users beyond this many are counted only. */
const MOST_USERS = 200

export interface Users {
  readonly places: readonly Place[]
  /** All of them, those that are not listed too. */
  readonly count: number
}

type Read = (sheet: string, row: number, column: number) => CellValue
export type UnitAt = (sheet: string, row: number, column: number) => string | undefined

/** What a formula on a sheet refers to, by reference or by name, in the order of writing. */
export function feedsOf(formula: string, home: string, workbook: Workbook, read: Read, unitAt: UnitAt): Feed[] {
  const tokens = tokenise(formula)
  const feeds = [
    ...referencesIn(tokens),
    ...tokens.flatMap((token) => {
      const reference = token.kind === 'name' ? namedReference(workbook.names, token.text) : undefined
      return reference ? [{ reference, token }] : []
    }),
  ].flatMap((found) => feedOf(found, home, workbook, read, unitAt) ?? [])
  return joined(feeds.toSorted((one, other) => one.start - other.start), tokens, workbook)
}

/** Undefined where the sheet is gone. */
function feedOf({ reference, token: { start, end } }: { readonly reference: Reference; readonly token: Token }, home: string, workbook: Workbook, read: Read, unitAt: UnitAt): Feed | undefined {
  const sheet = sheetByName(workbook, reference.sheet ?? home)
  if (!sheet) return undefined
  const area = areaOf(reference)
  const { top, left, bottom, right } = area
  const place = { start, end, sheet: sheet.name, area, label: labelOf(sheet, { row: top, column: left }) }
  const value = () => read(sheet.name, top, left)
  if (top === bottom && left === right) return { ...place, value: value(), unit: unitAt(sheet.name, top, left), quantity: false }
  const isPair = top === bottom && right === left + 1 && sheet.rows[top]?.[right]?.role === 'unit'
  if (isPair) return { ...place, value: value(), unit: asText(read(sheet.name, top, right)), quantity: true }
  return { ...place, value: undefined, unit: undefined, quantity: false }
}

/** A value joined to its unit, `C12&C$4` or `C12&" "&C$4`, as the one quantity that it makes. */
function joined(feeds: readonly Feed[], tokens: readonly Token[], workbook: Workbook): Feed[] {
  const result: Feed[] = []
  for (const feed of feeds) {
    const before = result.at(-1)
    const isUnit = feed.value !== undefined && !feed.quantity && cellAt(workbook, feed.sheet, feed.area.top, feed.area.left)?.role === 'unit'
    const between = before && tokens.filter(({ start, end }) => start >= before.end && end <= feed.start)
    if (before?.value !== undefined && !before.quantity && isUnit && between?.some(({ text }) => text === '&') && between.every(isJoint)) {
      result[result.length - 1] = { ...before, end: feed.end, unit: asText(feed.value), quantity: true }
    } else result.push(feed)
  }
  return result
}

const isJoint = ({ kind, text }: Token): boolean => kind === 'whitespace' || text === '&' || (kind === 'string' && text.slice(1, -1).trim() === '')

const asText = (value: CellValue | undefined): string | undefined => (typeof value === 'string' && value !== '' ? value : undefined)

/** The cells whose formulas use a cell: by itself, in a range, or by a name. In the order of the sheets, then of reading. */
export function usersOf(engine: HyperFormula, sheets: Workbook['sheets'], start: SimpleCellAddress): { readonly sheet: string; readonly row: number; readonly column: number }[] {
  const found = new Map<string, SimpleCellAddress>()
  const seen = new Set<string>()
  // A range is built on shorter ranges, and a name is a cell on no sheet: both are asked in turn for who uses them.
  const toAsk: (SimpleCellAddress | SimpleCellRange)[] = [start]
  for (let next = toAsk.pop(); next !== undefined; next = toAsk.pop()) {
    for (const dependent of engine.getCellDependents(next)) {
      const key = keyOf(dependent)
      if (seen.has(key)) continue
      seen.add(key)
      if ('start' in dependent || dependent.sheet < 0) toAsk.push(dependent)
      else found.set(key, dependent)
    }
  }
  const order = new Map(sheets.map(({ name }, index) => [engine.getSheetId(name), { name, index }]))
  return [...found.values()]
    .flatMap(({ sheet, row, col }) => {
      const at = order.get(sheet)
      return at ? [{ sheet: at.name, row, column: col, index: at.index }] : []
    })
    .toSorted((one, other) => one.index - other.index || one.row - other.row || one.column - other.column)
    .map(({ sheet, row, column }) => ({ sheet, row, column }))
}

const keyOf = (at: SimpleCellAddress | SimpleCellRange): string =>
  'start' in at ? `${at.start.sheet}:${at.start.row}:${at.start.col}:${at.end.row}:${at.end.col}` : `${at.sheet}:${at.row}:${at.col}`

/** The first users as the screen lists them. */
export function describeUsers(users: readonly { readonly sheet: string; readonly row: number; readonly column: number }[], workbook: Workbook, read: Read, unitAt: UnitAt): Users {
  const places = users.slice(0, MOST_USERS).map(({ sheet, row, column }) => {
    const held = sheetByName(workbook, sheet)
    return { sheet, row, column, label: held && labelOf(held, { row, column }), value: read(sheet, row, column), unit: unitAt(sheet, row, column) }
  })
  return { places, count: users.length }
}

/** A range's cells that may hold something: whole rows and columns end where the sheet does. */
export function usedPart(workbook: Workbook, name: string, area: Area): Area | undefined {
  const sheet = sheetByName(workbook, name)
  if (!sheet) return undefined
  const { rows, columns } = usedRange(sheet)
  const part = { ...area, bottom: Math.min(area.bottom, rows - 1), right: Math.min(area.right, columns - 1) }
  return part.bottom < part.top || part.right < part.left ? undefined : part
}
