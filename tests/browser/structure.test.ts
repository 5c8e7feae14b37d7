import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, openApp, settled, shown, useBrowser, type Opened } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

/** A new sheet with A1:A4 = 1, 2, 3, 4 and B1 their sum; the grid has the keys. */
async function openSmall(): Promise<Opened> {
  const app = await openApp()
  const { page } = app
  await page.getByRole('button', { name: 'Add a sheet' }).click()
  await cellAt(page, 'A1').click()
  for (const text of ['1', '2', '3', '4']) {
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
  }
  await cellAt(page, 'B1').click()
  await page.keyboard.type('=SUM(A1:A4)')
  await page.keyboard.press('Enter')
  await settled(page)
  expect(await shown(page, 'B1', /^\s*10\s*$/)).toBe('10')
  return app
}

const rowNumber = (page: Page, row: number) => page.locator(`.row-number[data-row="${row - 1}"]`)
const columnLetter = (page: Page, letters: string) => page.getByRole('columnheader', { name: letters, exact: true })
const entryLine = (page: Page) => page.getByRole('region', { name: 'Entry line' }).getByRole('textbox').last()
const selected = (page: Page, address: string) => cellAt(page, address).getAttribute('aria-selected')
const sheetNames = (page: Page) => page.getByRole('navigation', { name: 'Sheets' }).locator('.sheet-name').allTextContents()

async function formulaAt(page: Page, address: string): Promise<string> {
  await cellAt(page, address).click()
  return entryLine(page).inputValue()
}

