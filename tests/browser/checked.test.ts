import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { setEntry } from '../../src/workbook/commands.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { markChecked } from '../../src/workbook/review/review-commands.ts'
import { cellAt, enter, openApp, settled, useBrowser, type Opened } from './app.ts'
import { findings as accessFindings } from './axe.ts'
import { sound } from './sound.ts'

useBrowser()

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
const panel = (page: Page) => page.getByRole('region', { name: 'Checked', exact: true })
const marks = (page: Page) => panel(page).getByRole('list', { name: 'Marks' }).locator('> li')
const outcome = (page: Page) => panel(page).getByRole('status').first()
const sheetItem = (page: Page, name: string) => page.getByRole('navigation', { name: 'Sheets' }).locator(`[data-sheet="${name}"]`)
const focused = (page: Page) => page.evaluate(() => document.activeElement?.closest('label')?.textContent ?? document.activeElement?.textContent ?? '')

/** Marks what is selected, by keys alone. */
async function checkByKeys(page: Page, name: string, note: string): Promise<void> {
  await page.keyboard.press('Alt+End')
  await panel(page).getByRole('form', { name: 'Mark as checked' }).waitFor()
  if (name !== '') {
    await expect.poll(() => focused(page)).toBe('Name')
    await page.keyboard.type(name)
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Tab')
  }
  await expect.poll(() => focused(page)).toMatch(/^Note/)
  await page.keyboard.type(note)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
}

