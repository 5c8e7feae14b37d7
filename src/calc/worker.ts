import { Graph } from './graph.ts'
import type { CalculationMethod, CalculationRequest, CalculationResponse, CalculationResult } from './messages.ts'

/** The graph on its own thread. Requests are answered in the order in which they came. */
let graph: Graph | undefined

const methods: { readonly [M in CalculationMethod]: (...args: Extract<CalculationRequest, { method: M }>['args']) => CalculationResult<M> } = {
  open: (workbook) => {
    graph = new Graph(workbook)
  },
  apply: (edits) => opened().apply(edits),
  read: (sheet, area) => opened().read(sheet, area),
  states: () => opened().states(),
  evaluate: (formula, sheet) => opened().evaluate(formula, sheet),
  feeds: (sheet, row, column) => opened().feeds(sheet, row, column),
  users: (sheet, row, column) => opened().users(sheet, row, column),
  total: (sheet, area) => opened().total(sheet, area),
  allValues: () => opened().allValues(),
}

function opened(): Graph {
  if (graph === undefined) throw new Error('no workbook has been opened for calculation')
  return graph
}

addEventListener('message', ({ data }: MessageEvent<CalculationRequest>) => postMessage(answer(data)))

function answer({ id, method, args }: CalculationRequest): CalculationResponse {
  try {
    // Each method is called with the arguments of its own request, which the type of the pair cannot say.
    const call = methods[method] as (...given: readonly unknown[]) => CalculationResult<CalculationMethod>
    return { id, result: call(...args) }
  } catch (fault) {
    return { id, fault: fault instanceof Error ? fault.message : String(fault) }
  }
}
