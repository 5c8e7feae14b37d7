import { unitCodes } from '../../functions/units/units.ts'
import type { CellValue } from '../calc/values.ts'
import { printAddress, quoteSheetName } from '../workbook/address.ts'
import type { Workbook } from '../workbook/document.ts'
import { figureKind, type FigurePart } from '../workbook/figure-kinds.ts'
import type { Figure } from '../workbook/figure.ts'
import { listPlaces, placeOf, type Place } from './binding-place.ts'
import { quantityReader, readNumber, readText, readTruth, type Read } from './cell-readers.ts'
import type { FigureValues, PartValue } from './values.ts'

/** Where a figure's numbers come from: the document, and what its cells come to. A calculation graph is one. */
export interface FigureSource {
  readonly workbook: Workbook
  value(sheet: string, row: number, column: number): CellValue
}

/** What keeps a figure from being drawn: what is wrong, where, and what is accepted; a sentence each. */
export interface Faults {
  readonly faults: readonly string[]
}

/** What the cells that a figure is bound to hold, or why that makes no drawing. */
export function figureValues(figure: Figure, source: FigureSource): FigureValues | Faults {
  const faults: string[] = []
  const remarks: string[] = []
  const parts = new Map<string, PartValue>()
  const described = Object.entries(figureKind(figure.kind).parts)
  // Gauge units of the other parts count from it.
  const site = read('site', undefined)
  const sitePa = site?.holds === 'quantity' ? site.value.si : undefined
  for (const [name] of described) if (name !== 'site') read(name, sitePa)
  return faults.length > 0 ? { faults } : { parts, sitePa, remarks }

  function read(name: string, fromPa: number | undefined): PartValue | undefined {
    const part = described.find(([one]) => one === name)?.[1]
    if (!part) return undefined
    const text = figure.bindings[name]
    if (text === undefined) {
      if (part.required) faults.push(`${part.label}: bound to no cell; accepted: ${accepted(part)}`)
      return undefined
    }
    const place = placeOf(text, figure, source.workbook)
    if (typeof place === 'string') {
      faults.push(`${part.label}: ${place}`)
      return undefined
    }
    const value = readPart(part, place, source, fromPa, (remark) => remarks.push(`${part.label}, ${remark}`))
    if ('fault' in value) {
      faults.push(`${part.label}, ${value.fault}`)
      return undefined
    }
    parts.set(name, value)
    return value
  }
}

function readPart(part: FigurePart, { sheet, area }: Place, source: FigureSource, sitePa: number | undefined, remark: (words: string) => void): PartValue | { readonly fault: string } {
  const where = (row: number, column: number): string => `${quoteSheetName(sheet.name)}!${printAddress(row, column)}`
  const at = (row: number, column: number): CellValue => source.value(sheet.name, row, column)
  const first = where(area.top, area.left)
  const quantityAt = quantityReader({ sheet, area }, at, part.dimension ?? 'share', sitePa)

  switch (part.holds) {
    case 'text': return one(readText(at(area.top, area.left)), (value) => ({ holds: 'text', value }))
    case 'number': return one(readNumber(at(area.top, area.left)), (value) => ({ holds: 'number', value }))
    case 'quantity': return one(quantityAt(area.top, area.left), (value) => ({ holds: 'quantity', value }))
    case 'texts': return list((row, column) => readText(at(row, column)), (value) => ({ holds: 'texts', value }))
    case 'numbers': return list((row, column) => readNumber(at(row, column)), (value) => ({ holds: 'numbers', value }))
    case 'truths': return list((row, column) => readTruth(at(row, column)), (value) => ({ holds: 'truths', value }))
    case 'quantities': return list(quantityAt, (value) => ({ holds: 'quantities', value }))
  }

  function one<Value>(read: Read<Value>, make: (value: Value) => PartValue): PartValue | { readonly fault: string } {
    if ('fault' in read) return { fault: `${first}: ${read.fault}; accepted: ${accepted(part)}` }
    return read.value === undefined ? { fault: `${first}: the cell is empty; accepted: ${accepted(part)}` } : make(read.value)
  }

  /** Along the first column, or the first row of several columns; what a cell does not give is passed over with a remark. */
  function list<Value>(readAt: (row: number, column: number) => Read<Value>, make: (values: readonly (Value | undefined)[]) => PartValue): PartValue | { readonly fault: string } {
    const wrong: string[] = []
    const values = listPlaces({ sheet, area }, part).map(({ row, column }) => {
      const read = readAt(row, column)
      if ('value' in read) return read.value
      wrong.push(`${where(row, column)}: ${read.fault}`)
      return undefined
    })
    while (values.length > 0 && values.at(-1) === undefined) values.pop()
    if (values.length === 0 && part.required) return { fault: `${wrong[0] ?? `from ${first} on: nothing to draw`}; accepted: ${accepted(part)}` }
    for (const words of wrong) remark(`${words}; not drawn`)
    return make(values)
  }
}

/** What a part may be bound to, in words. */
export function accepted({ holds, dimension }: FigurePart): string {
  const example = dimension === undefined ? '' : ` (${unitCodes(dimension).slice(0, 4).join(', ')} …)`
  return ACCEPTED[holds].replace('{}', `${dimension ?? ''}${example}`)
}

const ACCEPTED: Readonly<Record<FigurePart['holds'], string>> = {
  text: 'a cell with a text',
  texts: 'a column or a row of texts',
  number: 'a cell with a number',
  numbers: 'a column or a row of numbers',
  quantity: 'a cell with a {} and its unit beside it',
  quantities: 'a column or a row of {}, units beside or at the head',
  truths: 'a column or a row of TRUE and FALSE',
}
