import type { Node } from './ancestry.ts'
import { groupsThatHangOnThemselves } from './loops.ts'
import { shifter } from '../../workbook/formula/references.ts'

/** What is told as one step: a node by itself, or rows of a column that are computed alike. */
export interface Bundle {
  readonly key: string
  /** In the order of the rows. */
  readonly nodes: readonly Node[]
  /** Keys of the bundles that it is computed from. */
  readonly uses: readonly string[]
}

/** So many rows alike are told as one step. */
const LEAST_ROWS = 3

/**
 * Puts rows together that stand under each other and whose formulas were filled from one, as far as nothing between them hangs on a part of them:
 * then there would be no order in which one step comes after the other.
 */
export function bundled(nodes: ReadonlyMap<string, Node>, asked: ReadonlySet<string>): readonly Bundle[] {
  let runs = runsOf([...nodes.values()], asked)
  for (;;) {
    const bundles = bundlesOf(nodes, runs)
    const loose = new Set(groupsThatHangOnThemselves(bundles).flat().filter((key) => key.startsWith(ROWS)))
    if (loose.size === 0) return bundles
    runs = runs.filter((run) => !loose.has(keyOfRun(run)))
  }
}

const ROWS = 'rows '
const keyOfRun = (run: readonly Node[]): string => ROWS + (run[0]?.key ?? '')

function runsOf(nodes: readonly Node[], asked: ReadonlySet<string>): readonly (readonly Node[])[] {
  const computed = nodes.filter(({ formula, key }) => formula !== undefined && !asked.has(key))
    .toSorted((one, other) => (one.sheet.name < other.sheet.name ? -1 : one.sheet.name > other.sheet.name ? 1 : one.area.left - other.area.left || one.area.top - other.area.top))
  const runs: Node[][] = []
  for (const node of computed) {
    const run = runs.at(-1)
    const [first, last] = [run?.[0], run?.at(-1)]
    const goesOn = first?.formula !== undefined && last !== undefined && last.sheet === node.sheet && last.area.left === node.area.left && last.area.top + 1 === node.area.top
      && shifter(first.formula)(node.area.top - first.area.top, 0) === node.formula
    if (goesOn) run?.push(node)
    else runs.push([node])
  }
  return runs.filter(({ length }) => length >= LEAST_ROWS)
}

function bundlesOf(nodes: ReadonlyMap<string, Node>, runs: readonly (readonly Node[])[]): readonly Bundle[] {
  const bundleOf = new Map<string, string>()
  for (const run of runs) for (const { key } of run) bundleOf.set(key, keyOfRun(run))
  const keyOf = (key: string): string => bundleOf.get(key) ?? key
  const usesOf = (some: readonly Node[], own: string): string[] => [...new Set(some.flatMap(({ uses }) => uses.filter((key) => nodes.has(key)).map(keyOf)))].filter((key) => key !== own)
  return [
    ...runs.map((run) => ({ key: keyOfRun(run), nodes: run, uses: usesOf(run, keyOfRun(run)) })),
    ...[...nodes.values()].filter(({ key }) => !bundleOf.has(key)).map((node) => ({ key: node.key, nodes: [node], uses: usesOf([node], node.key) })),
  ]
}
