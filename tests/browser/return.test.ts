import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { DOCUMENT_HEAD_ROWS } from '../../src/exchange/return/document-sheet.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { readWorkbook } from '../../src/workbook/file.ts'
import { openElsewhere, savedElsewhere, typeElsewhere } from '../unit/return/other-program.ts'
import { openApp, settled, shown, useBrowser } from './app.ts'
import { findings } from './axe.ts'

useBrowser()

const read = readWorkbook(readFileSync(fileURLToPath(new URL('one-drum.lowside.json', import.meta.url)), 'utf8'))
if ('problems' in read) throw new Error(read.problems[0]?.message)
const { workbook } = read
const file = Buffer.from(await exportXlsx(workbook, new Graph(workbook).allValues(), { date: new Date('2026-01-02T03:04:05Z') }))

/** The exported file with cells typed over and saved by another library. */
function edited(...cells: readonly (readonly [sheet: string, row: number, column: number, typed: number | string])[]): Buffer {
  const book = openElsewhere(file)
  for (const [sheet, row, column, typed] of cells) typeElsewhere(book, sheet, row, column, typed)
  return Buffer.from(savedElsewhere(book))
}

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open', exact: true }).click()
  await (await chooser).setFiles({ name, mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet', buffer })
}

const LOAD = ['Duty', 5, 2, 90] as const
const WORKINGS = [openElsewhere(file).SheetNames.find((name) => name.includes('.')) ?? '', 5, 3, 12345] as const
const overwritten = ((): readonly [sheet: string, row: number, column: number, typed: number] => {
  const sheet = workbook.sheets.find(({ name }) => name === 'Duty') ?? expect.fail('no sheet Duty')
  const row = sheet.rows.findIndex((cells) => typeof cells?.[2]?.content === 'string' && cells[2].content.startsWith('='))
  return ['Duty', row, 2, 777]
})()

describe('a spreadsheet file that Lowside exported', () => {
  it('unchanged opens as the workbook it was', async () => {
    const { page, context, trouble } = await openApp()
    await page.getByRole('textbox', { name: 'Title of the workbook' }).fill('Another')
    await page.keyboard.press('Enter')
    await choose(page, 'drum.xlsx', file)
    await page.locator(`.title-place[data-title="${workbook.title}"]`).waitFor()
    await settled(page)
    expect(await page.getByRole('dialog').count()).toBe(0)
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
    expect(await shown(page, 'C6', /84/)).toBe('84')
    expect(trouble).toEqual([])
    await context.close()
  })

  it('changed asks by keyboard, takes over what is chosen, and one Undo takes it back', async () => {
    const { page, context, trouble } = await openApp()
    await choose(page, 'drum.xlsx', edited(LOAD, overwritten, WORKINGS))
    const dialog = page.getByRole('dialog', { name: 'Changes in drum.xlsx' })
    await dialog.waitFor()
    expect(await dialog.getByRole('table', { name: 'Inputs with other values' }).getByRole('row').allTextContents()).toEqual(['PlaceIn LowsideIn the file', 'Duty!C6 Refrigeration load on the drum8490'])
    expect(await dialog.getByRole('status').textContent()).toBe('1 change taken over, 2 not.')
    expect(await findings(page)).toEqual([])
    // The formula that was overwritten: back from the buttons to its choice, which Space makes.
    await dialog.getByRole('button', { name: 'Open with these' }).focus()
    const choice = dialog.getByRole('checkbox', { name: `Duty!C${overwritten[1] + 1}` })
    for (let step = 0; step < 12 && !(await choice.evaluate((element) => element === document.activeElement)); step++) await page.keyboard.press('Shift+Tab')
    await page.keyboard.press('Space')
    expect(await dialog.getByRole('status').textContent()).toBe('2 changes taken over, 1 not.')
    await dialog.getByRole('checkbox', { name: /Keep what is not taken over/ }).check()
    await dialog.getByRole('button', { name: 'Open with these' }).focus()
    await page.keyboard.press('Enter')
    await dialog.waitFor({ state: 'detached' })
    await settled(page)
    expect(await shown(page, 'C6', /90/)).toBe('90')
    expect(await page.getByRole('button', { name: /^Undo/ }).getAttribute('title')).toBe('Undo: Changes from the file')
    expect(await page.getByText('Set aside', { exact: true }).count()).toBeGreaterThan(0)
    await page.getByRole('button', { name: 'Undo' }).click()
    await settled(page)
    expect(await shown(page, 'C6', /84/)).toBe('84')
    expect(await page.getByText('Set aside', { exact: true }).count()).toBe(0)
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
    expect(trouble).toEqual([])
    await context.close()
  })

  it('changed can be opened as it was exported, or not at all', async () => {
    const { page, context, trouble } = await openApp()
    await page.getByRole('textbox', { name: 'Title of the workbook' }).fill('Another')
    await page.keyboard.press('Enter')
    await choose(page, 'drum.xlsx', edited(LOAD))
    const dialog = page.getByRole('dialog', { name: 'Changes in drum.xlsx' })
    await dialog.waitFor()
    await page.keyboard.press('Escape')
    await dialog.waitFor({ state: 'detached' })
    expect(await page.locator('.title-place').getAttribute('data-title')).toBe('Another')
    await choose(page, 'drum.xlsx', edited(LOAD))
    await dialog.getByRole('button', { name: 'Open as it was exported' }).click()
    await page.locator(`.title-place[data-title="${workbook.title}"]`).waitFor()
    await settled(page)
    expect(await shown(page, 'C6', /84/)).toBe('84')
    expect(trouble).toEqual([])
    await context.close()
  })

  it('with a damaged document says so, and offers its sheets', async () => {
    const { page, context, trouble } = await openApp()
    const book = openElsewhere(file)
    typeElsewhere(book, 'Lowside workbook', DOCUMENT_HEAD_ROWS, 0, 'piece 1: AAAA')
    await choose(page, 'drum.xlsx', Buffer.from(savedElsewhere(book)))
    const dialog = page.getByRole('dialog', { name: 'The workbook in drum.xlsx is damaged' })
    await dialog.getByRole('button', { name: 'Bring in its sheets' }).click()
    await dialog.waitFor({ state: 'detached' })
    await page.getByRole('dialog').waitFor()
    expect(trouble).toEqual([])
    await context.close()
  })
})
