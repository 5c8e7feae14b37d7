import type { ExportedChange, HyperFormula } from 'hyperformula'
import { parseAddress, printAddress, type CellAddress } from '../workbook/address.ts'
import { cellAt, type Workbook } from '../workbook/document.ts'
import type { Edit } from '../workbook/edits.ts'
import { deleting, inserting } from '../workbook/formula/line-references.ts'
import { MAX_FORMULA } from '../workbook/limits.ts'
import { engineContent, engineName } from './translate.ts'

/** Formula cells that show an error, by the engine's sheet number. */
export type ErrorCells = Map<number, Set<string>>

/** Cells that are set one by one at most: beyond, building afresh is quicker. */
const MOST_SET = 4000

/** Whether the engine can take these edits by opening and closing lines itself, its references following. */
export function canFollowLines(edits: readonly Edit[]): boolean {
  return edits.some(isLines) && edits.every((edit) => (isLines(edit) ? edit.follow === true : edit.kind === 'cells' || (edit.kind === 'name' && edit.refersTo !== null)))
}

/**
 * Opens and closes lines in the engine, which rewrites its references as the document's edits do (tests/property/graph.test.ts compares them),
 * and then sets what else the edits change, as `after` has it. Error cells move along. Undefined where a fresh graph is called for; the engine
 * is of no use then.
 */
export function followLines(engine: HyperFormula, errors: ErrorCells, after: Workbook, edits: readonly Edit[]): readonly ExportedChange[] | undefined {
  const toSet = new Map<string, Set<string>>()
  let fits = true
  const changes = engine.batch(() => {
    for (const edit of edits) {
      if (edit.kind === 'cells') addToSet(edit.sheet, edit.cells.filter((change) => edit.follow !== true || mustBeSet(edit.sheet, change)))
      else if (isLines(edit)) fits &&= moveLines(edit)
    }
    fits &&= [...toSet.values()].reduce((count, cells) => count + cells.size, 0) <= MOST_SET
    if (!fits) return
    for (const [sheet, addresses] of toSet) {
      for (const { row, column } of [...addresses].map(placeOf)) {
        engine.setCellContents({ sheet: idOf(sheet), row, col: column }, engineContent(cellAt(after, sheet, row, column)?.content ?? null))
      }
    }
    for (const edit of edits) {
      const refersTo = edit.kind === 'name' ? after.names.get(edit.name) : undefined
      if (edit.kind === 'name' && refersTo !== undefined) engine.changeNamedExpression(edit.name, engineName(edit.name, refersTo))
    }
  })
  return fits ? changes : undefined

  function idOf(sheet: string): number {
    const id = engine.getSheetId(sheet)
    if (id === undefined) throw new RangeError(`there is no sheet called ${sheet}`)
    return id
  }

  function addToSet(sheet: string, places: readonly CellAddress[]): void {
    const cells = toSet.get(sheet) ?? new Set()
    toSet.set(sheet, cells)
    for (const { row, column } of places) cells.add(printAddress(row, column))
  }

  /** The message of a formula that cannot be read names a place in its text, which may have become longer. */
  function mustBeSet(sheet: string, { row, column, cell }: CellAddress & { readonly cell: { readonly content: unknown } | null }): boolean {
    const isLong = typeof cell?.content === 'string' && cell.content.length > MAX_FORMULA
    return isLong || (errors.get(idOf(sheet))?.has(printAddress(row, column)) ?? false)
  }

  /** False where the lines lie beyond what the engine has of the sheet: its references to them would stay as they are. */
  function moveLines(edit: LinesEdit): boolean {
    const { axis, at, count, sheet } = edit
    const id = idOf(sheet)
    const { height, width } = engine.getSheetDimensions(id)
    if (at >= (axis === 'rows' ? height : width)) return false
    const shift = edit.kind === 'insertLines' ? inserting(axis, at, count) : deleting(at, count)
    const moved = (addresses: ReadonlySet<string> | undefined): Set<string> =>
      new Set([...(addresses ?? [])].map(placeOf).flatMap(({ row, column }) => {
        const line = shift(...(axis === 'rows' ? [row, row] as const : [column, column] as const))?.[0]
        return line === undefined ? [] : [axis === 'rows' ? printAddress(line, column) : printAddress(row, line)]
      }))
    if (errors.has(id)) errors.set(id, moved(errors.get(id)))
    if (toSet.has(sheet)) toSet.set(sheet, moved(toSet.get(sheet)))
    ENGINE_MOVES[edit.kind][axis](engine, id, at, count)
    if (edit.kind === 'insertLines') addToSet(sheet, edit.cells ?? [])
    return true
  }
}

type LinesEdit = Extract<Edit, { kind: 'insertLines' | 'deleteLines' }>

const isLines = (edit: Edit): edit is LinesEdit => edit.kind === 'insertLines' || edit.kind === 'deleteLines'

type EngineMove = (engine: HyperFormula, sheet: number, at: number, count: number) => unknown

const ENGINE_MOVES: Readonly<Record<LinesEdit['kind'], Readonly<Record<LinesEdit['axis'], EngineMove>>>> = {
  insertLines: {
    rows: (engine, sheet, at, count) => engine.addRows(sheet, [at, count]),
    columns: (engine, sheet, at, count) => engine.addColumns(sheet, [at, count]),
  },
  deleteLines: {
    rows: (engine, sheet, at, count) => engine.removeRows(sheet, [at, count]),
    columns: (engine, sheet, at, count) => engine.removeColumns(sheet, [at, count]),
  },
}

function placeOf(address: string): CellAddress {
  const place = parseAddress(address)
  if (place === undefined) throw new RangeError(`${address} is no address`)
  return place
}
