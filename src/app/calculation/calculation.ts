import type { LoadSource, LoadStep } from '../../calc/loading.ts'
import type { CalculationService } from '../../calc/service.ts'
import type { RecoveredFrom } from '../../storage/recover.ts'
import type { Cell, Workbook } from '../../workbook/document.ts'
import type { ReadProblem } from '../../workbook/file-reading.ts'
import { nextTask } from '../../storage/next-task.ts'
import { unpackInto } from '../../workbook/packed-rows.ts'
import { CalculationEnded, createCalculationClient, type CalculationClient, type CalculationThread } from './client.ts'

/** `from`: of one that was kept, how much of what is kept it contains. */
export type Loaded = { readonly workbook: Workbook; readonly from?: RecoveredFrom | undefined } | { readonly problems: readonly ReadProblem[] }

export interface Loading {
  /** Rejected with `CalculationEnded` if it was stopped. */
  readonly result: Promise<Loaded>
  stop(): void
}

/** The calculation of the open workbook, on whichever thread holds its graph. */
export interface Calculation extends CalculationService {
  /**
   * Reads the text of a workbook file, or what is kept of a workbook, and builds its graph, on a thread of its own: the open workbook keeps its graph and its values until
   * `open` is called with the workbook that came of it. One at a time; another one stops it, and so does opening another workbook.
   */
  load(source: LoadSource, report: (step: LoadStep, share: number | undefined) => void): Loading
  /** Resolves once no workbook is being read any more, and whoever waited for one has it. */
  nothingLoading(): Promise<void>
  /** Ends what the graph is at work on, and with it the graph: until `open` nothing is calculated, and calls are rejected with `CalculationEnded`. */
  stop(): void
}

/** What a call means to whom there is no graph. */
const NO_GRAPH = 'There is no calculation: it was stopped.'

export function createCalculation(startThread: () => CalculationThread): Calculation {
  let client: CalculationClient | undefined = createCalculationClient(startThread())
  let loaded: { readonly workbook: Workbook; readonly client: CalculationClient } | undefined
  let loading: Loading | undefined

  function load(source: LoadSource, report: (step: LoadStep, share: number | undefined) => void): Loading {
    loading?.stop()
    const own = createCalculationClient(startThread())
    const mine: Loading = { result: run(), stop: () => own !== client && own.close() }
    loading = mine
    return mine

    async function run(): Promise<Loaded> {
      let head: Workbook | undefined
      let from: RecoveredFrom | undefined
      const rows: (Cell | undefined)[][][] = []
      const problems = await own.load(source, (news) => {
        if ('step' in news) report(news.step, news.share)
        else if ('workbook' in news) {
          head = news.workbook
          from = news.from
          rows.push(...head.sheets.map(() => []))
        } else {
          const sheet = rows[news.sheet]
          if (sheet) unpackInto(sheet, news.rows)
        }
      })
      if (!head) {
        own.close()
        return { problems }
      }
      const workbook = { ...head, sheets: head.sheets.map((sheet, index) => ({ ...sheet, rows: rows[index] ?? [] })) }
      loaded = { workbook, client: own }
      return { workbook, from }
    }
  }

  const now = (): CalculationClient => {
    if (!client) throw new CalculationEnded(NO_GRAPH)
    return client
  }

  return {
    load,
    open(workbook) {
      const before = client
      if (loaded?.workbook === workbook) {
        client = loaded.client
        loaded = undefined
        before?.close()
        return Promise.resolve()
      }
      loading?.stop()
      if (before?.waiting() === 0) return before.open(workbook)
      // What the graph is still at work on is for a workbook that is not shown any more.
      before?.close()
      client = createCalculationClient(startThread())
      return client.open(workbook)
    },
    async nothingLoading() {
      let last: Loading | undefined
      while (loading !== last) {
        last = loading
        await last?.result.catch(() => undefined)
        await nextTask()
      }
    },
    stop() {
      client?.close()
      client = undefined
    },
    prepareRows: async (sheet, rows) => now().prepareRows(sheet, rows),
    prepare: async (edits) => now().prepare(edits),
    apply: async (edits) => now().apply(edits),
    read: async (sheet, area) => now().read(sheet, area),
    states: async () => now().states(),
    evaluate: async (formula, sheet) => now().evaluate(formula, sheet),
    feeds: async (sheet, row, column) => now().feeds(sheet, row, column),
    users: async (sheet, row, column) => now().users(sheet, row, column),
    total: async (sheet, areas) => now().total(sheet, areas),
    allValues: async () => now().allValues(),
    cases: async () => now().cases(),
    handOver: async (port, withCases) => now().handOver(port, withCases),
    handWorkbook: async (port) => now().handWorkbook(port),
    close() {
      loading?.stop()
      client?.close()
    },
  }
}
