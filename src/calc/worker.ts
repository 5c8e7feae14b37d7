import { casesOf } from '../workbook/cases.ts'
import type { Cell } from '../workbook/document.ts'
import type { Edit } from '../workbook/edits.ts'
import { unpackInto } from '../workbook/packed-rows.ts'
import { caseOutcomes } from './case-outcomes.ts'
import { Graph } from './graph.ts'
import { loadGraph } from './loading.ts'
import type { CalculationMethod, CalculationRequest, CalculationResponse, CalculationResult, HandedOver, LoadRequest } from './messages.ts'
import { inOneTurn } from './turns.ts'

/** The graph on its own thread. Requests are answered in the order in which they came. */
let graph: Graph | undefined
let prepared: Edit[] = []
let preparedRows: (Cell | undefined)[][][] = []

const methods: { readonly [M in CalculationMethod]: (...args: Extract<CalculationRequest, { method: M }>['args']) => CalculationResult<M> } = {
  prepareRows(sheet, rows) {
    unpackInto((preparedRows[sheet] ??= []), rows)
  },
  open(workbook) {
    const sheets = workbook.sheets.map((sheet, index) => ({ ...sheet, rows: preparedRows[index] ?? sheet.rows }))
    preparedRows = []
    graph = new Graph({ ...workbook, sheets })
  },
  prepare: (edits) => void prepared.push(...edits),
  apply(edits) {
    const all = [...prepared, ...edits]
    prepared = []
    opened().apply(all)
  },
  read: (sheet, area) => opened().read(sheet, area),
  states: () => opened().states(),
  evaluate: (formula, sheet) => opened().evaluate(formula, sheet),
  feeds: (sheet, row, column) => opened().feeds(sheet, row, column),
  users: (sheet, row, column) => opened().users(sheet, row, column),
  total: (sheet, areas) => opened().total(sheet, areas),
  allValues: () => opened().allValues(),
  cases: () => caseOutcomes(opened()),
  handOver(port, withCases) {
    const held = opened()
    port.postMessage({ workbook: held.workbook, areas: held.allAreas(), states: held.states(), ...(withCases && casesOf(held.workbook).list.length > 0 ? { cases: caseOutcomes(held) } : {}) } satisfies HandedOver)
  },
  handWorkbook: (port) => port.postMessage(opened().workbook),
}

function opened(): Graph {
  if (graph === undefined) throw new Error('no workbook has been opened for calculation')
  return graph
}

/** What has come and is not answered yet. */
let waiting: CalculationRequest[] = []

/** A task of its own, so that what came during the last turn is all there before the next one begins. */
const { port1: turnBegins, port2: turn } = new MessageChannel()
turnBegins.onmessage = () => {
  const requests = waiting
  waiting = []
  for (const { ids, request } of inOneTurn(requests)) {
    const given = answer(request)
    for (const id of ids) postMessage({ ...given, id } satisfies CalculationResponse)
  }
}

addEventListener('message', ({ data }: MessageEvent<CalculationRequest | LoadRequest>) => {
  if (data.method === 'load') return void load(data)
  if (waiting.push(data) === 1) turn.postMessage(null)
})

async function load({ id, source }: LoadRequest): Promise<void> {
  try {
    const loaded = await loadGraph(source, (news) => postMessage({ id, news } satisfies CalculationResponse))
    if ('graph' in loaded) graph = loaded.graph
    postMessage({ id, loaded: 'problems' in loaded ? loaded.problems : [] } satisfies CalculationResponse)
  } catch (fault) {
    postMessage({ id, fault: wordsOf(fault) } satisfies CalculationResponse)
  }
}

function answer({ method, args }: CalculationRequest): { readonly result: CalculationResult<CalculationMethod> } | { readonly fault: string } {
  try {
    // Each method is called with the arguments of its own request, which the type of the pair cannot say.
    const call = methods[method] as (...given: readonly unknown[]) => CalculationResult<CalculationMethod>
    return { result: call(...args) }
  } catch (fault) {
    return { fault: wordsOf(fault) }
  }
}

const wordsOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault))
