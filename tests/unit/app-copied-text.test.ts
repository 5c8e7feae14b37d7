import { describe, expect, it } from 'vitest'
import { readText, type ToCopy } from '../../src/app/grid/copied-text.ts'
import { createLongWork, WorkStopped, type LongWork } from '../../src/app/state/long-work.ts'
import type { Recalculation } from '../../src/app/state/recalculation.ts'
import type { AreaValues } from '../../src/calc/values.ts'
import type { Area } from '../../src/workbook/address.ts'
import type { Cell } from '../../src/workbook/document.ts'

const formula: Cell = { content: '=1+1', role: 'result' }
const toCopy = (rows: readonly number[], columns: readonly number[]): ToCopy => ({ sheet: 'Sheet', from: { rows, columns }, cells: rows.map(() => columns.map(() => formula)) })

/** A graph in which each cell comes to its row times 1000 plus its column. */
function graph(before: (area: Area) => void = () => undefined, answers = true) {
  const asked: Area[] = []
  let version = 1
  const read = async (_sheet: string, area: Area): Promise<AreaValues> => {
    asked.push(area)
    before(area)
    const line = (row: number) => Array.from({ length: area.right - area.left + 1 }, (_, column) => row * 1000 + area.left + column)
    return { values: Array.from({ length: area.bottom - area.top + 1 }, (_, row) => line(area.top + row)), checks: new Map() }
  }
  const recalculation = {
    version: () => version,
    ask: async (call: (service: { read: typeof read }) => Promise<unknown>) => (answers ? call({ read }) : undefined),
  } as unknown as Recalculation
  return { asked, recalculation, change: () => (version += 1), work: createLongWork() }
}

describe('the text of copied formulas', () => {
  it('has the value of every cell, wherever rows and columns have gaps, and asks for none between', async () => {
    const rows = [0, 1, 7, ...Array.from({ length: 5000 }, (_, at) => 20 + at)]
    const columns = [0, 1, 4]
    const { asked, ...session } = graph()
    const lines = (await readText(session, toCopy(rows, columns))).trimEnd().split('\n')
    expect(lines.map((line) => line.trimEnd())).toEqual(rows.map((row) => columns.map((column) => row * 1000 + column).join('\t')))
    const cells = asked.reduce((sum, { top, left, bottom, right }) => sum + (bottom - top + 1) * (right - left + 1), 0)
    expect(cells).toBe(rows.length * columns.length)
  })

  it('is none if the workbook changes meanwhile, or if there are no values', async () => {
    const changing = graph(() => changing.change())
    await expect(readText(changing, toCopy([0], [0]))).rejects.toThrow('has changed')
    await expect(readText(graph(undefined, false), toCopy([0], [0]))).rejects.toThrow('cannot be had')
  })

  it('is none after a stop', async () => {
    let stop = (): void => undefined
    const work: LongWork = { ...createLongWork(), begin: (_words, given = () => undefined) => ((stop = given), { report: () => undefined, end: () => undefined }) }
    await expect(readText({ ...graph(() => stop()), work }, toCopy([0, 5], [0]))).rejects.toBeInstanceOf(WorkStopped)
  })
})
