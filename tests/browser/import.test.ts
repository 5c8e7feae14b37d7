import { mkdtemp, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { utils, write, type WorkBook } from 'xlsx'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { findings } from './axe.ts'
import { cellAt, openApp, settled, shown, useBrowser } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

interface Given {
  readonly name: string
  readonly mimeType: string
  readonly buffer: Buffer
}

const textFile = (name: string, text: string): Given => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })

function bookFile(name: string, book: WorkBook): Given {
  return { name, mimeType: 'application/octet-stream', buffer: write(book, { type: 'buffer', bookType: 'xlsx' }) as Buffer }
}

/** Vessels with formulas: one that Lowside does not know, one whose value in the file is another. */
function vessels(): WorkBook {
  const sheet = utils.aoa_to_sheet([['Tag', 'Volume', 'Charge'], [null, 'ft3', 'lb'], ['V-1', 100], ['V-2', 250.5]])
  sheet['C3'] = { t: 'n', v: 3800, f: 'B3*38' }
  sheet['C4'] = { t: 'n', v: 9520, f: 'B4*38' }
  sheet['C5'] = { t: 'n', v: 13320, f: 'LET(a,SUM(C3:C4),a)' }
  sheet['!ref'] = 'A1:C5'
  const book = utils.book_new(sheet, 'Vessels')
  utils.book_append_sheet(book, utils.aoa_to_sheet([['spare']]), 'Notes')
  return book
}

/** Chooses a file by the verb, with the keyboard alone. */
async function importFile(page: Page, file: Given): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Import', exact: true }).focus()
  await page.keyboard.press('Enter')
  await (await chooser).setFiles(file)
}

/** Goes on with Tab until a button has the focus, and presses it. */
async function press(page: Page, name: string): Promise<void> {
  for (let step = 0; step < 40; step++) {
    if ((await page.locator(':focus').textContent())?.trim() === name) break
    await page.keyboard.press('Tab')
  }
  await page.keyboard.press('Enter')
}

const title = (page: Page): Promise<string> => page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()
const sheetNames = (page: Page): Promise<string[]> => page.getByRole('navigation', { name: 'Sheets' }).locator('.sheet-name').allTextContents()

