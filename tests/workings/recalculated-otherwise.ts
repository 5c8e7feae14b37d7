import * as library from '@formulajs/formulajs'
import FormulaParser from 'fast-formula-parser'
import type { CellObject } from 'xlsx'
import { areaOf, parseReference, printReference, type Reference } from '../../src/workbook/address.ts'
import { calls } from '../../src/workbook/formula/calls.ts'
import { isReferenceKind, tokenise, type Token } from '../../src/workbook/formula/tokenise.ts'
import type { FileInput, Recalculated } from './recalculated.ts'

/** Functions that the parser lacks, taken from another library of them. */
const LENT = ['COUNTA', 'COUNTIFS', 'EXACT', 'INDEX', 'MATCH', 'MAX', 'MIN', 'SUBSTITUTE', 'SUMIFS', 'VALUE'] as const

/** The parser has an INDEX that its own rules bind to the sheet of the formula: another name goes past it. */
const OTHER_SHEETS_INDEX = 'INDEX.LENT'

interface Place {
  readonly sheet: string
  readonly row: number
  readonly column: number
}

/**
 * Every value of a file, recalculated from its constants alone by a second, independent reader of formulas. It knows no arithmetic of
 * arrays: what stands in SUMPRODUCT is written out for it, a term a cell.
 */
