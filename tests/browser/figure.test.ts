import { describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { bookOf, chargeCells, chargeFigure, drumCells, drumFigure, LEVELS, PARTS } from '../unit/figures/sample-figures.ts'
import { cellAt, openApp, settled, useBrowser } from './app.ts'
import { findings } from './axe.ts'

useBrowser()

const FIGURES = [chargeFigure('Charge', PARTS.length), drumFigure('Lying', 'horizontal', 'Drum of the coolers')]
const BOOK = writeWorkbook(bookOf({ Lying: drumCells(48, 16, '2:1', 14.4, LEVELS), Charge: chargeCells(PARTS), Standing: drumCells(42, 8.5, 'hemi', 20, LEVELS) }, FIGURES))

async function openFigures(page: Page): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open', exact: true }).click()
  await (await chooser).setFiles({ name: 'figures.lowside.json', mimeType: 'application/json', buffer: Buffer.from(BOOK) })
  await page.getByRole('grid', { name: 'Sheet Lying' }).waitFor()
  await settled(page)
  await page.getByRole('button', { name: 'Figure', exact: true }).press('Enter')
}

const panelOf = (page: Page) => page.getByRole('region', { name: 'Figure', exact: true })
const drawingOf = (page: Page, name: string) => panelOf(page).getByRole('img', { name })
const showSheet = (page: Page, name: string) => page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name }).first().click()

async function enter(page: Page, address: string, text: string): Promise<void> {
  await cellAt(page, address).click()
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
}