describe('import', () => {
  it('brings in the sheets of an xlsx file by keyboard, tells what is not as in the file, and one undo takes it back', async () => {
    const app = await openApp()
    const { page } = app
    const before = await title(page)
    await importFile(page, bookFile('vessels.xlsx', vessels()))
    const dialog = page.getByRole('dialog', { name: 'Import vessels.xlsx' })
    await dialog.getByText('Spreadsheet (ECMA-376) · 2 sheets').waitFor()
    await dialog.getByText('1 formula is kept as text, which Lowside does not compute.').waitFor()
    expect(await dialog.getByRole('columnheader').allTextContents()).toEqual(['A', 'B', 'C'])
    expect(await dialog.getByRole('row').nth(4).getByRole('cell').allTextContents()).toEqual(['V-2', '250.5', '9520'])
    expect(await findings(page)).toEqual([])
    // The second sheet stays in the file: down to its box, and off.
    const boxes = dialog.getByRole('checkbox')
    await boxes.nth(1).focus()
    await page.keyboard.press('Space')
    expect(await boxes.nth(1).isChecked()).toBe(false)
    await press(page, 'As sheets of this workbook')

    const report = page.getByRole('dialog', { name: 'Brought in: vessels.xlsx' })
    await report.getByText('=LET(a,SUM(C3:C4),a): LET is not known here').waitFor()
    await report.getByText('=B4*38 comes to 9519, in the file to 9520').waitFor()
    expect(await findings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('grid', { name: 'Sheet Vessels' }).waitFor()
    await settled(page)
    expect(await shown(page, 'C4', /9519/)).toBe('9519')
    expect(await shown(page, 'C5', /LET/)).toBe('=LET(a,SUM(C3:C4),a)')
    expect(await title(page)).toBe(before)

    await page.getByRole('button', { name: /^Undo/ }).click()
    await page.getByRole('grid', { name: 'Sheet Vessels' }).waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /^Redo/ }).click()
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Vessels').waitFor()
    await sound(app)
  })

  it('reads a text file as it is, shows at once what another dialect makes of it, and makes a new workbook of it', async () => {
    const app = await openApp()
    const { page } = app
    await importFile(page, textFile('charge.csv', 'Tag;Volume\nV-1;1,5\nV-2;2,25\n'))
    const dialog = page.getByRole('dialog', { name: 'Import charge.csv' })
    const row = () => dialog.getByRole('row').nth(2).getByRole('cell').allTextContents()
    await dialog.getByText('Text in columns (RFC 4180) · 1 sheet').waitFor()
    expect(await findings(page)).toEqual([])
    expect(await row()).toEqual(['V-1', '1.5'])
    await dialog.getByLabel('Between columns').selectOption({ label: 'comma ,' })
    await dialog.getByRole('cell', { name: 'V-1;1' }).waitFor()
    await dialog.getByLabel('Between columns').selectOption({ label: 'semicolon ;' })
    await dialog.getByRole('cell', { name: '1.5' }).waitFor()
    await dialog.getByText('All formulas and values come along.').waitFor()
    await dialog.getByLabel('Between columns').focus()
    await press(page, 'As a new workbook')
    await page.locator('.title-place[data-title="charge"]').waitFor()
    await settled(page)
    expect(await shown(page, 'B3', /2/)).toBe('2.25')
    await page.getByText('1 sheet of charge.csv brought in; nothing is left out').waitFor()
    await sound(app)
  })

  it('keeps its remarks as a sheet if asked', async () => {
    const app = await openApp()
    const { page } = app
    await importFile(page, bookFile('vessels.xlsx', vessels()))
    await page.getByRole('dialog').getByText('1 formula is kept as text').waitFor()
    await page.getByRole('dialog').getByRole('button', { name: 'As sheets of this workbook' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Keep these remarks as a sheet' }).click()
    await page.getByRole('grid', { name: 'Sheet Import notes' }).waitFor()
    await settled(page)
    expect(await shown(page, 'B7', /text/)).toBe('kept as text')
    // The focus is back where the import began.
    expect(await page.locator(':focus').textContent()).toBe('Import')
    await sound(app)
  })

  it('says of a damaged file what is wrong with it, and leaves the workbook as it was', async () => {
    const app = await openApp()
    const { page } = app
    const [before, sheets, load] = [await title(page), await sheetNames(page), await shown(page, 'C6', /\d/)]
    const whole = bookFile('vessels.xlsx', vessels())
    await importFile(page, { ...whole, name: 'half.xlsx', buffer: whole.buffer.subarray(0, whole.buffer.length >> 1) })
    const dialog = page.getByRole('dialog', { name: 'half.xlsx cannot be read' })
    await dialog.getByRole('alert').waitFor()
    expect((await dialog.getByRole('alert').textContent())?.length).toBeGreaterThan(20)
    await page.keyboard.press('Escape')
    expect([await title(page), await sheetNames(page), await shown(page, 'C6', /\d/)]).toEqual([before, sheets, load])
    expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true)
    await cellAt(page, 'C6').click()
    await sound(app)
  })

  it('goes on to rows of a list, and back to the same choices', async () => {
    const app = await openApp()
    const { page } = app
    await importFile(page, textFile('charge.csv', 'Tag;Volume\nV-1;1,5\n'))
    const dialog = page.getByRole('dialog', { name: 'Import charge.csv' })
    await dialog.getByRole('button', { name: 'Rows into a list' }).click()
    await page.getByRole('dialog', { name: /^Rows into a list: charge\.csv/ }).getByRole('button', { name: 'Back' }).click()
    await dialog.getByRole('cell', { name: 'V-1' }).waitFor()
    await page.keyboard.press('Escape')
    expect(await page.getByRole('dialog').count()).toBe(0)
    await sound(app)
  })

  it('offers to open a file that Lowside exported as the workbook it was', async () => {
    const app = await openApp()
    const { page } = app
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: /^Spreadsheet \(\.xlsx\)/ }).click()
    const path = join(await mkdtemp(join(tmpdir(), 'lowside-import-')), 'own.xlsx')
    await (await download).saveAs(path)
    await page.getByRole('textbox', { name: 'Title of the workbook' }).fill('Another title')
    await page.keyboard.press('Enter')
    await importFile(page, { name: 'own.xlsx', mimeType: 'application/octet-stream', buffer: await readFile(path) })
    await page.getByRole('dialog', { name: 'Import own.xlsx' }).getByRole('button', { name: 'Open it as that workbook' }).click()
    await page.locator('.title-place[data-title="Tallowmere surge drum SD-3"]').waitFor()
    await settled(page)
    expect((await sheetNames(page))[0]).toBe('Duty')
    await sound(app)
  })

  it('brings in 100 000 rows while the screen goes on, in one step', async () => {
    const app = await openApp()
    const { page } = app
    const text = `Tag,Volume\n${Array.from({ length: 100_000 }, (_, row) => `V-${row},${row}`).join('\n')}\n`
    await importFile(page, textFile('many.csv', text))
    const dialog = page.getByRole('dialog', { name: 'Import many.csv' })
    await dialog.getByText('100 001 rows, 2 columns').waitFor()
    await dialog.getByText('All formulas and values come along.').waitFor()
    await dialog.getByRole('button', { name: 'As sheets of this workbook' }).click()
    await page.getByRole('grid', { name: 'Sheet many' }).waitFor()
    await settled(page)
    await page.getByRole('grid').focus()
    await page.keyboard.press('Control+End')
    expect(await shown(page, 'B100001', /\d/)).toBe('99999')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await page.getByRole('grid', { name: 'Sheet many' }).waitFor({ state: 'detached' })
    await sound(app)
  })
})
