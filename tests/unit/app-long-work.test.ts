import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createLongWork } from '../../src/app/state/long-work.ts'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** Longer than a moment. */
const wait = () => vi.advanceTimersByTime(1000)

describe('long work', () => {
  it('is not shown while it is short', () => {
    const work = createLongWork()
    const reading = work.begin('Reading')
    expect(work.shown()).toBeUndefined()
    reading.end()
    wait()
    expect(work.shown()).toBeUndefined()
  })

  it('shows its words and how far it has come, in whole hundredths, until it ends', () => {
    const work = createLongWork()
    const reading = work.begin('Reading')
    wait()
    expect(work.shown()).toEqual({ words: 'Reading', share: undefined, canStop: false })
    reading.report(0.4567)
    expect(work.shown()).toMatchObject({ words: 'Reading', share: 0.45 })
    const before = work.shown()
    reading.report(0.4599)
    expect(work.shown()).toBe(before)
    reading.report(7, 'Building')
    expect(work.shown()).toMatchObject({ words: 'Building', share: 1 })
    reading.report(undefined)
    expect(work.shown()?.share).toBeUndefined()
    reading.end()
    expect(work.shown()).toBeUndefined()
  })

  it('counts from its beginning, not from when it is shown', () => {
    const work = createLongWork()
    const reading = work.begin('Reading')
    reading.report(0.3)
    wait()
    expect(work.shown()?.share).toBe(0.3)
  })

  it('of several shows the one begun last, and the one before once that has ended', () => {
    const work = createLongWork()
    const reading = work.begin('Reading')
    wait()
    const exporting = work.begin('Exporting')
    wait()
    expect(work.shown()?.words).toBe('Exporting')
    exporting.end()
    expect(work.shown()?.words).toBe('Reading')
    reading.end()
  })

  it('is stopped by its own way of stopping, and only what is shown is', () => {
    const work = createLongWork()
    const stop = vi.fn()
    work.begin('Reading', stop)
    expect(work.stop()).toBe(false)
    wait()
    expect(work.shown()?.canStop).toBe(true)
    expect(work.stop()).toBe(true)
    expect(stop).toHaveBeenCalledOnce()
  })

  it('that cannot be stopped says so', () => {
    const work = createLongWork()
    work.begin('Packing')
    wait()
    expect(work.stop()).toBe(false)
  })
})
