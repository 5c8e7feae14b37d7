import type { HyperFormula } from 'hyperformula'

/** The parts of the engine's private dependency graph that are touched here. */
interface DependencyGraph {
  edgesSparseArray: number[][]
  addEdge(from: GraphNode, to: GraphNode): void
  removeEdgeIfExists(from: GraphNode, to: GraphNode): void
}
type GraphNode = number | { readonly idInGraph?: number }

/** Below this many users of a cell a search of their list is as quick as a look-up. */
const SHORT = 64

/**
 * Makes a cell with many users cost as much per user as one with few. The engine (3.5.0) searches the whole list of a cell's users for
 * each new one, so that a unit in a table's header makes a table of N rows cost N²: 50 000 rows took 10 s instead of 1 s.
 * The one private thing of a library that is touched; where its shape is another one, nothing is changed and false is returned.
 */
export function makeDependentsLinear(engine: HyperFormula): boolean {
  const graph = (engine as unknown as { dependencyGraph?: { graph?: DependencyGraph } }).dependencyGraph?.graph
  if (graph === undefined || !Array.isArray(graph.edgesSparseArray)) return false
  if (typeof graph.addEdge !== 'function' || typeof graph.removeEdgeIfExists !== 'function') return false

  // By the list itself: the engine at times replaces a list by a filtered copy, which then counts as new.
  const known = new WeakMap<number[], { readonly users: Set<number>; length: number }>()
  const addEdge = graph.addEdge.bind(graph)
  const removeEdgeIfExists = graph.removeEdgeIfExists.bind(graph)

  graph.addEdge = (from, to) => {
    const toId = idOf(to)
    const list = listOf(graph, from)
    if (list === undefined || toId === undefined || list.length < SHORT) return addEdge(from, to)
    let entry = known.get(list)
    if (entry === undefined || entry.length !== list.length) {
      entry = { users: new Set(list.filter((id) => id !== undefined)), length: list.length }
      known.set(list, entry)
    }
    if (entry.users.has(toId)) return
    list.push(toId)
    entry.users.add(toId)
    entry.length++
  }
  graph.removeEdgeIfExists = (from, to) => {
    removeEdgeIfExists(from, to)
    const toId = idOf(to)
    const list = listOf(graph, from)
    if (list !== undefined && toId !== undefined) known.get(list)?.users.delete(toId)
  }
  return true
}

const idOf = (node: GraphNode): number | undefined => (typeof node === 'number' ? node : node.idInGraph)

const listOf = (graph: DependencyGraph, node: GraphNode): number[] | undefined => {
  const id = idOf(node)
  return id === undefined ? undefined : graph.edgesSparseArray[id]
}
