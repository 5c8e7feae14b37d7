import { describe, expect, it } from 'vitest'
import { createCalculation } from '../../src/app/calculation/calculation.ts'
import { CalculationEnded, type CalculationThread } from '../../src/app/calculation/client.ts'
import { loadGraph } from '../../src/calc/loading.ts'
import type { CalculationRequest, CalculationResponse, LoadRequest } from '../../src/calc/messages.ts'
import type { Graph } from '../../src/calc/graph.ts'
import { emptyWorkbook, type Workbook } from '../../src/workbook/document.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'

/** Threads of which each reads what it is to load as the real one does, and answers all else with nothing. */
function threads() {
  const started: { readonly sent: (CalculationRequest | LoadRequest)[]; ended: boolean; graph?: Graph }[] = []
  const start = (): CalculationThread => {
    const mine: (typeof started)[number] = { sent: [], ended: false }
    started.push(mine)
    let hear: (event: { readonly data: CalculationResponse }) => void = () => undefined
    const tell = (data: CalculationResponse): void => {
      if (!mine.ended) hear({ data: structuredClone(data) })
    }
    return {
      postMessage(request) {
        mine.sent.push(request)
        if (request.method !== 'load') return void setTimeout(() => tell({ id: request.id, result: undefined }))
        void loadGraph(request.source, (news) => tell({ id: request.id, news })).then((loaded) => {
          if ('graph' in loaded) mine.graph = loaded.graph
          tell({ id: request.id, loaded: 'problems' in loaded ? loaded.problems : [] })
        })
      },
      addEventListener(type: 'message' | 'error', listener: unknown) {
        if (type === 'message') hear = listener as typeof hear
      },
      terminate() {
        mine.ended = true
      },
    }
  }
  return { start, started }
}

const plant = (): Workbook => ({
  ...emptyWorkbook('Plant'),
  sheets: [
    { name: 'Many', columns: [80], frozen: [1, 0], rows: Array.from({ length: 2500 }, (_, row) => [{ content: row, role: 'input' as const }, { content: `=A${row + 1}*2`, role: 'result' as const, decimals: 1 }]) },
    { name: 'Few', columns: [], frozen: [0, 0], rows: [undefined, [undefined, { content: 'text', role: 'text' }]] },
  ],
})

const silent = () => undefined

describe('the calculation of the open workbook', () => {
  it('reads a workbook on a thread of its own, and takes it over with its graph once it is opened', async () => {
    const { start, started } = threads()
    const calculation = createCalculation(start)
    await calculation.open(emptyWorkbook())
    const told: unknown[] = []
    const loaded = await calculation.load(new Blob([writeWorkbook(plant())]), (step, share) => told.push([step, share])).result
    if ('problems' in loaded) throw new Error('the file is sound')
    expect(loaded.workbook).toEqual(plant())
    expect(told.at(-1)).toEqual(['computing', undefined])
    expect(started.map(({ ended }) => ended)).toEqual([false, false])

    await calculation.open(loaded.workbook)
    await calculation.apply([])
    expect(started.map(({ ended }) => ended)).toEqual([true, false])
    expect(started[1]?.sent.map(({ method }) => method)).toEqual(['load', 'apply'])
    expect(started[1]?.graph?.value('Many', 2499, 1)).toBe(4998)
  })

  it('gives the problems of a file as the reader does, and ends its thread', async () => {
    const { start, started } = threads()
    const loaded = await createCalculation(start).load('{"lowside": 1,', silent).result
    expect(loaded).toMatchObject({ problems: [{ message: expect.stringContaining('line 1') }] })
    expect(started.map(({ ended }) => ended)).toEqual([false, true])
  })

  it('a stop of reading leaves the graph of the open workbook at work', async () => {
    const { start, started } = threads()
    const calculation = createCalculation(start)
    const loading = calculation.load(writeWorkbook(plant()), silent)
    loading.stop()
    await expect(loading.result).rejects.toThrow(CalculationEnded)
    expect(started.map(({ ended }) => ended)).toEqual([false, true])
    await calculation.apply([])
  })

  it('a second reading stops the first', async () => {
    const { start } = threads()
    const calculation = createCalculation(start)
    const first = calculation.load(writeWorkbook(plant()), silent)
    const second = calculation.load(writeWorkbook(emptyWorkbook('Second')), silent)
    await expect(first.result).rejects.toThrow(CalculationEnded)
    expect(await second.result).toMatchObject({ workbook: { title: 'Second' } })
  })

  it('a stop of what it is at work on ends its calls; the next open starts afresh', async () => {
    const { start, started } = threads()
    const calculation = createCalculation(start)
    const call = calculation.states()
    calculation.stop()
    await expect(call).rejects.toThrow(CalculationEnded)
    await expect(calculation.apply([])).rejects.toThrow(CalculationEnded)
    await calculation.open(emptyWorkbook())
    expect(started.map(({ ended }) => ended)).toEqual([true, false])
    expect(started[1]?.sent.map(({ method }) => method)).toEqual(['open'])
  })

  it('another workbook opened while the one before is still at work gets a thread of its own', async () => {
    const { start, started } = threads()
    const calculation = createCalculation(start)
    const first = calculation.open(plant())
    const second = calculation.open(emptyWorkbook())
    await expect(first).rejects.toThrow(CalculationEnded)
    await second
    expect(started.map(({ ended }) => ended)).toEqual([true, false])
    expect(started[1]?.sent.map(({ method }) => method)).toEqual(['open'])
  })

  it('a large workbook goes over in parts, all of it before what is asked next', async () => {
    const { start, started } = threads()
    const calculation = createCalculation(start)
    const opening = calculation.open(plant())
    await Promise.all([opening, calculation.states()])
    const methods = started[0]?.sent.map(({ method }) => method) ?? []
    expect(methods.filter((method) => method === 'prepareRows').length).toBeGreaterThan(1)
    expect(methods.slice(-2)).toEqual(['open', 'states'])
  })
})
