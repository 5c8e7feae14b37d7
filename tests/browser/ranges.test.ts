import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, openBlank, settled, shown, useBrowser, type Opened } from './app.ts'

useBrowser()

/** A blank sheet with A1:C3 = 1 to 9, row by row. */
async function openNine(): Promise<Opened> {
  const app = await openApp()
  await openBlank(app.page)
  await cellAt(app.page, 'A1').click()
  await paste(app.page, '1\t2\t3\n4\t5\t6\n7\t8\t9')
  await shown(app.page, 'C3', /9/)
  await cellAt(app.page, 'A1').click()
  return app
}

const paste = (page: Page, text: string): Promise<void> =>
  page.getByRole('grid').evaluate((grid, pasted) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', pasted)
    grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, text)

const copied = (page: Page, kind: 'copy' | 'cut'): Promise<string> =>
  page.getByRole('grid').evaluate((grid, type) => {
    const clipboardData = new DataTransfer()
    grid.dispatchEvent(new ClipboardEvent(type, { clipboardData, bubbles: true, cancelable: true }))
    return clipboardData.getData('text/plain')
  }, kind)

const address = (page: Page): Promise<string> => page.getByRole('textbox', { name: 'Address' }).inputValue()
const content = (page: Page): Promise<string> => page.getByRole('textbox', { name: 'Content' }).inputValue()
const notice = (page: Page): Locator => page.locator('.status-line .notice')
const rowNumber = (page: Page, row: number): Locator => page.locator(`.row-number[data-row="${row - 1}"]`)
const texts = (page: Page, addresses: readonly string[]): Promise<string[]> => Promise.all(addresses.map(async (at) => ((await cellAt(page, at).textContent()) ?? '').trim()))

async function drag(page: Page, from: string, to: string): Promise<void> {
  const [start, end] = [await cellAt(page, from).boundingBox(), await cellAt(page, to).boundingBox()]
  if (!start || !end) throw new Error(`${from} or ${to} is not in view`)
  await page.mouse.move(start.x + 20, start.y + 10)
  await page.mouse.down()
  await page.mouse.move(end.x + 20, end.y + 10, { steps: 3 })
  await page.mouse.up()
}

async function dragBeside(page: Page, from: string, to: string): Promise<void> {
  await page.keyboard.down('Control')
  await drag(page, from, to)
  await page.keyboard.up('Control')
}

async function done({ trouble, context }: Opened): Promise<void> {
  expect(trouble).toEqual([])
  await context.close()
}

describe('several ranges by mouse', () => {
  it('are selected by Ctrl, added up once, emptied in one step, and left by a plain click', async () => {
    const app = await openNine()
    const { page } = app
    await drag(page, 'A1', 'A3')
    await dragBeside(page, 'C1', 'C2')
    await cellAt(page, 'A2').click({ modifiers: ['Control'] })
    expect(await address(page)).toBe('A1:A3, C1:C2, A2')
    expect(await page.locator('[role=gridcell][aria-selected=true]').count()).toBe(5)
    // 1, 4, 7, 3 and 6: A2 is selected twice and counted once.
    await expect.poll(() => page.getByRole('region', { name: 'The selected range' }).locator('dd').allTextContents()).toEqual(['5', '21', '1', '7'])
    await page.keyboard.press('Delete')
    expect(await texts(page, ['A1', 'A2', 'A3', 'B1', 'C1', 'C2', 'C3'])).toEqual(['', '', '', '2', '', '', '9'])
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1', 'C2'])).toEqual(['1', '6'])
    await cellAt(page, 'B2').click()
    expect(await page.locator('[role=gridcell][aria-selected=true]').count()).toBe(1)
    await done(app)
  })

  it('copy as one block where they line up, and say so where they do not', async () => {
    const app = await openNine()
    const { page } = app
    await drag(page, 'C1', 'C2')
    await dragBeside(page, 'A1', 'A2')
    expect(await copied(page, 'copy')).toBe('1\t3\r\n4\t6')
    await cellAt(page, 'E5').click()
    await paste(page, '1\t3\r\n4\t6')
    expect(await texts(page, ['E5', 'F5', 'E6', 'F6'])).toEqual(['1', '3', '4', '6'])
    await drag(page, 'A1', 'A2')
    await dragBeside(page, 'C2', 'C3')
    expect(await copied(page, 'copy')).toBe('')
    await notice(page).getByText('A1:A2, C2:C3 do not line up as one block').waitFor()
    await done(app)
  })

  it('of whole rows are deleted in one step, references following; moving says why it cannot', async () => {
    const app = await openNine()
    const { page } = app
    await enter(page, 'E5', '=C2+C5')
    await rowNumber(page, 1).click()
    await rowNumber(page, 3).click({ modifiers: ['Control'] })
    await page.keyboard.press('Alt+PageDown')
    await notice(page).getByText('select rows that lie next to each other').waitFor()
    await page.keyboard.press('Alt+Delete')
    await settled(page)
    expect(await texts(page, ['A1', 'B1', 'C1', 'A2'])).toEqual(['4', '5', '6', ''])
    await cellAt(page, 'E3').click()
    expect(await content(page)).toBe('=C1+C3')
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1', 'A2', 'A3'])).toEqual(['1', '4', '7'])
    await done(app)
  })

  it('of whole columns get new ones beside each', async () => {
    const app = await openNine()
    const { page } = app
    await page.getByRole('columnheader', { name: 'A', exact: true }).click()
    await page.getByRole('columnheader', { name: 'C', exact: true }).click({ modifiers: ['Control'] })
    await page.keyboard.press('Alt+Shift+Insert')
    await settled(page)
    expect(await texts(page, ['A1', 'B1', 'C1', 'D1', 'E1'])).toEqual(['', '1', '2', '', '3'])
    expect(await address(page)).toBe('A:A, D:D')
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1', 'B1', 'C1'])).toEqual(['1', '2', '3'])
    await done(app)
  })
})

