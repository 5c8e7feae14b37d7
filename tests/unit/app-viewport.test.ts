import fc from 'fast-check'
import { createRoot } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createAxis } from '../../src/app/grid/axis.ts'
import { itemInSlot } from '../../src/app/grid/slots.ts'
import { createViewport, type Viewport } from '../../src/app/grid/viewport.ts'

describe('an axis', () => {
  const axes = fc.record({ sizes: fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 40 }), usual: fc.integer({ min: 1, max: 60 }), count: fc.integer({ min: 1, max: 80 }) })

  it('finds the item at every position inside it', () => {
    fc.assert(fc.property(axes, fc.nat(), fc.nat(), ({ sizes, usual, count }, which, inside) => {
      const axis = createAxis(sizes, usual, count)
      const index = which % count
      expect(axis.at(axis.start(index) + (inside % axis.size(index)))).toBe(index)
    }))
  })

  it('is as long as its items together', () => {
    fc.assert(fc.property(axes, ({ sizes, usual, count }) => {
      const expected = Array.from({ length: count }, (_, index) => sizes[index] ?? usual).reduce((sum, size) => sum + size, 0)
      expect(createAxis(sizes, usual, count).total).toBe(expected)
    }))
  })

  it('gives the first and last item for positions beyond its ends', () => {
    const axis = createAxis([10, 20], 5, 4)
    expect([axis.at(-3), axis.at(9999)]).toEqual([0, 3])
  })
})

describe('slots', () => {
  it('show each item of a span once, and all but one of them the same after a step', () => {
    fc.assert(fc.property(fc.nat(1000), fc.integer({ min: 1, max: 40 }), fc.nat(10), (first, count, spare) => {
      const pool = count + spare
      const shown = (from: number) => Array.from({ length: pool }, (_, slot) => itemInSlot(slot, pool, { first: from, last: from + count - 1 }))
      const before = shown(first)
      expect(before.filter((item) => item !== undefined).toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, index) => first + index))
      const changed = shown(first + 1).filter((item, slot) => item !== undefined && item !== before[slot])
      expect(changed).toEqual([first + count])
    }))
  })
})

describe('the viewport', () => {
  function view(use: (viewport: Viewport) => void): void {
    createRoot((dispose) => {
      const viewport = createViewport({
        rowAxis: () => createAxis([], 20, 1000), columnAxis: () => createAxis([], 100, 50), frozen: () => [2, 1], margin: { left: 40, top: 20 },
      })
      viewport.setSize(540, 220)
      use(viewport)
      dispose()
    })
  }

  it('shows the rows below the frozen ones, with two to spare', () => {
    view((viewport) => {
      expect(viewport.rows()).toEqual({ first: 2, last: 12 })
      viewport.setScroll(0, 200)
      expect(viewport.rows()).toEqual({ first: 10, last: 22 })
    })
  })

  it('shows the columns right of the frozen ones', () => {
    view((viewport) => {
      expect(viewport.columns()).toEqual({ first: 1, last: 5 })
      viewport.setScroll(250, 0)
      expect(viewport.columns()).toEqual({ first: 3, last: 7 })
    })
  })

  it('scrolls no further than a cell needs', () => {
    view((viewport) => {
      expect(viewport.reveal(5, 3)).toEqual({ left: 0, top: 0 })
      // Row 30 ends at 620; 200 px are in view below the letters.
      expect(viewport.reveal(30, 0)).toEqual({ left: 0, top: 420 })
      viewport.setScroll(0, 420)
      // Row 5 begins 60 px below the frozen rows.
      expect(viewport.reveal(5, 0).top).toBe(60)
    })
  })

  it('never scrolls for a frozen cell', () => {
    view((viewport) => {
      viewport.setScroll(300, 420)
      expect(viewport.reveal(1, 0)).toEqual({ left: 300, top: 420 })
    })
  })

  it('pages by what is in view less one row', () => {
    // 200 px less 40 frozen are 8 rows.
    view((viewport) => expect(viewport.pageRows()).toBe(7))
  })
})
