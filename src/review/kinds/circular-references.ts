import { ErrorCells, LOOP_ERROR, type ErrorCell } from '../error-cells.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import type { Survey } from '../survey.ts'

/** Formulas that depend on their own result, loop by loop. */
export const circularReferences: FindingKind = {
  kind: 'circular-references',
  heading: 'Formulas that depend on their own result',
  about: 'No value comes of a formula that uses its own result, through whatever other cells. Each loop is named cell by cell; iterate by hand or by What if, or have a function solve for it.',
  find(survey) {
    // All cells of a loop show this sign, so nothing else needs walking through.
    const cells = new ErrorCells(survey, (error) => error === LOOP_ERROR)
    const uses = usesOf(survey, cells)
    const loops = knots(cells.all, uses)
    const inLoops = new Set(loops.flat())
    const using = cells.all.filter((cell) => !inLoops.has(cell)).length
    if (loops.length === 0) return cells.all.slice(0, 1).map((cell) => found(cell, [], using - 1))
    return loops.map((knot) => found(knot[0], shortestLoop(knot, uses), loops.length === 1 ? using : 0))
  },
}

/** In all; beyond, a cell’s first uses are enough: in a column of running sums each cell uses all those before. */
const MOST_USES = 2_000_000
const FIRST_USES = 20

function usesOf(survey: Survey, cells: ErrorCells): Uses {
  const uses = new Map<ErrorCell, readonly ErrorCell[]>()
  let count = 0
  for (const cell of cells.all) {
    const used = new Set<ErrorCell>()
    for (const one of cells.usedBy(survey, cell)) {
      used.add(one)
      if (count + used.size > MOST_USES && used.size >= FIRST_USES) break
    }
    count += used.size
    uses.set(cell, [...used])
  }
  return uses
}

type Uses = ReadonlyMap<ErrorCell, readonly ErrorCell[]>
type Knot = readonly [ErrorCell, ...ErrorCell[]]

function found(first: ErrorCell, loop: readonly ErrorCell[], using: number): Found {
  const { sheet, row, column } = first
  const users = using <= 0 ? '' : using === 1 ? ' A cell that uses it has no value either.' : ` ${using} cells that use it have no value either.`
  return {
    severity: 'error', sheet, area: { top: row, bottom: row, left: column, right: column },
    reason: `Depends on its own result: ${wayWords(loop, sheet)}.${users}`,
    key: `loop of ${loop.length}`, causes: loop.slice(1, MOST_CAUSES).map(({ sheet: on, row: at, column: across }) => ({ sheet: on, row: at, column: across })),
  }
}

const MOST_CAUSES = 50
const MOST_NAMED = 8

/** "C5 uses D9, which uses C7, which uses C5". */
function wayWords(loop: readonly ErrorCell[], sheet: string): string {
  const names = loop.map((cell) => cellWords(cell, sheet))
  const [first = ''] = names
  if (names.length <= 1) return names.length === 0 ? 'through the cells it refers to' : `${first} uses itself`
  const named = names.length > MOST_NAMED ? [...names.slice(1, MOST_NAMED - 1), `${names.length - MOST_NAMED + 1} cells more`] : names.slice(1)
  return `${first} uses ${[...named, first].join(', which uses ')}`
}

/** The way from the first cell back to it over the fewest cells, itself first. */
function shortestLoop([first, ...rest]: Knot, uses: Uses): ErrorCell[] {
  const knot = new Set([first, ...rest])
  const from = new Map<ErrorCell, ErrorCell>()
  const queue = [first]
  for (const cell of queue) {
    for (const used of uses.get(cell) ?? []) {
      if (used === first) {
        const way: ErrorCell[] = []
        for (let at: ErrorCell | undefined = cell; at !== undefined; at = from.get(at)) way.unshift(at)
        return way
      }
      if (!knot.has(used) || from.has(used)) continue
      from.set(used, cell)
      queue.push(used)
    }
  }
  return [first]
}

/** Cells that all depend on each other (Tarjan 1972, with a stack of its own: a chain may be as long as a sheet); each in the order of reading. */
function knots(cells: readonly ErrorCell[], uses: Uses): Knot[] {
  const number = new Map<ErrorCell, number>()
  const low = new Map<ErrorCell, number>()
  const open: ErrorCell[] = []
  const isOpen = new Set<ErrorCell>()
  const order = new Map(cells.map((cell, index) => [cell, index] as const))
  const found: Knot[] = []
  for (const start of cells) {
    if (number.has(start)) continue
    const way: { cell: ErrorCell; next: number }[] = []
    const enter = (cell: ErrorCell): void => {
      low.set(cell, number.size)
      number.set(cell, number.size)
      open.push(cell)
      isOpen.add(cell)
      way.push({ cell, next: 0 })
    }
    enter(start)
    for (let step = way.at(-1); step !== undefined; step = way.at(-1)) {
      const { cell } = step
      const used = uses.get(cell)?.[step.next++]
      if (used !== undefined) {
        if (!number.has(used)) enter(used)
        else if (isOpen.has(used)) low.set(cell, Math.min(low.get(cell) ?? 0, number.get(used) ?? 0))
        continue
      }
      way.pop()
      const above = way.at(-1)?.cell
      if (above !== undefined) low.set(above, Math.min(low.get(above) ?? 0, low.get(cell) ?? 0))
      if (low.get(cell) !== number.get(cell)) continue
      const [first, ...rest] = open.splice(open.lastIndexOf(cell)).toSorted((one, other) => (order.get(one) ?? 0) - (order.get(other) ?? 0))
      if (first === undefined) continue
      for (const one of [first, ...rest]) isOpen.delete(one)
      if (rest.length > 0 || uses.get(first)?.includes(first) === true) found.push([first, ...rest])
    }
  }
  return found.toSorted(([one], [other]) => (order.get(one) ?? 0) - (order.get(other) ?? 0))
}
