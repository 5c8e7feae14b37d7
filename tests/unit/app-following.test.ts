import { createRoot, createSignal } from 'solid-js'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createFollowing } from '../../src/app/review/following.ts'
import { pageOf, stepFrom, walkedTo } from '../../src/app/review/walking.ts'
import { CalculationEnded } from '../../src/app/calculation/client.ts'
import { WorkStopped } from '../../src/app/state/long-work.ts'
import { emptyWorkbook, type Workbook } from '../../src/workbook/document.ts'

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

/** Work that ends when the test says so. */
function setUp() {
  const [workbook, setWorkbook] = createSignal<Workbook>(emptyWorkbook('A'))
  const [underWay, setUnderWay] = createSignal(false)
  const [stopped, setStopped] = createSignal(false)
  const begun: { readonly of: string; readonly end: () => void; readonly fail: (fault: Error) => void; isStopped: boolean }[] = []
  const session = { document: { workbook }, recalculation: { underWay, stopped } } as unknown as Parameters<typeof createFollowing>[0]
  const { following, dispose } = createRoot((end) => ({
    dispose: end,
    following: createFollowing(session, (of) => {
      let one: (typeof begun)[number] | undefined
      const result = new Promise<void>((resolve, reject) => {
        one = { of: of.title, end: resolve, fail: reject, isStopped: false }
        begun.push(one)
      })
      return { result, stop: () => {
        if (one) one.isStopped = true
        one?.fail(new WorkStopped('stopped'))
      } }
    }),
  }))
  const change = (title: string) => setWorkbook({ ...workbook(), title })
  const titles = () => begun.map(({ of }) => of)
  const last = () => begun.at(-1)
  return { following, dispose, begun, change, titles, last, setUnderWay, setStopped }
}

const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)

describe('work on the whole workbook', () => {
  it('begins once someone looks, and anew once after edits in quick succession', async () => {
    const { following, titles, last, change } = setUp()
    await pass(1000)
    expect(titles()).toEqual([])
    following.setLookedAt(true)
    await pass(0)
    expect(titles()).toEqual(['A'])
    last()?.end()
    await pass(10_000)
    expect(titles()).toEqual(['A'])
    change('B')
    await pass(100)
    change('C')
    await pass(5000)
    expect(titles()).toEqual(['A', 'C'])
  })

  it('waits for the values, and lets what is under way come to its end', async () => {
    const { following, titles, last, change, setUnderWay } = setUp()
    following.setLookedAt(true)
    await pass(0)
    change('B')
    setUnderWay(true)
    await pass(10_000)
    expect([titles(), following.working(), following.busy()]).toEqual([['A'], true, true])
    last()?.end()
    await pass(10_000)
    expect([titles(), following.working()]).toEqual([['A'], false])
    setUnderWay(false)
    await pass(10_000)
    expect(titles()).toEqual(['A', 'B'])
  })

  it('stays stopped through changes until it is asked for again', async () => {
    const { following, titles, change, last } = setUp()
    following.setLookedAt(true)
    await pass(0)
    following.stop()
    await pass(0)
    change('B')
    await pass(10_000)
    expect([titles(), following.stopped(), following.problem()]).toEqual([['A'], true, undefined])
    following.again()
    await pass(0)
    expect([titles(), following.stopped()]).toEqual([['A', 'B'], false])
    last()?.fail(new Error('No such thing'))
    await pass(10_000)
    expect([titles(), following.problem()]).toEqual([['A', 'B'], 'No such thing'])
  })

  it('begins in place of what is under way when it is asked for again', async () => {
    const { following, begun, titles } = setUp()
    following.setLookedAt(true)
    await pass(0)
    following.again()
    await pass(0)
    expect([titles(), begun[0]?.isStopped, following.stopped(), following.working()]).toEqual([['A', 'A'], true, false, true])
    begun[1]?.end()
    await pass(0)
    expect([following.working(), following.stopped()]).toEqual([false, false])
  })

  it('without values waits until there are some again', async () => {
    const { following, last, titles, setStopped } = setUp()
    following.setLookedAt(true)
    await pass(0)
    setStopped(true)
    last()?.fail(new CalculationEnded('The calculation was stopped.'))
    await pass(10_000)
    expect([titles(), following.stopped(), following.problem()]).toEqual([['A'], false, undefined])
    setStopped(false)
    await pass(10_000)
    expect(titles()).toEqual(['A', 'A'])
  })

  it('ends with its owner', async () => {
    const { following, dispose, last } = setUp()
    following.setLookedAt(true)
    await pass(0)
    dispose()
    expect(last()?.isStopped).toBe(true)
  })
})

describe('a list one walks through', () => {
  it('goes round at its ends, and begins at either end', () => {
    expect([stepFrom(-1, 1, 3), stepFrom(-1, -1, 3), stepFrom(2, 1, 3), stepFrom(0, -1, 3), stepFrom(0, 1, 0)]).toEqual([0, 2, 0, 2, undefined])
    expect(['ArrowDown', 'ArrowUp', 'Home', 'End', 'Enter'].map((key) => walkedTo(key, 1, 4))).toEqual([2, 0, 0, 3, undefined])
    expect(walkedTo('Home', -1, 0)).toBeUndefined()
  })

  it('is shown by parts, the last one where there are no more', () => {
    const all = Array.from({ length: 12 }, (_, at) => at)
    expect(pageOf(all, 1, 5)).toEqual({ items: [5, 6, 7, 8, 9], from: 5, count: 12, size: 5 })
    expect(pageOf(all, 9, 5).items).toEqual([10, 11])
    expect(pageOf([], 3, 5)).toEqual({ items: [], from: 0, count: 0, size: 5 })
  })
})
