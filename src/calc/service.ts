import type { Edit } from '../workbook/edits.ts'
import type { Workbook } from '../workbook/document.ts'
import type { PackedRows } from '../workbook/packed-rows.ts'
import type { AreaValues, CellValue, SheetState } from './values.ts'
import type { CaseOutcome } from './case-outcomes.ts'
import type { Area } from '../workbook/address.ts'
import type { Total } from './total.ts'
import type { Feed, Users } from './walk.ts'

/**
 * The calculation graph as the screen sees it, on another thread: it is told of edits in the order in which they were made,
 * and answers for the state after the last one it was told of. A failed call rejects with a message for the user.
 */
export interface CalculationService {
  /** Hears of rows of a sheet, by its position, that belong to the workbook which `open` brings next: a large one comes in parts. */
  prepareRows(sheet: number, rows: PackedRows): Promise<void>
  /** Takes a workbook in place of the one before, with the rows prepared for it. */
  open(workbook: Workbook): Promise<void>
  /** Hears of edits that `apply` is to follow with its own: many come in several messages, so that none takes long. */
  prepare(edits: readonly Edit[]): Promise<void>
  /** Follows edits that the document has already taken, those prepared first. */
  apply(edits: readonly Edit[]): Promise<void>
  read(sheet: string, area: Area): Promise<AreaValues>
  /** The state of every sheet, in their order. */
  states(): Promise<readonly SheetState[]>
  /** The value a formula would have in a sheet, without entering it. */
  evaluate(formula: string, sheet: string): Promise<CellValue>
  /** What a cell's formula refers to, in the order of writing. */
  feeds(sheet: string, row: number, column: number): Promise<readonly Feed[]>
  /** The cells whose formulas use a cell. */
  users(sheet: string, row: number, column: number): Promise<Users>
  /** What the numbers of areas come to together, each counted once; undefined where there is none. */
  total(sheet: string, areas: readonly Area[]): Promise<Total | undefined>
  /** Every value of a workbook with formulas, sheet by sheet, for an export. */
  allValues(): Promise<ReadonlyMap<string, readonly (readonly CellValue[])[]>>
  /** What comes out in the base and in every case. The graph goes through them, so ask it of one that nothing else is asked of. */
  cases(): Promise<readonly CaseOutcome[]>
  /** Sends the workbook as it is, with every value, check and state, over a port: to another thread, which spares this one the copy. @param withCases also what comes out in each case */
  handOver(port: MessagePort, withCases: boolean): Promise<void>
  /** Sends the workbook alone over a port: to a thread that computes with a copy of it. */
  handWorkbook(port: MessagePort): Promise<void>
  /** Ends the thread. */
  close(): void
}