describe('rows and columns by mouse', () => {
  it('a row comes by the menu of its number, the sum follows, and undo takes it back', async () => {
    const app = await openSmall()
    const { page } = app
    await rowNumber(page, 3).click({ button: 'right' })
    await page.getByRole('menu', { name: 'Selected rows' }).getByRole('menuitem', { name: 'Insert a row above' }).click()
    await settled(page)
    expect(await shown(page, 'A4', /3/)).toBe('3')
    expect(await selected(page, 'A3')).toBe('true')
    expect(await formulaAt(page, 'B1')).toBe('=SUM(A1:A5)')
    expect(await shown(page, 'B1', /^\s*10\s*$/)).toBe('10')
    await page.keyboard.press('Control+z')
    await settled(page)
    expect(await formulaAt(page, 'B1')).toBe('=SUM(A1:A4)')
    await sound(app)
  })

  it('rows chosen by drag, and by Shift and a click, are deleted; a column moves', async () => {
    const app = await openSmall()
    const { page } = app
    await rowNumber(page, 2).hover()
    await page.mouse.down()
    await rowNumber(page, 3).hover()
    await page.mouse.up()
    expect([await selected(page, 'A1'), await selected(page, 'A2'), await selected(page, 'D3'), await selected(page, 'A4')]).toEqual(['false', 'true', 'true', 'false'])
    await rowNumber(page, 2).click()
    await rowNumber(page, 3).click({ modifiers: ['Shift'] })
    expect(await selected(page, 'C3')).toBe('true')
    await rowNumber(page, 3).click({ button: 'right' })
    await page.getByRole('menuitem', { name: 'Delete rows 2 to 3' }).click()
    await settled(page)
    expect(await shown(page, 'B1', /^\s*5\s*$/)).toBe('5')
    expect(await formulaAt(page, 'B1')).toBe('=SUM(A1:A2)')

    await columnLetter(page, 'A').click({ button: 'right' })
    await page.getByRole('menuitem', { name: 'Move column A right' }).click()
    await settled(page)
    expect(await shown(page, 'B1', /^\s*1\s*$/)).toBe('1')
    expect(await formulaAt(page, 'A1')).toBe('=SUM(B1:B2)')
    await sound(app)
  })

  it('a cell that is gone shows in the formulas that read it, and undo heals them', async () => {
    const app = await openSmall()
    const { page } = app
    await cellAt(page, 'C1').click()
    await page.keyboard.type('=A2*10')
    await page.keyboard.press('Enter')
    await settled(page)
    await rowNumber(page, 2).click({ button: 'right' })
    await page.getByRole('menuitem', { name: 'Delete row 2' }).click()
    await settled(page)
    await shown(page, 'C1', /#REF!/)
    await page.keyboard.press('Control+z')
    await settled(page)
    expect(await shown(page, 'C1', /^\s*20\s*$/)).toBe('20')
    await sound(app)
  })
})

describe('rows and columns by keyboard', () => {
  it('inserts, moves and deletes with keys of our own, and by the menu', async () => {
    const app = await openSmall()
    const { page } = app
    await cellAt(page, 'A2').click()
    await page.keyboard.press('Alt+Insert')
    await settled(page)
    expect(await shown(page, 'A3', /2/)).toBe('2')
    await page.keyboard.press('Alt+Delete')
    await settled(page)
    expect(await shown(page, 'A2', /2/)).toBe('2')
    await page.keyboard.press('Alt+PageDown')
    await settled(page)
    expect([await shown(page, 'A2', /3/), await shown(page, 'A3', /2/)]).toEqual(['3', '2'])
    await page.keyboard.press('Alt+Shift+Insert')
    await settled(page)
    expect(await shown(page, 'C1', /^\s*10\s*$/)).toBe('10')

    await page.keyboard.press('Shift+F10')
    await page.getByRole('menu', { name: 'Selected cells' }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('menu').waitFor({ state: 'detached' })
    await page.keyboard.press('Control+ ')
    expect(await selected(page, 'A9')).toBe('true')
    await page.keyboard.press('ContextMenu')
    await page.getByRole('menu', { name: 'Selected columns' }).waitFor()
    // By its first letters, as menus are.
    await page.getByRole('menuitem', { name: /^Delete/ }).press('Enter')
    await settled(page)
    expect(await shown(page, 'B1', /^\s*10\s*$/)).toBe('10')
    await sound(app)
  })

  it('whole rows are copied, pasted and emptied', async () => {
    const app = await openSmall()
    const { page } = app
    await app.context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await cellAt(page, 'A1').click()
    await page.keyboard.press('Shift+ ')
    expect(await selected(page, 'E1')).toBe('true')
    await page.keyboard.press('Control+c')
    await cellAt(page, 'A8').click()
    await page.keyboard.press('Control+v')
    await settled(page)
    expect(await formulaAt(page, 'B8')).toBe('=SUM(A8:A11)')
    await rowNumber(page, 8).click()
    await page.keyboard.press('Delete')
    await settled(page)
    expect(await formulaAt(page, 'B8')).toBe('')
    await sound(app)
  })
})

describe('sheets', () => {
  it('are renamed in place, moved, duplicated and removed, and undo brings one back', async () => {
    const app = await openSmall()
    const { page } = app
    const before = await sheetNames(page)
    const mine = before.at(-1) ?? ''
    const sheets = page.getByRole('navigation', { name: 'Sheets' })
    await sheets.getByText(mine, { exact: true }).click({ button: 'right' })
    await page.getByRole('menuitem', { name: 'Rename' }).click()
    await page.keyboard.type('Charge')
    await page.keyboard.press('Enter')
    await sheets.getByText('Charge', { exact: true }).waitFor()
    expect(await page.getByRole('grid').getAttribute('aria-label')).toBe('Sheet Charge')

    // The list has the focus: the menu key, and moving by keys.
    await page.keyboard.press('ContextMenu')
    await page.getByRole('menu', { name: 'Sheet Charge' }).getByRole('menuitem', { name: 'Duplicate' }).click()
    await settled(page)
    expect((await sheetNames(page)).slice(-2)).toEqual(['Charge', 'Charge 2'])
    expect(await shown(page, 'B1', /^\s*10\s*$/)).toBe('10')
    await page.keyboard.press('Alt+PageUp')
    expect((await sheetNames(page)).slice(-2)).toEqual(['Charge 2', 'Charge'])

    await sheets.getByText('Charge 2', { exact: true }).hover()
    await page.getByRole('button', { name: /^Sheet Charge 2:/ }).click()
    await page.getByRole('menuitem', { name: 'Remove' }).click()
    expect(await sheetNames(page)).toEqual([...before.slice(0, -1), 'Charge'])
    await page.getByText('Sheet "Charge 2" is removed').waitFor()
    await page.getByRole('button', { name: /^Undo/ }).click()
    expect((await sheetNames(page)).slice(-2)).toEqual(['Charge 2', 'Charge'])
    await sound(app)
  })

  it('a name that is taken is refused in words, and Escape keeps the old one', async () => {
    const app = await openSmall()
    const { page } = app
    const names = await sheetNames(page)
    await page.getByRole('navigation', { name: 'Sheets' }).locator('[aria-current]').focus()
    await page.keyboard.press('F2')
    await page.keyboard.type(names[0] ?? '')
    await page.keyboard.press('Enter')
    await page.getByText(/is taken by/).waitFor()
    await page.keyboard.press('Escape')
    expect(await sheetNames(page)).toEqual(names)
    await sound(app)
  })
})