export function recalculatedOtherwise({ sheets, names }: FileInput): ReadonlyMap<string, readonly (readonly Recalculated[])[]> {
  const found = new Map([...sheets].map(([name, rows]) => [name, Array.from(rows, (row) => Array.from(row ?? [], () => undefined as Recalculated | undefined))]))
  const valueAt = (sheet: string, row: number, column: number): Recalculated => found.get(sheet)?.[row]?.[column] ?? null
  const named = new Map([...names].map(([name, text]) => [name.toLowerCase(), parseReference(text)]))
  const parser = new FormulaParser({
    functions: Object.fromEntries(LENT.map((name) => [name === 'INDEX' ? OTHER_SHEETS_INDEX : name, (...given) => lent(name, given.map(({ value }) => value))])),
    onCell: ({ sheet, row, col }) => asGiven(valueAt(sheet, row - 1, col - 1)) ?? '',
    onRange: ({ sheet, from, to }) =>
      Array.from({ length: to.row - from.row + 1 }, (_, down) => Array.from({ length: to.col - from.col + 1 }, (_, across) => asGiven(valueAt(sheet, from.row - 1 + down, from.col - 1 + across)))),
    onVariable: (name) => {
      const reference = named.get(name.toLowerCase())
      if (!reference || reference.sheet === null) return null
      const { top, bottom, left, right } = areaOf(reference)
      return reference.to === null ? { sheet: reference.sheet, row: top + 1, col: left + 1 } : { sheet: reference.sheet, from: { row: top + 1, col: left + 1 }, to: { row: bottom + 1, col: right + 1 } }
    },
  })
  for (const [sheet, rows] of sheets) rows.forEach((row, at) => row?.forEach((_, column) => settle({ sheet, row: at, column })))
  return new Map([...found].map(([name, rows]) => [name, rows.map((row) => row.map((value) => value ?? null))]))

  /** Works a cell out after all that it refers to, whose count may be beyond what a stack holds. */
  function settle(first: Place): void {
    const open: { readonly place: Place; readonly formula: string | undefined; readonly needs: Place[] }[] = []
    const begin = (place: Place): void => {
      const cell = sheets.get(place.sheet)?.[place.row]?.[place.column]
      if (cell === undefined || found.get(place.sheet)?.[place.row]?.[place.column] !== undefined) return
      open.push({ place, formula: cell.f, needs: cell.f === undefined ? [] : precedents(cell.f, place.sheet) })
    }
    begin(first)
    for (let top = open.at(-1); top !== undefined; top = open.at(-1)) {
      const need = top.needs.pop()
      if (need !== undefined) {
        begin(need)
        continue
      }
      open.pop()
      const row = found.get(top.place.sheet)?.[top.place.row]
      if (row) row[top.place.column] = top.formula === undefined ? constant(sheets.get(top.place.sheet)?.[top.place.row]?.[top.place.column]) : computed(top.formula, top.place)
    }
  }

  function precedents(formula: string, sheet: string): Place[] {
    return tokenise(formula).flatMap((token) => {
      const reference = isReferenceKind(token.kind) ? parseReference(token.text) : token.kind === 'name' ? named.get(token.text.toLowerCase()) : undefined
      if (!reference) return []
      const { top, bottom, left, right } = areaOf(reference)
      const last = Math.min(bottom, (sheets.get(reference.sheet ?? sheet)?.length ?? 0) - 1)
      const places: Place[] = []
      for (let row = top; row <= last; row++) for (let column = left; column <= right; column++) places.push({ sheet: reference.sheet ?? sheet, row, column })
      return places
    })
  }

  function computed(formula: string, { sheet, row, column }: Place): Recalculated {
    try {
      const value = parser.parse(withoutArrays(formula).replace(/\bINDEX\(/g, `${OTHER_SHEETS_INDEX}(`), { sheet, row: row + 1, col: column + 1 }, true)
      if (typeof value === 'number') return Number.isFinite(value) ? value : '#NUM!'
      return typeof value === 'string' || typeof value === 'boolean' ? value : '#ERROR!'
    } catch {
      return '#ERROR!'
    }
  }
}

const constant = (cell: CellObject | undefined): Recalculated =>
  cell?.t === 'e' ? '#N/A' : typeof cell?.v === 'number' || typeof cell?.v === 'string' || typeof cell?.v === 'boolean' ? cell.v : null

/** Errors go to the parser as errors, not as their texts. */
const asGiven = (value: Recalculated): number | string | boolean | null | object => (typeof value === 'string' && /^#[A-Z/0]+[!?]?$/.test(value) ? NOT_AVAILABLE : value)
const NOT_AVAILABLE: object = (() => {
  const none = new FormulaParser({ functions: {}, onCell: () => null, onRange: () => [], onVariable: () => null })
  return none.parse('NA()', { sheet: '', row: 1, col: 1 }, true) as object
})()

function lent(name: (typeof LENT)[number], given: readonly unknown[]): unknown {
  const error = given.flat(2).find((one) => one === NOT_AVAILABLE)
  if (error !== undefined) return error
  const compute = library[name] as (...values: unknown[]) => unknown
  // It looks along a list, not down a column.
  const value = compute(...(name === 'MATCH' ? given.map((one) => (Array.isArray(one) ? one.flat() : one)) : given))
  return value instanceof Error || value === undefined || (typeof value === 'number' && Number.isNaN(value)) ? NOT_AVAILABLE : value
}

/** SUMPRODUCT(…) of an expression of ranges as the sum of the expression at each of their cells; of MIN or MAX of one, as that of them all. */
function withoutArrays(formula: string): string {
  const tokens = tokenise(formula)
  const call = calls(tokens).find(({ name }) => name === 'SUMPRODUCT')
  if (call === undefined) return formula
  const inside = (extent: { readonly start: number; readonly end: number }): readonly Token[] => tokens.filter(({ start, end }) => start >= extent.start && end <= extent.end)
  const nested = calls(inside(call)).find(({ name, depth, start }) => (name === 'MIN' || name === 'MAX') && depth === 1 && start === call.arguments[0]?.start)
  const parts = (nested ?? call).arguments.map(inside)
  const areas = parts.flat().flatMap(({ kind, text }) => (kind === 'range' ? [areaOf(parseReference(text) as Reference)] : []))
  const rows = Math.max(1, ...areas.map(({ top, bottom }) => bottom - top + 1))
  const columns = Math.max(1, ...areas.map(({ left, right }) => right - left + 1))
  const terms: string[] = []
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) terms.push(parts.map((part) => `(${part.map((token) => atCell(token, row, column)).join('')})`).join('*'))
  }
  const written = nested ? `${nested.name}(${terms.join(',')})` : `(${terms.join('+')})`
  return formula.slice(0, call.start) + written + withoutArrays(formula.slice(call.end))
}

function atCell({ kind, text }: Token, row: number, column: number): string {
  const reference = kind === 'range' ? parseReference(text) : undefined
  if (!reference) return text
  const { top, bottom, left, right } = areaOf(reference)
  const from = { row: top === bottom ? top : top + row, column: left === right ? left : left + column, rowAbsolute: false, columnAbsolute: false }
  return printReference({ sheet: reference.sheet, from, to: null })
}
