import { batch, createEffect, createMemo, createSignal, on, onCleanup, type Accessor } from 'solid-js'
import { listsOf } from '../../../exchange/lists/lists-of.ts'
import { keptFor, fromKept } from '../../../exchange/lists/kept.ts'
import type { ListColumn, WorkbookList } from '../../../exchange/lists/list.ts'
import { mendKey, rowMapper, sourceRows, type MappedRow } from '../../../exchange/lists/map-rows.ts'
import { NO_CHOICES, type ColumnMapping, type Mapping } from '../../../exchange/lists/mapping.ts'
import type { SourceTable } from '../../../exchange/lists/source-table.ts'
import { sourceFor, suggestColumn, suggestMapping } from '../../../exchange/lists/suggest-mapping.ts'
import type { FileContents, ReadSheet } from '../../../exchange/reading/contents.ts'
import { createSlices } from '../../../storage/next-task.ts'
import type { Workbook } from '../../../workbook/document.ts'
import type { KeptMapping } from '../../../workbook/kept-mapping.ts'

/** Which rows the preview shows. */
export type Shown = 'all' | 'problems' | 'marks'

/** What someone has said of how a list of a file goes into a list of the workbook, and what comes of it. */
export interface ListWizardState {
  readonly lists: readonly WorkbookList[]
  readonly list: Accessor<WorkbookList>
  chooseList(name: string): void
  readonly source: Accessor<SourceTable>
  /** `null`: there are no headings. */
  chooseHeadingRow(row: number | null): void
  readonly mapping: Accessor<Mapping>
  /** The kept mapping that it began with, by name. */
  readonly keptName: Accessor<string | undefined>
  /** Those that fit the file. */
  readonly fitting: Accessor<readonly KeptMapping[]>
  /** Undefined: as the headings suggest. */
  chooseKept(name: string | undefined): void
  /** The mapping as it is has been kept under this name. */
  noteKept(name: string): void
  chooseSource(column: ListColumn, from: number | undefined): void
  change(column: ListColumn, change: Partial<Pick<ColumnMapping, 'unit' | 'unitColumn' | 'constant'>>): void
  chooseMeaning(column: ListColumn, key: string, choice: string | undefined): void
  /** All rows of the file that hold something, as far as they have been worked out. */
  readonly rows: Accessor<readonly MappedRow[]>
  readonly working: Accessor<boolean>
  readonly leftOut: Accessor<ReadonlySet<number>>
  leaveOut(row: number, isLeftOut: boolean): void
  readonly skipsBad: Accessor<boolean>
  setSkipsBad(skips: boolean): void
  mend(row: number, at: number, text: string): void
  readonly mended: Accessor<ReadonlyMap<string, string>>
  /** Rows that would be appended now. */
  readonly taken: Accessor<readonly MappedRow[]>
  /** Rows with problems that nobody has left out yet. */
  readonly bad: Accessor<readonly MappedRow[]>
}

interface Given {
  readonly workbook: Accessor<Workbook>
  readonly contents: FileContents
  readonly sheet: ReadSheet
  readonly lists: readonly [WorkbookList, ...WorkbookList[]]
  /** The atmosphere where the plant stands, once it is known. */
  readonly sitePa: Accessor<number | undefined>
}

/** The lists of a workbook, the one that fits a sheet best first. */
export function listsByFit(workbook: Workbook, sheet: ReadSheet): readonly WorkbookList[] {
  const fits = listsOf(workbook).map((list) => ({ list, columns: suggestMapping(list, sourceFor(list, sheet)).columns.size }))
  return fits.toSorted((one, other) => other.columns - one.columns).map(({ list }) => list)
}

