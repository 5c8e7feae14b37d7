import { MAX_COLUMNS, MAX_NAMES, MAX_ROWS, MAX_TEXT } from '../../workbook/limits.ts'
import { CellRows, Holdings } from './cell-rows.ts'
import type { ReadCell, ReadSheet } from './contents.ts'
import { remarkFormula } from './foreign-formula.ts'
import { MAX_READ_SHEETS } from './limits.ts'
import { odsValue, readOdsValue, type OdsValue } from './ods-cell.ts'
import type { OdsStyles } from './ods-styles.ts'
import { fromCellRange, fromOpenFormula } from './open-formula.ts'
import { tooLarge } from './refusal.ts'
import type { RemarkBook } from './remark-book.ts'

interface Cell {
  readonly value: OdsValue
  readonly formula: string | undefined
  readonly style: string | undefined
  readonly repeated: number
  readonly covered: boolean
  text: string
  note: string
  paragraphs: number
  noteParagraphs: number
}

/**
 * Reads the part `content.xml` (OpenDocument 1.3, part 3, 9) as it comes. What is repeated is written out only where it holds something, and
 * then counted against the limits.
 */
export class OdsContent {
  readonly sheets: ReadSheet[] = []
  readonly names = new Map<string, string>()
  readonly #styles: OdsStyles
  readonly #remarks: RemarkBook
  readonly #holdings = new Holdings()
  /** Elements whose inside is not read: the depth of the outermost. */
  #skipping = 0
  #depth = 0
  #table: { readonly name: string; readonly hidden: boolean; readonly cells: CellRows; readonly widths: (number | undefined)[]; merged: number } | undefined
  #row = 0
  #rowRepeated = 1
  #rowHidden = false
  #rowCells: { readonly column: number; readonly cell: ReadCell }[] = []
  #column = 0
  #columnStyles: (string | undefined)[] = []
  #cell: Cell | undefined
  #inNote = 0
  #inText = 0

  constructor(styles: OdsStyles, remarks: RemarkBook) {
    this.#styles = styles
    this.#remarks = remarks
  }

