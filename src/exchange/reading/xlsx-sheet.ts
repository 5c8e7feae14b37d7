import { parseAddress } from '../../workbook/address.ts'
import { shifter } from '../../workbook/formula/references.ts'
import { MAX_COLUMNS, MAX_COLUMN_WIDTH, MAX_ROWS, MAX_TEXT } from '../../workbook/limits.ts'
import { CellRows, type Holdings } from './cell-rows.ts'
import type { ReadSheet, ReadValue } from './contents.ts'
import { remarkFormula } from './foreign-formula.ts'
import { dayNumber, isDateFormat } from './number-formats.ts'
import { damaged } from './refusal.ts'
import type { RemarkBook } from './remark-book.ts'
import { isTrue } from './xlsx-book.ts'
import { TextGathering, unescaped, type ReadNote } from './xlsx-texts.ts'
import { readXml } from './xml-events.ts'
import type { ZipEntry } from './zip-directory.ts'
import { partText } from './zip-part.ts'

export interface SheetContext {
  readonly name: string
  readonly hidden: boolean
  readonly texts: readonly string[]
  readonly formats: readonly (string | undefined)[]
  readonly notes: readonly ReadNote[]
  readonly from1904: boolean
  readonly holdings: Holdings
  readonly remarks: RemarkBook
  readonly passed: (bytes: number) => void
}

/** A worksheet part (ECMA-376, part 1, 18.3). */
export async function readXlsxSheet(entry: ZipEntry, context: SheetContext): Promise<ReadSheet> {
  const reading = new SheetReading(context)
  await readXml(entry.name, partText(entry, context.passed), reading)
  return reading.sheet()
}

interface SharedFormula {
  readonly row: number
  readonly column: number
  readonly shifted: (rows: number, columns: number) => string
}

class SheetReading {
  readonly #context: SheetContext
  readonly #cells: CellRows
  readonly #shared = new Map<string, SharedFormula>()
  readonly #widths: (number | undefined)[] = []
  readonly #inline = new TextGathering()
  #defaultWidth = DEFAULT_WIDTH_PX
  #columnRuns = 0
  #frozen: readonly [number, number] = [0, 0]
  #merged = 0
  #row = -1
  #column = -1
  #format: string | undefined
  #type = 'n'
  #within: 'v' | 'f' | 'is' | undefined
  #value = ''
  #hasValue = false
  #formula: string | undefined
  #formulaKind: string | undefined
  #sharedNumber: string | undefined

  constructor(context: SheetContext) {
    this.#context = context
    this.#cells = new CellRows(context.name, context.holdings, context.remarks)
  }