export function createListWizard({ workbook, contents, sheet, lists, sitePa }: Given): ListWizardState {
  const [list, setList] = createSignal<WorkbookList>(lists[0])
  const [source, setSource] = createSignal(sourceFor(list(), sheet))
  const [mapping, setMapping] = createSignal<Mapping>({ columns: new Map() })
  const [keptName, setKeptName] = createSignal<string | undefined>(undefined)
  const [mended, setMended] = createSignal<ReadonlyMap<string, string>>(new Map())
  const [leftOut, setLeftOut] = createSignal<ReadonlySet<number>>(new Set())
  const [skipsBad, setSkipsBad] = createSignal(false)
  const [rows, setRows] = createSignal<readonly MappedRow[]>([])
  const [working, setWorking] = createSignal(true)

  const fitting = createMemo(() => keptFor(workbook(), list(), source()))

  function begin(): void {
    const [kept] = keptFor(workbook(), list(), source())
    setMended(new Map())
    chooseKept(kept?.name)
  }
  function chooseKept(name: string | undefined): void {
    const kept = workbook().mappings?.find((one) => one.name === name)
    setKeptName(kept?.name)
    setMapping(kept ? fromKept(kept, list(), source()).mapping : suggestMapping(list(), source()))
  }
  function put(column: ListColumn, one: ColumnMapping | undefined): void {
    const columns = new Map(mapping().columns)
    if (one && (one.from !== undefined || one.constant !== undefined)) columns.set(column.column, one)
    else columns.delete(column.column)
    // Whoever changes it has looked at it.
    setMapping({ columns })
  }
  const now = (column: ListColumn): ColumnMapping => {
    const { unsure: _, ...one } = mapping().columns.get(column.column) ?? { choices: NO_CHOICES }
    return one
  }
  batch(begin)

  let turn = 0
  createEffect(on([list, source, mapping, mended, sitePa], ([toList, from, by, typed, pressure]) => {
    const mine = ++turn
    setWorking(true)
    void (async () => {
      const slice = createSlices()
      // What is typed comes first: this may be the middle of it.
      await Promise.resolve()
      if (mine !== turn) return
      const map = rowMapper(toList, from, by, { workbook: workbook(), sitePa: pressure, fileHasDecimalCommas: contents.dialect?.decimalMark === ',', mended: typed })
      const mapped: MappedRow[] = []
      for (const row of sourceRows(from)) {
        mapped.push(map(row))
        await slice()
        if (mine !== turn) return
      }
      batch(() => {
        setRows(mapped)
        setWorking(false)
      })
    })()
  }))
  onCleanup(() => turn++)

  return {
    lists, list, source, mapping, keptName, fitting, rows, working, leftOut, skipsBad, setSkipsBad, mended, chooseKept,
    noteKept: (name) => void setKeptName(name),
    chooseList: (name) => batch(() => {
      setList(lists.find((one) => one.name === name) ?? lists[0])
      setSource(sourceFor(list(), sheet))
      begin()
    }),
    chooseHeadingRow: (row) => batch(() => {
      setSource(sourceFor(list(), sheet, row))
      setLeftOut(new Set<number>())
      begin()
    }),
    chooseSource(column, from) {
      const found = source().columns.find((one) => one.column === from)
      const { constant } = now(column)
      const kept = constant === undefined ? {} : { constant }
      put(column, found ? { ...suggestColumn(column, source(), found), ...kept } : { choices: NO_CHOICES, ...kept })
    },
    change(column, { unit, unitColumn, constant }) {
      const { unit: oldUnit, unitColumn: oldColumn, constant: oldConstant, ...rest } = now(column)
      const isUnit = unit !== undefined || unitColumn !== undefined
      const [newUnit, newColumn] = isUnit ? [unit || undefined, unitColumn] : [oldUnit, oldColumn]
      const newConstant = constant === undefined ? oldConstant : constant.trim() === '' ? undefined : constant
      put(column, {
        ...rest,
        ...(newUnit === undefined ? {} : { unit: newUnit }),
        ...(newColumn === undefined ? {} : { unitColumn: newColumn }),
        ...(newConstant === undefined ? {} : { constant: newConstant }),
      })
    },
    chooseMeaning(column, key, choice) {
      const one = now(column)
      const choices = new Map(one.choices)
      if (choice === undefined) choices.delete(key)
      else choices.set(key, choice)
      put(column, { ...one, choices })
    },
    leaveOut(row, isLeftOut) {
      const next = new Set(leftOut())
      if (isLeftOut) next.add(row)
      else next.delete(row)
      setLeftOut(next)
    },
    mend: (row, at, text) => void setMended((before) => new Map(before).set(mendKey(row, at), text)),
    taken: createMemo(() => rows().filter(({ sourceRow, problems }) => problems.length === 0 && !leftOut().has(sourceRow))),
    bad: createMemo(() => rows().filter(({ sourceRow, problems }) => problems.length > 0 && !leftOut().has(sourceRow))),
  }
}
