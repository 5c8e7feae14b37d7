import { functionByName } from '../../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../../functions/define.ts'
import { columnLetters, parseReference, printReference, quoteSheetName, type Corner } from '../../workbook/address.ts'
import { isFormula, sheetByName, type Workbook } from '../../workbook/document.ts'
import { calls, type Call } from '../../workbook/formula/calls.ts'
import { namedReference, rewriteReferences } from '../../workbook/formula/references.ts'
import { isReferenceKind, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { addressText, argumentParts, type Content, type Surroundings } from './argument-parts.ts'

/** Rows above the first call on the sheet of a function's workings: title, equation, sources, labels, units. */
export const HEADER_ROWS = 5
/** Columns before a function's own: the cell that made the call first. */
export const COLUMNS_BEFORE = 1

/** The calls of one function, a row each; calls with the same arguments share one. */
export interface FunctionRows {
  readonly definition: FunctionDefinition
  readonly sheet: string
  readonly rows: readonly CallRow[]
}

export interface CallRow {
  /** The cell, or the defined name, that made the call first. */
  readonly place: string
  /** What the call gives, in the order of the columns that hold no formula of their own. */
  readonly given: readonly Content[]
  /** The call as that cell has it, from the function's name to its ")"; references without a sheet are to `home`. */
  readonly text: string
  /** The sheet of that cell; null for a defined name. */
  readonly home: string | null
}

/** Where a formula stands; `cell` is undefined for that of a defined name. */
export interface Place {
  readonly sheet: string | null
  readonly cell?: { readonly row: number; readonly column: number }
  readonly words: string
}

/** Takes down the calls of own functions in formulas, and puts references to their results in their place. */
export class CallBook {
  readonly #workbook: Workbook
  readonly #functions = new Map<FunctionDefinition, { readonly sheet: string; readonly rows: CallRow[]; readonly found: Map<string, number> }>()
  readonly #sheetName: (wanted: string) => string
  readonly #inOrder: { readonly sheet: string; readonly row: CallRow }[] = []

  /** @param sheetName a name for a new sheet that no other has */
  constructor(workbook: Workbook, sheetName: (wanted: string) => string) {
    this.#workbook = workbook
    this.#sheetName = sheetName
  }

  get functions(): readonly FunctionRows[] {
    return [...this.#functions].map(([definition, { sheet, rows }]) => ({ definition, sheet, rows })).toSorted((one, other) => (one.definition.name < other.definition.name ? -1 : 1))
  }

  /** Every call in the order of making: those in an argument come before the one that has it. */
  get inOrder(): readonly { readonly sheet: string; readonly row: CallRow }[] {
    return this.#inOrder
  }

  /** The formula with each call of an own function replaced by a reference to its result; the very same text where there is none. */
  replaceCalls(formula: string, place: Place): string {
    return this.#rewritten(formula, place, (token) => token.text)
  }

  #rewritten(formula: string, place: Place, change: (token: Token, call: Call | undefined) => string): string {
    const tokens = tokenise(formula)
    const all = calls(tokens)
    const byStart = new Map(all.map((call) => [call.start, call]))
    let text = ''
    let after = 0
    for (const token of tokens) {
      if (token.start < after) continue
      const call = token.kind === 'function' ? byStart.get(token.start) : undefined
      const definition = call && functionByName(call.name)
      if (call && definition) {
        text += this.#resultOf(definition, formula, call, place)
        after = call.end
        continue
      }
      const changed = change(token, call)
      text += changed
      if (call && changed !== token.text) after = call.end
    }
    return text
  }

  /** The address of the result of a call. */
  #resultOf(definition: FunctionDefinition, formula: string, call: Call, place: Place): string {
    const texts = call.arguments.map(({ start, end }) => formula.slice(start, end))
    const named = Object.values(definition.arguments)
    if (texts.length > named.length) return 'NA()'
    const around: Surroundings = {
      elsewhere: (expression) => this.#elsewhere(expression, place),
      cells: (token) => this.#cells(token, place),
    }
    const parts = named.map((argument, index) => argumentParts(argument, texts[index], around))
    const given = definition.workings.columns.flatMap(({ given: part }) => (part === undefined ? [] : [parts[part.argument]?.(part) ?? '']))
    const held = this.#rowsOf(definition)
    const key = JSON.stringify(given)
    const row = held.found.get(key) ?? this.#add(held, { place: place.words, given, text: formula.slice(call.start, call.end), home: place.sheet })
    held.found.set(key, row)
    return `${quoteSheetName(held.sheet)}!${columnLetters(COLUMNS_BEFORE + definition.workings.columns.length - 1)}${HEADER_ROWS + row + 1}`
  }

  #add({ sheet, rows }: { readonly sheet: string; readonly rows: CallRow[] }, row: CallRow): number {
    this.#inOrder.push({ sheet, row })
    return rows.push(row) - 1
  }

  #rowsOf(definition: FunctionDefinition) {
    const held = this.#functions.get(definition) ?? { sheet: this.#sheetName(definition.name), rows: [], found: new Map<string, number>() }
    this.#functions.set(definition, held)
    return held
  }

  #elsewhere(expression: string, place: Place): string {
    return this.#rewritten(expression, place, (token, call) => {
      if (call && call.arguments.length === 0 && place.cell && place.sheet !== null && OWN_PLACE.has(call.name.toUpperCase())) {
        return `${call.name}(${this.#plainCellBeside(place.sheet, place.cell, call.name.toUpperCase() === 'ROW')})`
      }
      const reference = isReferenceKind(token.kind) ? parseReference(token.text) : undefined
      if (reference === undefined) return token.text
      return printReference({ sheet: reference.sheet ?? place.sheet, from: relative(reference.from), to: reference.to && relative(reference.to) })
    }).trim()
  }

  #cells(token: Token, { sheet }: Place) {
    const reference = isReferenceKind(token.kind) ? parseReference(token.text) : token.kind === 'name' ? namedReference(this.#workbook.names, token.text) : undefined
    const on = reference?.sheet ?? (token.kind === 'name' ? null : sheet)
    return reference === undefined || on === null ? undefined : { ...reference, sheet: on }
  }

  /** A cell without formula in the same row, or column: a reference to the cell itself would make it depend on itself. */
  #plainCellBeside(sheet: string, { row, column }: { readonly row: number; readonly column: number }, sameRow: boolean): string {
    const rows = sheetByName(this.#workbook, sheet)?.rows ?? []
    for (let step = 0; ; step++) {
      const at = sameRow ? { row, column: step } : { row: step, column }
      if ((at.row !== row || at.column !== column) && !isFormula(rows[at.row]?.[at.column]?.content)) return addressText(sheet, at)
    }
  }
}

/** Functions that without argument mean the cell that they stand in. */
const OWN_PLACE: ReadonlySet<string> = new Set(['ROW', 'COLUMN'])

const relative = (corner: Corner): Corner => ({ ...corner, rowAbsolute: false, columnAbsolute: false })

const absolute = (corner: Corner): Corner => ({ ...corner, rowAbsolute: true, columnAbsolute: true })

/** What defined names refer to, calls replaced, by the name as it is written: the same cells from anywhere, as in Lowside. */
export function namesWithoutCalls({ names }: Workbook, book: CallBook): ReadonlyMap<string, string> {
  return new Map([...names].map(([name, refersTo]) => {
    const text = book.replaceCalls(refersTo, { sheet: null, words: `the name ${name}` })
    return [name, rewriteReferences(text, (reference) => ({ ...reference, from: absolute(reference.from), to: reference.to && absolute(reference.to) }))] as const
  }))
}