  open(name: string, attributes: ReadonlyMap<string, string>): void {
    switch (name) {
      case 'c': return this.#openCell(attributes)
      case 'v': return this.#enter('v')
      case 'f':
        this.#formula = ''
        this.#formulaKind = attributes.get('t')
        this.#sharedNumber = attributes.get('si')
        // Over one cell, it is an ordinary formula.
        if (this.#formulaKind === 'array' && !spansCells(attributes.get('ref'))) this.#formulaKind = undefined
        return this.#enter('f')
      case 'is':
        this.#inline.begin()
        return this.#enter('is')
      case 'row': {
        const row = attributes.get('r')
        this.#row = row === undefined ? this.#row + 1 : Number(row) - 1
        if (!Number.isInteger(this.#row) || this.#row < 0) throw damaged(`sheet “${this.#context.name}” has a row without a number`)
        this.#column = -1
        if (isTrue(attributes.get('hidden'))) this.#cells.hide(this.#row)
        return
      }
      case 'col': return this.#openColumns(attributes)
      case 'sheetFormatPr': {
        const width = Number(attributes.get('defaultColWidth'))
        if (width > 0) this.#defaultWidth = pixels(width)
        return
      }
      case 'pane':
        if (attributes.get('state')?.startsWith('frozen')) this.#frozen = [lines(attributes.get('ySplit'), MAX_ROWS), lines(attributes.get('xSplit'), MAX_COLUMNS)]
        return
      case 'mergeCell':
        this.#merged++
        return
      default: if (this.#within === 'is') this.#inline.open(name)
    }
  }

  text(text: string): void {
    if (this.#within === undefined) return
    if (this.#within === 'is') this.#inline.text(text)
    else if (this.#within === 'v') {
      if (this.#value.length <= MAX_TEXT * 8) this.#value += text
    } else if ((this.#formula?.length ?? 0) <= MAX_TEXT) this.#formula = (this.#formula ?? '') + text
  }

  close(name: string): void {
    if (name === 'c') this.#closeCell()
    else if (name === this.#within) {
      if (name === 'is') {
        this.#value = this.#inline.end()
        this.#hasValue = true
      }
      this.#within = undefined
    } else if (this.#within === 'is') this.#inline.close(name)
  }

  sheet(): ReadSheet {
    const { name, hidden, notes, remarks } = this.#context
    for (const { row, column, text } of notes) this.#cells.note(row, column, text)
    if (this.#merged > 0) remarks.say(name, `${this.#merged === 1 ? 'One range of merged cells is' : `${this.#merged} ranges of merged cells are`} taken apart; each value stands in the upper left cell.`)
    const [rows, columns] = this.#frozen
    const width = Math.max(this.#cells.columns, Math.min(this.#widths.length, this.#cells.columns + SPARE_COLUMNS))
    const { hiddenRows } = this.#cells
    return {
      name, hidden, rows: this.#cells.rows, ...(rows + columns > 0 ? { frozen: this.#frozen } : {}), ...(hiddenRows && { hiddenRows }),
      widthsPx: this.#widths.length === 0 ? [] : Array.from({ length: width }, (_, column) => this.#widths[column] ?? this.#defaultWidth),
    }
  }

  #enter(place: 'v' | 'f' | 'is'): void {
    this.#within = place
    if (place === 'v') this.#hasValue = true
  }

  #openCell(attributes: ReadonlyMap<string, string>): void {
    const address = attributes.get('r')
    if (address === undefined) this.#column++
    else {
      const place = cellPlace(address)
      if (place === undefined) throw damaged(`sheet “${this.#context.name}” has a cell at “${address.slice(0, 40)}”`)
      ;[this.#row, this.#column] = place
    }
    this.#type = attributes.get('t') ?? 'n'
    this.#format = this.#context.formats[Number(attributes.get('s') ?? 0)]
    this.#value = ''
    this.#hasValue = false
    this.#formula = undefined
    this.#within = undefined
  }

  #closeCell(): void {
    this.#within = undefined
    const formula = this.#formulaText()
    const value = this.#hasValue ? this.#readValue() : null
    this.#formula = undefined
    if (value === null && formula === undefined) return
    const format = this.#format
    this.#cells.put(Math.max(0, this.#row), this.#column, { value, ...(formula === undefined ? {} : { formula }), ...(format === undefined ? {} : { format }) })
  }

  #readValue(): ReadValue {
    const text = this.#value
    const { texts, from1904 } = this.#context
    switch (this.#type) {
      case 's': return texts[Number(text)] ?? this.#lost()
      case 'inlineStr': return text
      case 'str': return unescaped(text)
      case 'b': return isTrue(text.trim())
      case 'e': return { error: text.slice(0, 40) }
      case 'd': return dayNumber(text) ?? text
      default: {
        if (text.trim() === '') return null
        const number = Number(text)
        if (!Number.isFinite(number)) return text
        return from1904 && this.#format !== undefined && isDateFormat(this.#format) ? number + DAYS_1904 : number
      }
    }
  }

  #lost(): null {
    const { name, remarks } = this.#context
    remarks.cell(name, this.#row, this.#column, 'The text of this cell is not in the file; the cell is empty.')
    return null
  }

  #formulaText(): string | undefined {
    const { name, remarks } = this.#context
    const [row, column] = [this.#row, this.#column]
    const written = this.#formula
    if (written === undefined) return undefined
    let formula = written.replace(/^\s*=/, '').replace(/_xlfn\.|_xlws\./g, '').trim()
    if (formula.length > MAX_TEXT) {
      remarks.cell(name, row, column, `The formula has more than ${MAX_TEXT} characters; its value alone is taken over.`)
      return undefined
    }
    if (this.#formulaKind === 'dataTable') {
      remarks.cell(name, row, column, 'The cell is computed by a table of trials, which is not taken over; its value is kept.')
      return undefined
    }
    if (this.#formulaKind === 'shared') {
      const number = this.#sharedNumber ?? ''
      if (formula !== '') this.#shared.set(number, { row, column, shifted: shifter(`=${formula}`) })
      else {
        const model = this.#shared.get(number)
        if (model === undefined) remarks.cell(name, row, column, 'The cell shares the formula of another cell that is not in the file; its value is kept.')
        else formula = model.shifted(row - model.row, column - model.column).slice(1)
      }
    }
    if (formula === '') return undefined
    if (this.#formulaKind === 'array') remarks.cell(name, row, column, 'The formula is an array formula; it is taken over as an ordinary one, the values of its other cells as they are.')
    remarkFormula(formula, name, row, column, remarks)
    return formula
  }

  #openColumns(attributes: ReadonlyMap<string, string>): void {
    const [from, to] = [lines(attributes.get('min'), MAX_COLUMNS) - 1, lines(attributes.get('max'), MAX_COLUMNS) - 1]
    const width = Number(attributes.get('width'))
    const px = isTrue(attributes.get('hidden')) ? 0 : width > 0 ? pixels(width) : this.#defaultWidth
    // No more runs than there are columns: each may be as wide as the sheet.
    if (++this.#columnRuns > MAX_COLUMNS) return
    for (let column = Math.max(0, from); column <= to; column++) this.#widths[column] = px
  }
}

const spansCells = (range: string | undefined): boolean => {
  const [from, to = from] = (range ?? '').split(':')
  return from !== to
}

/** Columns beyond the last cell whose widths are kept. */
const SPARE_COLUMNS = 8
const DEFAULT_WIDTH_PX = 64
/** From 1899-12-30 to 1904-01-01. */
const DAYS_1904 = 1462

/** A column's width is counted in digits of 7 px (ECMA-376, part 1, 18.3.1.13). */
const pixels = (digits: number): number => Math.min(MAX_COLUMN_WIDTH, Math.round(digits * 7))

/** A count of rows or columns; 0 where it is none. */
function lines(text: string | undefined, most: number): number {
  const count = Math.floor(Number(text ?? 0))
  return count > 0 ? Math.min(count, most) : 0
}

/** Beyond the last row or column too, so that it can be said where. */
function cellPlace(address: string): [row: number, column: number] | undefined {
  let [at, column] = [0, 0]
  for (; at < 4; at++) {
    const letter = address.charCodeAt(at) & ~0x20
    if (letter < 65 || letter > 90) break
    column = column * 26 + letter - 64
  }
  const row = Number(address.slice(at))
  return at > 0 && address.length > at && Number.isInteger(row) && row > 0 ? [row - 1, column - 1] : parsed(address)
}

function parsed(address: string): [row: number, column: number] | undefined {
  const place = parseAddress(address)
  return place ? [place.row, place.column] : undefined
}
