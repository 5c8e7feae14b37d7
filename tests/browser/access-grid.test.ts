import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, openBlank, useBrowser } from './app.ts'

useBrowser()

/** What the accessibility tree says of the cell that the grid points at. */
async function active(page: Page): Promise<{ readonly name: string | null; readonly description: string | null }> {
  const id = await page.getByRole('grid').getAttribute('aria-activedescendant')
  const cell = page.locator(`#${id}`)
  return { name: await cell.getAttribute('aria-label'), description: await cell.getAttribute('aria-description') }
}

const address = (page: Page) => page.getByRole('textbox', { name: 'Address' }).inputValue()
const widthOf = async (page: Page, at: string) => (await cellAt(page, at).boundingBox())?.width ?? 0

describe('what a reader hears of the grid', () => {
  it('the value with its unit and its address, then the role, the label and what the marks stand for', async () => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C6').click()
    expect(await active(page)).toEqual({ name: '84 TR, C6', description: 'input, Refrigeration load on the drum' })
    await expect(page.getByRole('gridcell', { name: '84 TR, C6' }).getAttribute('aria-selected')).resolves.toBe('true')
    await page.keyboard.press('ArrowLeft')
    expect(await active(page)).toEqual({ name: 'Refrigeration load on the drum, B6', description: 'label' })
    await cellAt(page, 'C16').click()
    const { name, description } = await active(page)
    expect(name).toMatch(/^\d+ in, C16$/)
    expect(description).toMatch(/^result, ./)
    await cellAt(page, 'B4').click()
    expect(await active(page)).toEqual({ name: 'empty, B4', description: '' })
    await enter(page, 'C7', '=1/0')
    await cellAt(page, 'C7').click()
    expect((await active(page)).name).toMatch(/^#DIV\/0!.*, C7$/)
    expect((await active(page)).description).toMatch(/^input, Margin on the load; ./)
    expect(trouble).toEqual([])
  })

  it('headers of rows and columns, their places, and what is selected beside the active cell', async () => {
    const { page, trouble } = await openApp()
    const grid = page.getByRole('grid')
    await cellAt(page, 'C6').click()
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Shift+ArrowRight')
    await page.locator('[aria-live]').filter({ hasText: 'C6:D7 selected' }).waitFor({ state: 'attached' })
    expect(await grid.locator('[aria-selected=true]').evaluateAll((cells) => cells.map((cell) => cell.id).toSorted())).toEqual(['cell-5-2', 'cell-5-3', 'cell-6-2', 'cell-6-3'])
    const tree = await grid.ariaSnapshot()
    for (const header of ['columnheader "C"', 'rowheader "6"', 'columnheader "Row"']) expect(tree).toContain(header)
    expect(await page.getByRole('rowheader', { name: '6', exact: true }).evaluate((header) => [header.getAttribute('aria-colindex'), header.closest('[role=row]')?.getAttribute('aria-rowindex')])).toEqual(['1', '7'])
    expect(await page.getByRole('columnheader', { name: 'C', exact: true }).getAttribute('aria-colindex')).toBe('4')
    // Every visible row has as many cells as the header row, in the same order of columns.
    const orders = await grid.locator('[role=row]:not([hidden])').evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll('[aria-colindex]:not([hidden])')].map((cell) => cell.getAttribute('aria-colindex')).join()))
    expect(new Set(orders).size).toBe(1)
    expect(trouble).toEqual([])
  })

  it('the active cell is in the page wherever one goes or scrolls to', async () => {
    const { page, trouble } = await openApp()
    const grid = page.getByRole('grid')
    const isThere = () => grid.evaluate((element) => document.getElementById(element.getAttribute('aria-activedescendant') ?? '')?.getAttribute('role'))
    await cellAt(page, 'C6').click()
    for (const key of ['Control+End', 'Control+Home', 'PageDown', 'PageDown', 'End', 'PageUp', 'Home', 'Control+ArrowDown', 'Control+ArrowRight', 'Control+Space', 'Shift+Space', 'Control+a']) {
      await page.keyboard.press(key)
      expect([key, await isThere()]).toEqual([key, 'gridcell'])
    }
    await page.keyboard.press('Control+Home')
    await cellAt(page, 'C6').click()
    for (const [left, top] of [[0, 5000], [5000, 0], [5000, 5000], [0, 0]] as const) {
      await grid.evaluate((element, place) => element.scrollTo(...place), [left, top] as const)
      // As the next frame has drawn it.
      await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))))
      expect([left, top, await isThere(), (await active(page)).name]).toEqual([left, top, 'gridcell', '84 TR, C6'])
      expect(await page.locator('#cell-5-2').count()).toBe(1)
    }
    expect(trouble).toEqual([])
  })

  it('what is typed, where, and what is wrong with it', async () => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C7').click()
    await page.keyboard.type('=C6+*2')
    const field = page.getByRole('textbox', { name: 'Content of C7' })
    expect(await field.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await field.getAttribute('aria-invalid')).toBe('true')
    expect(await field.evaluate((element) => document.getElementById(element.getAttribute('aria-describedby') ?? '')?.textContent)).toContain('a value is missing between + and *')
    await page.keyboard.press('Escape')
    expect(await page.getByRole('grid').evaluate((element) => element === document.activeElement)).toBe(true)
    expect(trouble).toEqual([])
  })
})

describe('the width of columns by keyboard', () => {
  it('is made more, less, and as much as is needed; it is said, and one undo takes it back', async () => {
    const { page, trouble } = await openApp()
    await openBlank(page)
    await enter(page, 'B2', 'a text that is much longer than the column is wide')
    await cellAt(page, 'B2').click()
    const before = await widthOf(page, 'B2')
    await page.keyboard.press('Alt+.')
    await page.keyboard.press('Alt+.')
    await page.getByRole('status').filter({ hasText: `Column B: ${before + 16} px wide` }).waitFor()
    expect(await widthOf(page, 'B2')).toBe(before + 16)
    await page.keyboard.press('Alt+,')
    expect(await widthOf(page, 'B2')).toBe(before + 8)
    await page.keyboard.press('Alt+ArrowUp')
    expect(await widthOf(page, 'B2')).toBeGreaterThan(before * 2)
    await page.keyboard.press('Control+z')
    expect(await widthOf(page, 'B2')).toBe(before + 8)

    await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('Alt+.')
    expect([await widthOf(page, 'B2'), await widthOf(page, 'C2'), await widthOf(page, 'D2')]).toEqual([before + 16, before + 8, before])
    await page.keyboard.press('Control+z')
    expect([await widthOf(page, 'B2'), await widthOf(page, 'C2')]).toEqual([before + 8, before])
    expect(await address(page)).toBe('B2:C2')
    expect(trouble).toEqual([])
  })

  it('never gets too small to find the column again', async () => {
    const { page } = await openApp()
    await openBlank(page)
    await cellAt(page, 'B2').click()
    for (let press = 0; press < 20; press++) await page.keyboard.press('Alt+,')
    // Own choice: the least width in layout.ts.
    expect(await widthOf(page, 'B2')).toBe(24)
  })
})
