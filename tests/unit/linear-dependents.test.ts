import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { makeDependentsLinear } from '../../src/calc/linear-dependents.ts'

const SETTINGS = { licenseKey: 'gpl-v3', useArrayArithmetic: true, maxRows: 100_000 }
const ROWS = 300

/** A table whose rows all use the unit in the header, a name and a total: lists of users far beyond the short ones. */
const table = (): (string | number)[][] => [
  ['psia', 2, '=SUM(A2:A400)'],
  ...Array.from({ length: ROWS }, (_, i) => [i, `=A${i + 2}&" "&A$1`, `=A${i + 2}*B$1+driver+$C$1`]),
]

function build(linear: boolean) {
  const engine = HyperFormula.buildEmpty(SETTINGS)
  engine.addSheet('S')
  if (linear) expect(makeDependentsLinear(engine)).toBe(true)
  engine.addNamedExpression('driver', '=S!$B$1')
  engine.setSheetContent(0, table())
  return engine
}

type Engine = ReturnType<typeof build>
/** The private graph, as the module under test sees it. */
const graphOf = (engine: Engine) => (engine as unknown as { dependencyGraph: { graph: { edgesSparseArray: (number | undefined)[][]; addEdge(from: number, to: number): void; removeEdgeIfExists(from: number, to: number): void } } }).dependencyGraph.graph
const usersOf = (engine: Engine, id: number) => graphOf(engine).edgesSparseArray[id] ?? []
const longestList = (engine: Engine) => graphOf(engine).edgesSparseArray.reduce((longest, list, id) => (list.length > usersOf(engine, longest).length ? id : longest), 0)

const EDITS: readonly ((engine: Engine) => unknown)[] = [
  (engine) => engine.setCellContents({ sheet: 0, row: 0, col: 0 }, 'kPa'),
  (engine) => engine.setCellContents({ sheet: 0, row: 0, col: 1 }, 3),
  (engine) => engine.setCellContents({ sheet: 0, row: 5, col: 2 }, 7),
  (engine) => engine.setCellContents({ sheet: 0, row: 5, col: 2 }, '=A6*B$1+driver+$C$1'),
  (engine) => engine.setCellContents({ sheet: 0, row: 0, col: 1 }, null),
  (engine) => engine.setCellContents({ sheet: 0, row: 0, col: 1 }, '=A2+5'),
  (engine) => engine.addRows(0, [10, 2]),
  (engine) => engine.removeRows(0, [20, 5]),
  (engine) => engine.addColumns(0, [1, 1]),
  (engine) => engine.removeColumns(0, [1, 1]),
  (engine) => engine.changeNamedExpression('driver', '=S!$A$3'),
  (engine) => engine.setCellContents({ sheet: 0, row: 2, col: 0 }, 11),
  (engine) => engine.removeNamedExpression('driver'),
  (engine) => engine.addNamedExpression('driver', '=S!$B$1'),
  (engine) => engine.setCellContents({ sheet: 0, row: 0, col: 0 }, [['bar', 4, '=SUM(A2:A500)']]),
]

describe('an engine with the linear lists of users', () => {
  it('has the same values as one without, after each of a row of edits', () => {
    const [plain, linear] = [build(false), build(true)]
    expect(linear.getSheetValues(0)).toEqual(plain.getSheetValues(0))
    for (const [i, edit] of EDITS.entries()) {
      edit(plain)
      edit(linear)
      expect(linear.getSheetValues(0), `edit ${i}`).toEqual(plain.getSheetValues(0))
    }
  })

  it('has the very same lists after building', () => {
    expect(graphOf(build(true)).edgesSparseArray).toEqual(graphOf(build(false)).edgesSparseArray)
  })

  it('adds no user twice', () => {
    const engine = build(true)
    const header = longestList(engine)
    const before = [...usersOf(engine, header)]
    expect(before.length).toBeGreaterThan(200)
    for (const id of before) if (id !== undefined) graphOf(engine).addEdge(header, id)
    expect(usersOf(engine, header)).toEqual(before)
  })

  it('takes a user back that was removed', () => {
    const engine = build(true)
    const header = longestList(engine)
    const user = usersOf(engine, header)[100] ?? 0
    const count = () => usersOf(engine, header).filter((id) => id === user).length
    // A first addition makes the look-up of this list.
    graphOf(engine).addEdge(header, user)
    graphOf(engine).removeEdgeIfExists(header, user)
    expect(count()).toBe(0)
    graphOf(engine).addEdge(header, user)
    graphOf(engine).addEdge(header, user)
    expect(count()).toBe(1)
  })

  it('follows a list that the engine replaced by a copy', () => {
    const engine = build(true)
    const graph = graphOf(engine)
    const header = longestList(engine)
    const [first = 0] = usersOf(engine, header)
    graph.addEdge(header, first)
    graph.edgesSparseArray[header] = usersOf(engine, header).slice(1)
    graph.addEdge(header, first)
    expect(usersOf(engine, header).at(-1)).toBe(first)
  })

  it('refuses what the engine refuses: a node that is not in the graph', () => {
    const graph = graphOf(build(true)) as unknown as { addEdge(from: unknown, to: unknown): void }
    expect(() => graph.addEdge({}, 0)).toThrow()
    expect(() => graph.addEdge(0, {})).toThrow()
  })
})

describe('a shape that is not the known one', () => {
  it.each([
    ['no graph', {}],
    ['no lists', { dependencyGraph: { graph: { addEdge: () => {}, removeEdgeIfExists: () => {} } } }],
    ['no addEdge', { dependencyGraph: { graph: { edgesSparseArray: [], removeEdgeIfExists: () => {} } } }],
    ['no removeEdgeIfExists', { dependencyGraph: { graph: { edgesSparseArray: [], addEdge: () => {} } } }],
    ['lists of another kind', { dependencyGraph: { graph: { edgesSparseArray: new Map(), addEdge: () => {}, removeEdgeIfExists: () => {} } } }],
  ])('%s: false, and nothing changed', (_, engine) => {
    const graph = 'dependencyGraph' in engine ? { ...engine.dependencyGraph.graph } : undefined
    expect(makeDependentsLinear(engine as unknown as HyperFormula)).toBe(false)
    if ('dependencyGraph' in engine) expect(engine.dependencyGraph.graph).toEqual(graph)
  })
})
