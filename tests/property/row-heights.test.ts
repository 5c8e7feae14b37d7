import fc from 'fast-check'
import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createGridLayout } from '../../src/app/grid/layout.ts'
import { createRowHeights, ROW_HEIGHT, type RowHeights } from '../../src/app/grid/row-heights.ts'
import { keepRowsMeasured } from '../../src/app/grid/row-measuring.ts'
import { averageTextWidth } from '../../src/app/grid/text-width.ts'
import { createViewport } from '../../src/app/grid/viewport.ts'
import type { Cell, Role, Row, Sheet } from '../../src/workbook/document.ts'

const cell = (content: Cell['content'], role: Role): Cell => ({ content, role })
const WORDS = 'a label that goes on and on until it is far wider than its column'.split(' ')

const row: fc.Arbitrary<Row> = fc.oneof(
  fc.constant(undefined),
  fc.record({ words: fc.integer({ min: 1, max: WORDS.length }), role: fc.constantFrom<Role>('label', 'heading', 'title', 'note'), number: fc.integer() })
    .map(({ words, role, number }) => [cell(WORDS.slice(0, words).join(' '), role), cell(number, 'input')]),
)
/** Some rows many times over, far more than are worked out at once. */
const rows = fc.record({ some: fc.array(row, { minLength: 1, maxLength: 30 }), times: fc.integer({ min: 1, max: 40 }) })
  .map(({ some, times }) => Array.from({ length: times }, () => some.map((one) => one?.slice())).flat())
const sheetOf = (given: Sheet['rows'], columns: readonly number[] = [100]): Sheet => ({ name: 'Sheet', columns, frozen: [0, 0], rows: given })

/** A row at a time, each worked out at once. */
const oneByOne = (sheet: Sheet): number[] => sheet.rows.map((one) => createRowHeights(averageTextWidth)({ ...sheet, rows: [one] }).sizes[0] ?? 0)

function whole(heights: RowHeights): number[] {
  while (heights.left > 0) heights.measureNext()
  return Array.from(heights.sizes)
}

const changes = fc.array(fc.oneof(
  fc.record({ does: fc.constant('insert' as const), at: fc.nat(), row }),
  fc.record({ does: fc.constant('remove' as const), at: fc.nat(), row }),
  fc.record({ does: fc.constant('write' as const), at: fc.nat(), row }),
  fc.record({ does: fc.constant('widen' as const), at: fc.integer({ min: 60, max: 400 }), row }),
  fc.record({ does: fc.constant('rewriteAll' as const), at: fc.nat(), row }),
  fc.record({ does: fc.constant('back' as const), at: fc.nat(), row }),
), { maxLength: 8 })

function changed(sheet: Sheet, { does, at, row: other }: { does: string; at: number; row: Row }): Sheet {
  const index = at % (sheet.rows.length + 1)
  if (does === 'insert') return { ...sheet, rows: sheet.rows.toSpliced(index, 0, other) }
  if (does === 'remove') return { ...sheet, rows: sheet.rows.toSpliced(index, 1) }
  if (does === 'write') return { ...sheet, rows: sheet.rows.toSpliced(index, 1, other) }
  if (does === 'widen') return { ...sheet, columns: [at] }
  return { ...sheet, rows: sheet.rows.map((one) => one?.map((each) => ({ ...each, content: `${String(each?.content)} more`, role: each?.role ?? 'text' }))) }
}

describe('row heights worked out bit by bit', () => {
  it('come to the same as each row alone, whatever changes before they are whole, and whatever is undone', () => {
    fc.assert(fc.property(rows, changes, fc.nat(1200), fc.nat(3), (given, list, from, some) => {
      const heightsOf = createRowHeights(averageTextWidth)
      const history = [sheetOf(given)]
      let heights = heightsOf(sheetOf(given))
      for (const change of list) {
        const now = history.at(-1) ?? sheetOf([])
        heights.measure(from, from + 20)
        for (let times = 0; times < some; times++) heights.measureNext()
        const next = change.does === 'back' ? history[change.at % history.length] ?? now : changed(now, change)
        history.push(next)
        heights = heightsOf(next)
      }
      const last = history.at(-1) ?? sheetOf([])
      expect(whole(heights)).toEqual(oneByOne(last))
      for (const former of history) expect(whole(heightsOf(former))).toEqual(oneByOne(former))
    }), { numRuns: 60 })
  })

  it('have the rows in view right from the first moment, and keep them where they are as the others follow', async () => {
    await fc.assert(fc.asyncProperty(rows.filter((given) => given.length > 300), fc.nat(), fc.array(fc.nat(), { maxLength: 3 }), async (given, at, goals) => {
      const screen = openScreen(sheetOf(given))
      const exact = oneByOne(sheetOf(given))
      screen.setTop((at % given.length) * ROW_HEIGHT)
      for (const goal of goals) screen.setGoal(goal % given.length)
      const { first, last } = screen.viewport.rows()
      for (let index = first; index <= Math.min(last, given.length - 1); index++) expect(screen.layout.rowAxis().size(index)).toBe(exact[index])
      const goal = goals.at(-1)
      if (goal !== undefined) expect(screen.layout.rowAxis().size(goal % given.length)).toBe(exact[goal % given.length])

      const inView = screen.firstInView()
      while (screen.layout.rowHeights().left > 0) await new Promise((resolve) => setTimeout(resolve, 0))
      await new Promise((resolve) => setTimeout(resolve, 0))
      expect(screen.firstInView()).toEqual(inView)
      expect(screen.scrolled()).toBe(screen.viewport.scroll().top)
      expect(given.map((_, index) => screen.layout.rowAxis().size(index))).toEqual(exact)
      screen.close()
    }), { numRuns: 25 })
  })
})

/** Layout, viewport and measuring as in the grid, on a screen of 600 px. */
function openScreen(sheet: Sheet) {
  return createRoot((close) => {
    const [goal, setGoal] = createSignal<number | undefined>(undefined)
    const layout = createGridLayout({ sheet: () => sheet, size: () => ({ rows: sheet.rows.length + 40, columns: 10 }), textWidth: averageTextWidth, spacing: () => ({ letters: 0, words: 0, linePx: 18 }) })
    const viewport = createViewport({ ...layout, margin: { left: 46, top: 24 } })
    let scrolled = 0
    keepRowsMeasured({ layout, viewport, sheetName: () => sheet.name, goal, scrollBy: (px) => (scrolled += px) })
    viewport.setSize(800, 600)
    return {
      layout, viewport, setGoal, close,
      scrolled: () => scrolled,
      setTop(top: number) {
        scrolled = top
        viewport.setScroll(0, top)
      },
      firstInView() {
        const { top } = viewport.scroll()
        const row = layout.rowAxis().at(top)
        return { row, above: top - layout.rowAxis().start(row) }
      },
    }
  })
}