async function openFile(page: Page, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await button(page, 'Open').click()
  await (await chooser).setFiles({ name: 'reviewed.lowside.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.locator('.title-place[data-title^="Reviewed"]').waitFor()
  await settled(page)
}

async function saved(page: Page): Promise<string> {
  const download = page.waitForEvent('download')
  await button(page, 'Save').click()
  const chunks: Buffer[] = []
  for await (const chunk of await (await download).createReadStream()) chunks.push(Buffer.from(chunk))
  return Buffer.concat(chunks).toString('utf8')
}

/** One drum, marked by someone else, and changed since. */
function reviewedFile(): string {
  const read = readWorkbook(readFileSync(fileURLToPath(new URL('one-drum.lowside.json', import.meta.url)), 'utf8'))
  if (!('workbook' in read)) throw new Error('the drum cannot be read')
  const start = { ...read.workbook, title: 'Reviewed drum' }
  const area = { top: 5, bottom: 5, left: 2, right: 2 }
  const marked = applyEdits(start, markChecked(start, { sheet: 'Duty', area, by: 'A. Jones', at: '2026-03-02T14:05:00Z', method: 'by hand', note: 'load list C' }, () => null)).workbook
  return writeWorkbook(applyEdits(marked, setEntry(marked, 'Duty', { row: 5, column: 2 }, '90')).workbook)
}

describe('check marks', () => {
  it('are made by keys, seen in the grid, in Why and in the sheet list, go stale with words that lead to the cell, and are made good again', async () => {
    const opened: Opened = await openApp()
    const { page } = opened
    await cellAt(page, 'C16').click()
    await checkByKeys(page, 'R. Smith', 'against my own sheet')
    await expect.poll(() => marks(page).count()).toBe(1)
    expect(await marks(page).textContent()).toMatch(/^checked Duty!C16 mark 1R\. Smith, \d{4}-\d\d-\d\d, other toolagainst my own sheet/)
    expect(await outcome(page).textContent()).toBe('1 mark, all good.')
    // By shape, and in words for those who hear them.
    await cellAt(page, 'C16').locator('.checked-line.good').waitFor()
    expect(await cellAt(page, 'C16').getAttribute('aria-description')).toMatch(/checked by R\. Smith on \d{4}-\d\d-\d\d, other tool/)
    expect(await cellAt(page, 'C6').locator('.checked-line').count()).toBe(0)
    expect(await sheetItem(page, 'Duty').textContent()).toMatch(/\d+ of \d+ checked$/)
    expect(await accessFindings(page)).toEqual([])

    await button(page, 'Why').click()
    await cellAt(page, 'C6').click()
    await page.getByRole('region', { name: 'Why' }).getByText(/^It feeds Duty!C16, checked by R\. Smith on .*, other tool \(“against my own sheet”\)\.$/).waitFor()

    await enter(page, 'C6', '90')
    await cellAt(page, 'C16').locator('.checked-line.stale').waitFor()
    expect(await sheetItem(page, 'Duty').textContent()).toMatch(/0 of \d+ checked, 1 mark stale$/)
    await button(page, 'Checked').click()
    expect(await outcome(page).textContent()).toBe('1 mark, all stale.')
    await cellAt(page, 'C9').click()
    await marks(page).getByRole('button', { name: 'Refrigeration load on the drum (Duty!C6) was 84 TR, is 90 TR.' }).press('Enter')
    await expect.poll(() => cellAt(page, 'C6').getAttribute('class')).toContain('active')
    expect(await accessFindings(page)).toEqual([])

    // Put back as it was, it is good; changed again, it is checked again.
    await button(page, 'Undo').click()
    await settled(page)
    await expect.poll(() => outcome(page).textContent()).toBe('1 mark, all good.')
    await button(page, 'Redo').click()
    await settled(page)
    await marks(page).getByRole('button', { name: 'Check again…' }).press('Enter')
    const again = panel(page).getByRole('form', { name: 'Check Duty!C16 again' })
    expect(await again.getByRole('textbox', { name: 'Name' }).inputValue()).toBe('R. Smith')
    await page.keyboard.press('Escape')
    await again.waitFor({ state: 'detached' })
    expect(await focused(page)).toBe('Check again…')
    await page.keyboard.press('Enter')
    await again.getByRole('radio', { name: 'inspection' }).check()
    await again.getByRole('button', { name: 'Check again' }).press('Enter')
    await expect.poll(() => marks(page).textContent()).toMatch(/^checked Duty!C16 mark 2R\. Smith, .*inspection/)

    // The record tells all of it, and grows by Undo too.
    await panel(page).getByText('All 3 lines fit.').waitFor()
    await button(page, 'Undo').click()
    await panel(page).getByText('All 5 lines fit.').waitFor()
    expect(await marks(page).textContent()).toMatch(/^stale Duty!C16 mark 1/)
    await panel(page).getByText('5 lines', { exact: true }).click()
    const lines = await panel(page).getByRole('list', { name: 'Record, the latest first' }).locator('> li').allTextContents()
    expect(lines.map((line) => /^(marked|mark withdrawn) \d, Duty!C16/.exec(line)?.[0])).toEqual(['marked 1, Duty!C16', 'mark withdrawn 2, Duty!C16', 'marked 2, Duty!C16', 'mark withdrawn 1, Duty!C16', 'marked 1, Duty!C16'])
    expect(await accessFindings(page)).toEqual([])
    await sound(opened)
  })

  it('are made from the menu for ranges and sheets, stay with their cells as rows come in, stand in the saved file, and are withdrawn', async () => {
    const opened = await openApp()
    const { page } = opened
    await cellAt(page, 'C6').click()
    await page.keyboard.press('Shift+ArrowDown')
    await cellAt(page, 'C7').click({ button: 'right' })
    await page.getByRole('menuitem', { name: /^Mark as checked…/ }).click()
    await expect.poll(() => focused(page)).toBe('Name')
    const form = panel(page).getByRole('form', { name: 'Mark as checked' })
    await form.getByRole('radio', { name: /^C6:C7 what is selected$/ }).waitFor()
    // Without a name nothing is marked, and the form says why.
    await form.getByRole('button', { name: 'Mark as checked' }).press('Enter')
    await form.getByText('Still needed: your name.').waitFor()
    expect(await focused(page)).toBe('Name')
    await page.keyboard.type('R. Smith')
    await form.getByRole('button', { name: 'Mark as checked' }).click()
    await expect.poll(() => marks(page).count()).toBe(1)
    await form.getByRole('radio', { name: /^Duty the whole sheet$/ }).check()
    await form.getByRole('button', { name: 'Mark as checked' }).click()
    await expect.poll(() => marks(page).count()).toBe(2)
    expect(await sheetItem(page, 'Duty').textContent()).toMatch(/all \d+ checked$/)

    await cellAt(page, 'B6').click()
    await page.keyboard.press('Alt+Insert')
    await settled(page)
    await marks(page).getByText('Duty!C7:C8').waitFor()
    expect(await outcome(page).textContent()).toBe('2 marks, all good.')
    await cellAt(page, 'C7').locator('.checked-line.good').waitFor()
    await enter(page, 'C6', '7')
    expect(await outcome(page).textContent()).toBe('2 marks: 1 good, 1 stale.')
    await panel(page).getByRole('checkbox', { name: 'stale ones only' }).check()
    await marks(page).getByRole('button', { name: 'Value (Duty!C6) was empty, holds 7.' }).waitFor()
    await panel(page).getByRole('checkbox', { name: 'stale ones only' }).uncheck()

    await marks(page).filter({ hasText: 'mark 2' }).getByRole('button', { name: 'Withdraw…' }).press('Enter')
    const leaving = panel(page).getByRole('form', { name: 'Withdraw the mark on Duty' })
    await leaving.getByRole('textbox', { name: /^Why/ }).fill('one row more')
    await leaving.getByRole('button', { name: 'Withdraw', exact: true }).press('Enter')
    await expect.poll(() => marks(page).count()).toBe(1)
    expect(await focused(page)).toBe('Checked')

    const read = readWorkbook(await saved(page))
    expect('workbook' in read && read.workbook.review).toMatchObject({
      marks: [{ id: '1', sheet: 'Duty', area: { top: 6, bottom: 7, left: 2, right: 2 }, by: 'R. Smith', method: 'by hand' }],
      record: [{ what: 'marked', of: '1', place: 'Duty!C6:C7' }, { what: 'marked', of: '2', place: 'Duty' }, { what: 'mark withdrawn', of: '2', by: 'R. Smith', words: 'one row more' }],
    })
    await sound(opened)
  })

  it('of a file come with it; a record that was changed outside is told with its line', async () => {
    const opened = await openApp()
    const { page } = opened
    const text = reviewedFile()
    await openFile(page, text)
    await button(page, 'Checked').click()
    expect(await marks(page).textContent()).toMatch(/^stale Duty!C6 mark 1A\. Jones, 2026-03-02, by handload list CRefrigeration load on the drum \(Duty!C6\) was 84 TR, is 90 TR\./)
    await panel(page).getByText('Its one line fits.').waitFor()

    await openFile(page, text.replaceAll('load list C', 'load list D').replace('Reviewed drum', 'Reviewed drum again'))
    const told = panel(page).getByRole('alert')
    await told.waitFor()
    expect(await told.textContent()).toBe('Line 1 of the record (marked, Duty!C6, 2026-03-02T14:05:00Z) does not fit: it, or what stood before it, was changed outside Lowside. Mark 1 on Duty!C6 by A. Jones is not as the record has it: the mark or what it covers was changed outside Lowside.')
    await panel(page).getByText('1 line', { exact: true }).click()
    await panel(page).getByText('does not fit', { exact: true }).waitFor()
    expect(await accessFindings(page)).toEqual([])
    await sound(opened)
  })

  it('have their shapes where the system puts its own colours, and fit the smallest screen', async () => {
    const opened = await openApp()
    const { page } = opened
    await page.emulateMedia({ forcedColors: 'active' })
    await openFile(page, reviewedFile())
    await button(page, 'Checked').click()
    const line = (kind: string) => cellAt(page, 'C6').locator(`.checked-line.${kind}`).evaluate((element) => {
      const { borderLeftStyle, borderLeftWidth, borderRightStyle } = getComputedStyle(element)
      return [borderLeftStyle, borderLeftWidth, borderRightStyle]
    })
    expect(await line('stale')).toEqual(['dashed', '3px', 'none'])
    await cellAt(page, 'C6').click()
    await checkByKeys(page, 'R. Smith', '')
    await expect.poll(() => cellAt(page, 'C6').locator('.checked-line.good').count()).toBe(1)
    expect(await line('good')).toEqual(['solid', '1px', 'solid'])
    const { scrollWidth, clientWidth } = await panel(page).evaluate(({ scrollWidth: scroll, clientWidth: client }) => ({ scrollWidth: scroll, clientWidth: client }))
    expect(scrollWidth).toBeLessThanOrEqual(clientWidth)
    expect(await accessFindings(page)).toEqual([])
    await sound(opened)
  })
})