  open(name: string, attributes: ReadonlyMap<string, string>): void {
    this.#depth++
    if (this.#skipping > 0) return
    if (this.#cell) return this.#openInCell(name, attributes)
    switch (name) {
      case 'table': return this.#openTable(attributes)
      case 'table-column': return this.#openColumn(attributes)
      case 'table-row':
        this.#rowRepeated = repeats(attributes.get('table:number-rows-repeated'))
        this.#rowHidden = (attributes.get('table:visibility') ?? 'visible') !== 'visible'
        this.#rowCells = []
        this.#column = 0
        return
      case 'table-cell': case 'covered-table-cell': return this.#openCell(name, attributes)
      case 'named-range': case 'named-expression': return this.#named(name, attributes)
      case 'dde-links':
        this.#remarks.say('', 'The file has links to other programs. They are not followed; cells that use them keep their last values.')
        return this.#skip()
      case 'table-source':
        this.#remarks.say(this.#table?.name ?? '', 'The sheet is linked to another file, which is not opened; what it last brought is kept.')
        return this.#skip()
      case 'data-pilot-table': this.#remarks.say('', 'Pivot tables are taken over as the values that they last showed.'); return
      case 'shapes': case 'frame': case 'custom-shape': case 'control': case 'g':
        if (name !== 'g') this.#remarks.say('', 'Charts, pictures and drawings are left out.')
        return this.#skip()
      case 'tracked-changes': case 'scripts': case 'forms':
        if (name === 'tracked-changes') this.#remarks.say('', 'The list of changes that the file keeps is left out; its last state is taken over.')
        return this.#skip()
      default: if (this.#table === undefined) this.#styles.open(name, attributes)
    }
  }

  text(text: string): void {
    if (this.#skipping > 0) return
    if (this.#cell === undefined) {
      if (this.#table === undefined) this.#styles.text(text)
    } else if (this.#inText > 0) this.#append(text.replace(/[ \t\n\r]+/g, ' '))
  }

  close(name: string): void {
    const depth = this.#depth--
    if (this.#skipping > 0) {
      if (depth === this.#skipping) this.#skipping = 0
      return
    }
    if (this.#cell) {
      if (name === 'p') this.#inText--
      else if (name === 'annotation') this.#inNote--
      else if (name === 'table-cell' || name === 'covered-table-cell') this.#closeCell(this.#cell)
    } else if (name === 'table-row') this.#closeRow()
    else if (name === 'table') this.#closeTable()
    else if (this.#table === undefined) this.#styles.close(name)
  }

  #skip(): void {
    this.#skipping = this.#depth
  }

  #openTable(attributes: ReadonlyMap<string, string>): void {
    // A table in a cell, or one kept of another file.
    const name = attributes.get('table:name') ?? ''
    if (this.#table || /^'[a-z]+:\/\//i.test(name)) {
      this.#remarks.say(this.#table?.name ?? '', this.#table ? 'A table inside a cell is left out.' : `What the file keeps of another file (${name.slice(0, 80)}) is left out.`)
      return this.#skip()
    }
    if (this.sheets.length >= MAX_READ_SHEETS) throw tooLarge(`it has more than ${MAX_READ_SHEETS} sheets`, `up to ${MAX_READ_SHEETS}`)
    this.#table = { name, hidden: this.#styles.isHiddenTable(attributes.get('table:style-name')), cells: new CellRows(name, this.#holdings, this.#remarks), widths: [], merged: 0 }
    this.#row = 0
    this.#columnStyles = []
  }

  #openColumn(attributes: ReadonlyMap<string, string>): void {
    if (!this.#table) return
    const hidden = (attributes.get('table:visibility') ?? 'visible') !== 'visible'
    const width = hidden ? 0 : this.#styles.width(attributes.get('table:style-name'))
    const style = attributes.get('table:default-cell-style-name')
    for (let left = repeats(attributes.get('table:number-columns-repeated')); left > 0 && this.#table.widths.length < MAX_COLUMNS; left--) {
      this.#table.widths.push(width)
      this.#columnStyles.push(style)
    }
  }

  #openCell(name: string, attributes: ReadonlyMap<string, string>): void {
    const covered = name === 'covered-table-cell'
    const spans = repeats(attributes.get('table:number-columns-spanned')) > 1 || repeats(attributes.get('table:number-rows-spanned')) > 1
    if (spans && this.#table) this.#table.merged++
    this.#cell = {
      value: odsValue(attributes), formula: attributes.get('table:formula'), covered, style: attributes.get('table:style-name'),
      repeated: repeats(attributes.get('table:number-columns-repeated')), text: '', note: '', paragraphs: 0, noteParagraphs: 0,
    }
    if (this.#cell.formula !== undefined && (repeats(attributes.get('table:number-matrix-columns-spanned')) > 1 || repeats(attributes.get('table:number-matrix-rows-spanned')) > 1)) {
      this.#remarks.cell(this.#table?.name ?? '', this.#row, this.#column, 'The formula is an array formula; it is taken over as an ordinary one, the values of its other cells as they are.')
    }
    this.#inNote = 0
    this.#inText = 0
  }

  #openInCell(name: string, attributes: ReadonlyMap<string, string>): void {
    const cell = this.#cell
    if (!cell) return
    if (name === 'annotation') this.#inNote++
    else if (name === 'p') {
      this.#inText++
      const count = this.#inNote > 0 ? cell.noteParagraphs++ : cell.paragraphs++
      if (count > 0) this.#append('\n')
    } else if (name === 's') this.#append(' '.repeat(Math.min(MAX_TEXT, repeats(attributes.get('text:c')))))
    else if (name === 'tab') this.#append('\t')
    else if (name === 'line-break') this.#append('\n')
    else if (name === 'table' || name === 'frame' || name === 'custom-shape' || name === 'shapes') {
      if (this.#inNote === 0) this.#remarks.say('', 'Charts, pictures and drawings are left out.')
      this.#skip()
    } else if (name === 'creator' || name === 'date' || name === 'sender-initials') this.#skip()
  }

  #append(text: string): void {
    const cell = this.#cell
    if (!cell) return
    if (this.#inNote > 0) {
      if (cell.note.length <= MAX_TEXT) cell.note += text
    } else if (cell.text.length <= MAX_TEXT * 8) cell.text += text
  }

  #closeCell(cell: Cell): void {
    this.#cell = undefined
    const column = this.#column
    this.#column += cell.repeated
    const read = this.#readCell(cell, column)
    if (read === undefined || this.#table === undefined) return
    for (let index = 0; index < cell.repeated; index++) {
      // Beyond the last column the first one is refused by name.
      this.#rowCells.push({ column: column + index, cell: read })
      if (column + index >= MAX_COLUMNS) break
    }
  }

  #readCell({ value, formula, style, text, note, covered }: Cell, column: number): ReadCell | undefined {
    const sheet = this.#table?.name ?? ''
    const written = formula === undefined ? undefined : fromOpenFormula(formula)
    if (formula !== undefined && written === undefined) this.#remarks.cell(sheet, this.#row, column, 'The formula is in a form that is not known; its value is kept.')
    const long = written !== undefined && written.length > MAX_TEXT
    if (long) this.#remarks.cell(sheet, this.#row, column, `The formula has more than ${MAX_TEXT} characters; its value alone is taken over.`)
    const kept = long || written === '' ? undefined : written
    if (kept !== undefined) remarkFormula(kept, sheet, this.#row, column, this.#remarks)
    const read = readOdsValue(value, text, kept !== undefined)
    if ((read === null && kept === undefined && note === '') || (covered && read === null)) return undefined
    const format = this.#styles.code(style ?? this.#columnStyles[column])
    return { value: read, ...(kept === undefined ? {} : { formula: kept }), ...(format === undefined ? {} : { format }), ...(note === '' ? {} : { note: note.slice(0, MAX_TEXT) }) }
  }

  #closeRow(): void {
    const from = this.#row
    this.#row += this.#rowRepeated
    if (!this.#table || this.#rowCells.length === 0) return
    for (let row = from; row < Math.min(this.#row, MAX_ROWS + 1); row++) {
      for (const { column, cell } of this.#rowCells) this.#table.cells.put(row, column, cell)
      if (this.#rowHidden) this.#table.cells.hide(row)
    }
  }

  #closeTable(): void {
    if (!this.#table) return
    const { name, hidden, cells, widths, merged } = this.#table
    this.#table = undefined
    if (merged > 0) this.#remarks.say(name, `${merged === 1 ? 'One range of merged cells is' : `${merged} ranges of merged cells are`} taken apart; each value stands in the upper left cell.`)
    const { hiddenRows } = cells
    const known = widths.slice(0, cells.columns).some((width) => width !== undefined)
    this.sheets.push({ name, hidden, rows: cells.rows, ...(hiddenRows && { hiddenRows }), widthsPx: known ? Array.from({ length: cells.columns }, (_, column) => widths[column] ?? DEFAULT_WIDTH_PX) : [] })
  }

  #named(element: string, attributes: ReadonlyMap<string, string>): void {
    const name = attributes.get('table:name') ?? ''
    const text = element === 'named-range' ? fromCellRange(attributes.get('table:cell-range-address') ?? '') : fromOpenFormula(attributes.get('table:expression') ?? '')
    const place = this.#table?.name ?? ''
    if (name === '') return
    if (text === undefined) this.#remarks.say(place, `What the name “${name}” stands for is not understood; it is left out.`)
    else if (this.names.has(name)) this.#remarks.say(place, `The name “${name}” stands for two things; this one is left out: ${text}.`)
    else {
      if (place !== '') this.#remarks.say(place, `The name “${name}” held on this sheet only; it holds everywhere now.`)
      this.names.set(name, text)
      if (this.names.size > MAX_NAMES) throw tooLarge(`it has more than ${MAX_NAMES} names`, `up to ${MAX_NAMES}`)
    }
  }
}

const DEFAULT_WIDTH_PX = 64

/** How often something stands; once where that is not a count. */
function repeats(text: string | undefined): number {
  const count = Number(text ?? 1)
  return Number.isInteger(count) && count > 0 ? Math.min(count, MAX_ROWS + 1) : 1
}