describe('the Figure panel', () => {
  it('draws the figure of the sheet, named and described, and draws it anew when a cell changes', async () => {
    const { page, trouble, context } = await openApp()
    await openFigures(page)
    const drawing = drawingOf(page, 'Drum of the coolers')
    await drawing.waitFor()
    expect(await drawing.locator('desc').textContent()).toContain('Horizontal drum, 48 in inside diameter')
    const surface = drawing.locator('.figure-surface').first()
    const before = Number(await surface.getAttribute('y1'))

    await enter(page, 'C5', '30')
    await drawing.locator('desc', { hasText: 'Liquid at 30 in' }).waitFor({ state: 'attached' })
    expect(Number(await surface.getAttribute('y1'))).toBeLessThan(before)

    await panelOf(page).getByText('The numbers as a table').click()
    await panelOf(page).getByRole('row', { name: 'Liquid 30 in' }).waitFor()
    expect(trouble).toEqual([])
    await context.close()
  })

  it('has no text smaller than 11 px, and none beyond its edges', async () => {
    const { page, context } = await openApp()
    await openFigures(page)
    for (const name of ['Drum of the coolers', 'Charge by part']) {
      await panelOf(page).getByRole('button', { name }).click()
      const drawing = drawingOf(page, name)
      await drawing.waitFor()
      const texts = await drawing.evaluate((svg) => {
        const edges = svg.getBoundingClientRect()
        return [...svg.querySelectorAll('text')].map((text) => {
          const box = text.getBoundingClientRect()
          return { px: Number.parseFloat(getComputedStyle(text).fontSize), inside: box.left >= edges.left - 1 && box.right <= edges.right + 1 && box.bottom <= edges.bottom + 1 }
        })
      })
      expect(texts.length).toBeGreaterThan(8)
      expect(Math.min(...texts.map(({ px }) => px))).toBeGreaterThanOrEqual(11)
      expect(texts.every(({ inside }) => inside)).toBe(true)
    }
    await context.close()
  })

  it('has nothing that axe finds fault with, with everything open and larger too', async () => {
    const { page, context } = await openApp()
    await openFigures(page)
    const panel = panelOf(page)
    await drawingOf(page, 'Drum of the coolers').waitFor()
    await panel.getByRole('button', { name: 'New figure' }).press('Enter')
    await panel.getByRole('button', { name: 'Change' }).press('Enter')
    await panel.getByText('The numbers as a table').click()
    expect(await findings(page)).toEqual([])
    await panel.getByRole('button', { name: 'Larger' }).press('Enter')
    await page.getByRole('dialog').getByRole('img').waitFor()
    expect(await findings(page)).toEqual([])
    await context.close()
  })

  it('makes a figure with the keyboard alone: kind, parts from what is selected, or typed', async () => {
    const { page, trouble, context } = await openApp()
    await openFigures(page)
    await showSheet(page, 'Standing')
    const panel = panelOf(page)
    await panel.getByRole('button', { name: 'New figure' }).press('Enter')
    await panel.getByRole('combobox', { name: 'What to draw' }).press('Home')
    await panel.getByRole('button', { name: 'Add', exact: true }).press('Enter')
    await panel.getByText('Inside diameter: bound to no cell; accepted: a cell with a length').waitFor()

    await panel.getByRole('combobox', { name: 'Drum' }).selectOption('vertical')
    for (const [part, address] of [['Inside diameter needed', 'C2'], ['Tangent length needed', 'C3'], ['Heads needed', 'C4'], ['Level of the liquid drawn needed', 'Standing!C5:D5']] as const) {
      const field = panel.getByRole('textbox', { name: part })
      await field.fill(address)
      await field.press('Enter')
    }
    await drawingOf(page, 'Drum section').waitFor()
    expect(await drawingOf(page, 'Drum section').locator('desc').textContent()).toContain('Vertical drum, 42 in inside diameter')

    await cellAt(page, 'C10').click()
    await page.keyboard.press('Shift+ArrowRight')
    for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowDown')
    await panel.getByRole('button', { name: 'Heights of the levels marked: take Standing!$C$10:$D$14' }).press('Enter')
    await drawingOf(page, 'Drum section').locator('text', { hasText: 'Level 5' }).waitFor({ state: 'attached' })
    expect(trouble).toEqual([])
    await context.close()
  })

  it('follows lines that come and go, says when its cells are gone, and comes back by undo', async () => {
    const { page, trouble, context } = await openApp()
    await openFigures(page)
    const drawing = drawingOf(page, 'Drum of the coolers')
    await drawing.waitFor()
    await cellAt(page, 'C2').click()
    await page.keyboard.press('Alt+Insert')
    await panelOf(page).getByRole('button', { name: 'Change' }).press('Enter')
    await expect.poll(() => panelOf(page).getByRole('textbox', { name: 'Inside diameter needed' }).inputValue()).toBe('Lying!C3:D3')
    await drawing.waitFor()

    await cellAt(page, 'C3').click()
    await page.keyboard.press('Alt+Delete')
    await panelOf(page).getByText('Inside diameter: the cells it was bound to are gone').waitFor()
    await page.keyboard.press('Control+z')
    await drawing.waitFor()
    expect(trouble).toEqual([])
    await context.close()
  })

  it('says so where its drawings cannot be loaded', async () => {
    const { page, context } = await openApp()
    await page.route('**/Figures-*.js', (route) => route.abort())
    await page.getByRole('button', { name: 'Figure', exact: true }).click()
    await page.getByRole('alert').filter({ hasText: 'The drawings cannot be loaded' }).waitFor()
    await context.close()
  })

  it('shows a figure larger, moves it, removes it and brings it back', async () => {
    const { page, trouble, context } = await openApp()
    await openFigures(page)
    const panel = panelOf(page)
    await drawingOf(page, 'Drum of the coolers').waitFor()
    await panel.getByRole('button', { name: 'Larger' }).press('Enter')
    await page.getByRole('dialog', { name: 'Drum of the coolers' }).getByRole('img', { name: 'Drum of the coolers' }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })

    await panel.getByRole('button', { name: 'Earlier' }).press('Enter')
    expect(await panel.getByRole('button', { name: 'Earlier' }).isDisabled()).toBe(true)
    await panel.getByRole('button', { name: 'Remove' }).press('Enter')
    await drawingOf(page, 'Charge by part').waitFor()
    expect(await panel.getByRole('button', { name: 'Drum of the coolers' }).count()).toBe(0)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await panel.getByRole('button', { name: 'Drum of the coolers' }).waitFor()
    expect(trouble).toEqual([])
    await context.close()
  })
})
