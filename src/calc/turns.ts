import type { Edit } from '../workbook/edits.ts'
import type { CalculationRequest } from './messages.ts'

type Apply = Extract<CalculationRequest, { method: 'apply' }>

/** Requests that are answered as one. */
export interface Joined {
  readonly ids: readonly number[]
  readonly request: CalculationRequest
}

/** These only ask; all others change what is asked about. */
const ASKING: ReadonlySet<CalculationRequest['method']> = new Set<CalculationRequest['method']>(['read', 'states', 'evaluate', 'feeds', 'users', 'total', 'allValues', 'handOver', 'handWorkbook'])

/**
 * What came while the graph was at work, in the order to answer it: entries in cells made meanwhile are one recalculation, however many
 * there were, and what was asked between them is answered after them. So the values never fall further behind than one recalculation.
 */
export function inOneTurn(requests: readonly CalculationRequest[]): Joined[] {
  const turn: Joined[] = []
  let entries: Apply[] = []
  let asked: Joined[] = []
  const endRun = (): void => {
    const [first] = entries
    if (first) turn.push({ ids: entries.map(({ id }) => id), request: { ...first, args: [entries.flatMap(({ args }) => args[0])] } })
    turn.push(...asked)
    entries = []
    asked = []
  }
  for (const request of requests) {
    if (request.method === 'apply' && request.args[0].every(isEntry)) entries.push(request)
    else if (ASKING.has(request.method)) asked.push({ ids: [request.id], request })
    else {
      endRun()
      turn.push({ ids: [request.id], request })
    }
  }
  endRun()
  return turn
}

/** With what cases keep aside of it. */
const isEntry = (edit: Edit): boolean => (edit.kind === 'cells' && edit.follow === undefined) || edit.kind === 'cases'