describe('several ranges by keyboard', () => {
  it('are kept one by one, take a role, a format and what is typed, and are left by Escape', async () => {
    const app = await openNine()
    const { page } = app
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Alt+Shift+Space')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowDown')
    expect(await address(page)).toBe('A1:A2, C1:C2')
    await page.keyboard.press('Control+.')
    await page.getByRole('combobox', { name: 'Role' }).selectOption('result')
    expect(await page.locator('.cell.role-result').count()).toBe(4)
    // C1 is the active cell: each of the others refers as far from where it stands.
    await page.keyboard.type('=B1*10')
    await page.keyboard.press('Alt+Shift+Enter')
    await settled(page)
    await shown(page, 'C2', /50/)
    expect(await texts(page, ['C1', 'C2', 'B1'])).toEqual(['20', '50', '2'])
    await cellAt(page, 'A2').filter({ hasText: '#REF!' }).waitFor()
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1', 'A2', 'C1', 'C2'])).toEqual(['1', '4', '3', '6'])
    await page.getByRole('textbox', { name: 'Address' }).fill('B1, B3:C3')
    await page.keyboard.press('Enter')
    expect(await page.locator('[role=gridcell][aria-selected=true]').count()).toBe(3)
    await page.keyboard.press('Escape')
    expect(await address(page)).toBe('B3:C3')
    await done(app)
  })
})

describe('cutting', () => {
  it('marks the cells, which move once they are pasted, references following, in one step', async () => {
    const app = await openNine()
    const { page } = app
    await enter(page, 'E1', '=A1+A2')
    await drag(page, 'A1', 'A2')
    expect(await copied(page, 'cut')).toBe('1\r\n4')
    expect(await page.locator('.cell.cut').count()).toBe(2)
    expect(await texts(page, ['A1', 'A2'])).toEqual(['1', '4'])
    await cellAt(page, 'B5').click()
    await paste(page, '1\r\n4')
    await settled(page)
    expect(await texts(page, ['A1', 'A2', 'B5', 'B6'])).toEqual(['', '', '1', '4'])
    expect(await page.locator('.cell.cut').count()).toBe(0)
    await cellAt(page, 'E1').click()
    expect(await content(page)).toBe('=B5+B6')
    await page.keyboard.press('Control+z')
    await settled(page)
    expect(await texts(page, ['A1', 'A2', 'B5', 'B6'])).toEqual(['1', '4', '', ''])
    await cellAt(page, 'E1').click()
    expect(await content(page)).toBe('=A1+A2')
    await done(app)
  })

  it('ends by Escape, and as soon as a cut cell changes: what is pasted then is a copy', async () => {
    const app = await openNine()
    const { page } = app
    await cellAt(page, 'A1').click()
    await copied(page, 'cut')
    await page.keyboard.press('Escape')
    expect(await page.locator('.cell.cut').count()).toBe(0)
    await cellAt(page, 'E1').click()
    await paste(page, '1')
    expect(await texts(page, ['A1', 'E1'])).toEqual(['1', '1'])
    await cellAt(page, 'B1').click()
    await copied(page, 'cut')
    await enter(page, 'B1', '20')
    expect(await page.locator('.cell.cut').count()).toBe(0)
    await done(app)
  })
})

describe('a long paste', () => {
  const LINES = Array.from({ length: 20_000 }, (_, row) => `V-${row + 1}\t${row + 1}\tft3\t=B${row + 1}*2\ttext\t-40`).join('\r\n')

  it('comes before what is typed while it is under way, each a step of its own', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await cellAt(page, 'A1').click()
    // Both in one task: the paste has only begun when the change comes.
    await page.getByRole('grid').evaluate((grid, text) => {
      const clipboardData = new DataTransfer()
      clipboardData.setData('text/plain', text)
      grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
      if (document.querySelector('#cell-0-0')?.textContent !== '') throw new Error('the paste was done at once: it shows nothing here')
      grid.dispatchEvent(new KeyboardEvent('keydown', { key: 'Delete', bubbles: true, cancelable: true }))
    }, LINES)
    await settled(page)
    await page.keyboard.press('Control+Home')
    expect(await texts(page, ['A1', 'B1', 'A2'])).toEqual(['', '1', 'V-2'])
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1', 'A2'])).toEqual(['V-1', 'V-2'])
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+Home')
    expect(await texts(page, ['A1', 'A2'])).toEqual(['', ''])
    await done(app)
  })

  it('is stopped by Escape, and nothing of it is left', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await enter(page, 'A1', 'before')
    await cellAt(page, 'A1').click()
    await page.getByRole('grid').evaluate((grid, text) => {
      const clipboardData = new DataTransfer()
      clipboardData.setData('text/plain', text)
      grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
      grid.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }))
    }, LINES)
    await notice(page).getByText('stopped: nothing has changed').waitFor()
    await page.waitForTimeout(300)
    expect(await texts(page, ['A1', 'A2'])).toEqual(['before', ''])
    await page.keyboard.press('Control+z')
    expect(await texts(page, ['A1'])).toEqual([''])
    await done(app)
  })
})
