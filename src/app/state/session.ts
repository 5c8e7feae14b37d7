import { batch, createContext, createMemo, createSignal, useContext, type Accessor } from 'solid-js'
import type { Calculation } from '../calculation/calculation.ts'
import type { CellValue } from '../../calc/values.ts'
import type { FileState, Shelf } from '../../storage/shelf.ts'
import type { Area, CellAddress } from '../../workbook/address.ts'
import type { HeldContent } from '../../workbook/cases.ts'
import { disjoint } from '../../workbook/areas.ts'
import { setEntry } from '../../workbook/commands.ts'
import { foldCase, isFormula, usedRange, type Cell, type Role, type Sheet, type Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { meantText } from '../../workbook/entry.ts'
import { enterInAll } from '../../workbook/fill.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import { plainValue } from '../../calc/cell-value.ts'
import { createCaseBases } from './case-bases.ts'
import { createCompleting, type Completing } from './completing.ts'
import { createCutting, type Cutting } from './cutting.ts'
import { createEntry, type Entry } from './entry.ts'
import { createFeeds, type Feeds } from './feeds.ts'
import { createKeeping, type Keeping } from './keeping.ts'
import type { Parts } from './long-change.ts'
import { loadInSight } from './loading-work.ts'
import { createLongWork, type LongWork } from './long-work.ts'
import { createPointing, type Pointing } from './pointing.ts'
import { createRecalculation, type Recalculation } from './recalculation.ts'
import { createSelection, type Selection } from './selection.ts'
import { createSheetStates } from './sheet-states.ts'
import { createTrail, type Trail } from './trail.ts'
import { createValues, type Values } from './values.ts'
import { createWorkbookState, type WorkbookState } from './workbook-state.ts'

export type PanelName = 'Why' | 'Find' | 'Figure' | 'Guide' | 'Cases' | 'Sweep' | 'Solve for' | 'Margins' | 'Findings' | 'Differences' | 'Checked'

/** What is open over the screen beside a cell, one at a time. */
export type PopoverName = 'unitInLine' | 'unitAtCell' | 'format'

/** What the last action has to say: what went wrong, or what was done where the screen does not show it. */
export interface Notice {
  readonly tone: 'problem' | 'done'
  readonly text: string
}

/** All state of the screen: the document, the graph's answers, and where the user is. */
export interface Session {
  readonly document: WorkbookState
  readonly keeping: Keeping
  readonly recalculation: Recalculation
  readonly values: Values
  readonly sheetStates: ReturnType<typeof createSheetStates>
  readonly selection: Selection
  readonly entry: Entry
  readonly cutting: Cutting
  readonly completing: Completing
  readonly pointing: Pointing
  readonly feeds: Feeds
  /** The walk from cell to cell that Why is followed on, whichever panel is open. */
  readonly trail: Trail
  readonly service: Calculation
  readonly work: LongWork
  /** The sheet shown. */
  readonly sheet: Accessor<Sheet>
  readonly sheetName: Accessor<string>
  /** Rows and columns that the grid offers: those in use and some to go on with. */
  readonly size: Accessor<{ readonly rows: number; readonly columns: number }>
  /** How many workbooks have been opened in this session. */
  readonly opened: Accessor<number>
  readonly panel: Accessor<PanelName | undefined>
  setPanel(panel: PanelName | undefined): void
  readonly popover: Accessor<PopoverName | undefined>
  setPopover(popover: PopoverName | undefined): void
  readonly notice: Accessor<Notice | undefined>
  setNotice(notice: Notice | undefined): void
  cell(row: number, column: number): Cell | undefined
  /** What a cell of the sheet shown comes to, as far as it is known. */
  value(row: number, column: number): CellValue | undefined
  activeCell(): Cell | undefined
  /** What the base has in a cell of the sheet shown, where the current case has a value of its own. */
  baseOf(row: number, column: number): HeldContent | undefined
  /** The unit that a cell's number has, as it is written; undefined where there is none. */
  unit(row: number, column: number): string | undefined
  show(sheetName: string): void
  goTo(sheetName: string, place: CellAddress): void
  /** One action of the user on the document; what is wrong with it becomes the notice. */
  act(label: string, makeEdits: Parameters<WorkbookState['change']>[1]): void
  /** The same for one that may take longer than a frame; `done` hears of its end unless it was stopped or refused. */
  actInParts(parts: Omit<Parts, 'done'> & { readonly done: () => void }): void
  /** Stops a long action, the workbook being as before, or else other long work; false if there is none. */
  stop(): boolean
  /** What was selected last, whole rows and columns as far as the sheet is in use. */
  usedSelection(): Area
  /** All that is selected, in the same way. */
  usedAreas(): readonly Area[]
  /** As the document does, and shows what has changed. */
  undo(): void
  redo(): void
  /** Ends typing, if any; false if what was typed is not accepted. */
  settle(): boolean
  /** Enters what is typed in all cells selected; false if it is not accepted. */
  settleInSelection(): boolean
  open(workbook: Workbook, inFile: boolean, before?: FileState): void
}

const ARRIVING = 'The workbook is still being opened. Stop (at the bottom) to work on another one.'
const READING = 'Another tab writes this workbook, this one reads. Take over (at the top) to write here.'
const SPARE_ROWS = 40
const LEAST_ROWS = 60
const SPARE_COLUMNS = 4
const LEAST_COLUMNS = 10

export function createSession(service: Calculation, openShelf: () => Promise<Shelf>): Session {
  const work = createLongWork()
  const recalculation = createRecalculation(service, work)
  const values = createValues(recalculation)
  const keeping = createKeeping({
    openShelf,
    async recoverLarge(contents, title) {
      const loaded = await loadInSight({ service, work }, contents, title)
      if ('problems' in loaded) return { problem: loaded.problems[0]?.message ?? '' }
      // What came of kept contents says how much of them it contains.
      if (!loaded.from) throw new Error('a workbook from nowhere')
      return { workbook: loaded.workbook, ...loaded.from }
    },
    document: () => document,
    show: (workbook, file) => open(workbook, file.inFile, file),
    settle() {
      document.longChange.finish()
      if (!settle()) entry.cancel()
    },
    tell: (problem) => setNotice({ tone: 'problem', text: problem }),
  })
  const document: WorkbookState = createWorkbookState(
    [{ opened: values.clear, edited: () => undefined }, recalculation, keeping],
    () => (opened() === 0 ? ARRIVING : keeping.reading() ? READING : undefined),
  )
  const [shown, setShown] = createSignal('')
  const [opened, setOpened] = createSignal(0)
  const [panel, setPanel] = createSignal<PanelName | undefined>('Why')
  const [popover, setPopover] = createSignal<PopoverName | undefined>(undefined)
  const [notice, setNotice] = createSignal<Notice | undefined>(undefined)

  const sheet = createMemo(() => shownSheet(document.workbook(), shown()))
  const sheetName = createMemo(() => sheet().name)
  const used = createMemo(() => usedRange(sheet()), undefined, { equals: (a, b) => a.rows === b.rows && a.columns === b.columns })
  const size = createMemo(() => ({
    rows: Math.max(LEAST_ROWS, used().rows + SPARE_ROWS),
    columns: Math.max(LEAST_COLUMNS, used().columns + SPARE_COLUMNS),
  }))

  const cell = (row: number, column: number): Cell | undefined => sheet().rows[row]?.[column]
  const selection = createSelection({
    sheet: sheetName, size,
    isFilled: (row, column) => (cell(row, column)?.content ?? null) !== null,
    start: () => startOf(sheet()),
  })
  const entry = createEntry({
    workbook: document.workbook, sheet: sheetName, active: selection.active,
    put: (name, at, typed) => document.change('Entry', (workbook) => setEntry(workbook, name, at, typed)),
  })

  const cutting = createCutting(document.workbook, sheetName)
  const trail = createTrail({
    workbook: document.workbook,
    here: () => ({ sheet: sheetName(), ...selection.active() }),
    goTo: ({ sheet: to, row, column }) => goTo(to, { row, column }),
  })
  const completing = createCompleting({ entry, workbook: document.workbook })
  const pointing = createPointing({ entry, sheet: sheetName, active: selection.active, size, show: setShown })

  function report(problem: string | undefined): boolean {
    setNotice(problem === undefined ? undefined : { tone: 'problem', text: problem })
    return problem === undefined
  }
  /** Goes where something has changed, if that is one place. */
  function showChange(edits: readonly Edit[]): void {
    setNotice(undefined)
    // What cases keep aside, tolerances and check marks are shown elsewhere.
    const [edit, ...others] = edits.filter(({ kind }) => kind !== 'cases' && kind !== 'tolerances' && kind !== 'review')
    const change = edit?.kind === 'cells' ? edit.cells[0] : undefined
    if (others.length > 0 || edit?.kind !== 'cells' || !change) return
    batch(() => {
      setShown(edit.sheet)
      selection.moveTo(change)
    })
  }
  function open(workbook: Workbook, inFile: boolean, before?: FileState): void {
    entry.cancel()
    batch(() => {
      setNotice(undefined)
      selection.forget()
      trail.forget()
      setShown(workbook.sheets[0]?.name ?? '')
      document.replace(workbook, inFile, before)
      setOpened((times) => times + 1)
    })
  }
  /** Whole rows and columns as far as the sheet is in use. */
  function usedPart({ top, left, bottom, right }: Area): Area {
    const { rows, columns } = size()
    return {
      top, left,
      bottom: bottom === rows - 1 ? Math.max(top, used().rows - 1) : bottom,
      right: right === columns - 1 ? Math.max(left, used().columns - 1) : right,
    }
  }
  const settle = () => entry.editing() === undefined || report(entry.enter())

  function goTo(name: string, place: CellAddress): void {
    if (!settle()) return
    batch(() => {
      setShown(name)
      selection.moveTo(place)
    })
  }
  function settleInSelection(): boolean {
    return report(entry.enter((at, typed) => {
      setShown(at.sheet)
      const areas = disjoint(selection.areas().map(usedPart))
      return document.change('Entry', (workbook) => enterInAll(workbook, at.sheet, at, areas, typed))
    }))
  }

  return {
    document, keeping, open, recalculation, values, selection, entry, cutting, trail, completing, pointing, service, work, sheet, sheetName, size, opened, panel, setPanel, popover, setPopover, notice, setNotice, cell, settle, settleInSelection,
    sheetStates: createSheetStates(recalculation),
    baseOf: createCaseBases(document.workbook, sheetName),
    feeds: createFeeds({ workbook: document.workbook, sheet: sheetName, home: () => entry.editing()?.sheet ?? sheetName(), text: entry.text }),
    value(row, column) {
      const plain = plainValue(cell(row, column))
      return plain === undefined ? values.at(sheetName(), row, column) : plain
    },
    usedSelection: () => usedPart(selection.area()),
    usedAreas: () => selection.areas().map(usedPart),
    undo: () => void (report(document.refusal()) && showChange(document.undo())),
    redo: () => void (report(document.refusal()) && showChange(document.redo())),
    activeCell: () => cell(selection.active().row, selection.active().column),
    unit(row, column) {
      const value = cell(row, column)
      if (typeof value?.content !== 'number' && !isFormula(value?.content)) return undefined
      const at = unitOfValue(sheet(), { row, column })
      return at && meantText(cell(at.row, at.column)?.content)
    },
    show(name) {
      if (settle()) setShown(name)
    },
    goTo,
    actInParts({ done, ...parts }) {
      setNotice(undefined)
      document.changeInParts({ ...parts, done: (problem) => batch(() => report(problem) && done()) })
    },
    stop() {
      const label = document.longChange.progress()?.label
      const isStopped = document.longChange.stop()
      if (isStopped) setNotice({ tone: 'done', text: `${label ?? 'The action'} stopped: nothing has changed` })
      return isStopped || work.stop()
    },
    act: (label, makeEdits) => void report(document.change(label, makeEdits)),
  }
}

/** Where work on a sheet begins: at its first input, or else its first result. */
const startOf = (sheet: Sheet): CellAddress => firstOf(sheet, 'input') ?? firstOf(sheet, 'result') ?? { row: 0, column: 0 }

function firstOf({ rows }: Sheet, role: Role): CellAddress | undefined {
  for (const [row, cells] of rows.entries()) {
    const column = cells?.findIndex((one) => one?.role === role) ?? -1
    if (column >= 0) return { row, column }
  }
  return undefined
}

/** The sheet of that name, or the first one where it is gone. */
function shownSheet(workbook: Workbook, name: string): Sheet {
  const folded = foldCase(name)
  const sheet = workbook.sheets.find((one) => foldCase(one.name) === folded) ?? workbook.sheets[0]
  if (!sheet) throw new Error('a workbook has at least one sheet')
  return sheet
}

const SessionContext = createContext<Session>()
export const SessionProvider = SessionContext.Provider

export function useSession(): Session {
  const session = useContext(SessionContext)
  if (!session) throw new Error('useSession outside of SessionProvider')
  return session
}
