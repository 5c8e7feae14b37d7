import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { workbookText } from '../../src/workbook/file.ts'
import { bookOf, drumCells, drumFigure, LEVELS } from '../unit/figures/sample-figures.ts'
import { cellAt, openApp, settled, useBrowser } from './app.ts'
import { pagesOf } from './pdf.ts'

useBrowser()

const CAUTION = 'Engineering estimate, not a compliance finding.'

/** From now on the browser's own printing only notes that it was asked for. */
async function notePrinting(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => void (document.documentElement.dataset['printed'] = String(Number(document.documentElement.dataset['printed'] ?? 0) + 1))
  })
}

/** Prints from the open dialog, and gives the text of each page. */
async function printed(page: Page): Promise<readonly string[]> {
  await page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).click()
  await page.locator('.report-place').waitFor({ state: 'attached' })
  await page.locator('html[data-printed]').waitFor()
  return pagesOf(await page.pdf({ preferCSSPageSize: true }))
}

/** Of each text of a drawing the lightest part of its colour, 0 to 255. */
const lightestOf = (texts: readonly Element[]): number[] => texts.map((one) => Math.max(...(getComputedStyle(one).fill.match(/\d+/g) ?? []).map(Number)))

async function openWorkbook(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open' }).click()
  await (await chooser).setFiles({ name: `${name}.lowside.json`, mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.locator(`.title-place[data-title="${name}"]`).waitFor()
  await settled(page)
}

describe('the printed report', () => {
  it('is as long as the dialog says, to 15 %', async () => {
    const { page } = await openApp()
    await notePrinting(page)
    await openWorkbook(page, 'Tallowmere cheese works', await readFile(new URL('../../demo-data/tallowmere.lowside.json', import.meta.url), 'utf8'))
    await page.keyboard.press('Control+p')
    const words = page.getByRole('dialog').getByRole('status')
    await expect.poll(() => words.textContent()).toMatch(/rows, about \d+ pages/)
    const told = Number(/about (\d+) pages/.exec((await words.textContent()) ?? '')?.[1])
    const pages = await printed(page)
    expect(pages.length).toBeGreaterThan(60)
    expect(Math.abs(told / pages.length - 1), `${told} told, ${pages.length} printed`).toBeLessThan(0.15)
  })

  it('of the demo: numbered pages with title and caution, checks, sheets, and nothing of the app; in the dark as in the light', async () => {
    const app = await openApp()
    const { page } = app
    await page.emulateMedia({ colorScheme: 'dark' })
    await notePrinting(page)
    const title = await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()
    const heading = (await page.locator('.frozen-rows .role-title').first().textContent()) ?? ''
    await cellAt(page, 'C6').click()
    await page.keyboard.press('Control+p')
    const dialog = page.getByRole('dialog', { name: 'Print the calculation report' })
    await dialog.getByLabel('Prepared by').fill('A. Writer')
    await dialog.getByLabel('A4').check()
    const sheets = await dialog.locator('.print-sheet-list span').allTextContents()
    expect(sheets).toEqual(expect.arrayContaining(['Duty', 'Vertical drum', 'Horizontal drum', 'Cautions']))
    expect(await dialog.locator('.print-sheet-list').getByRole('checkbox', { checked: true }).count()).toBe(sheets.length)

    const pages = await printed(page)
    for (const [index, text] of pages.entries()) {
      expect(text).toContain(`${index + 1} / ${pages.length}`)
      expect(text).toContain(CAUTION)
      expect(text).toContain(title)
      expect(text).toMatch(/Prepared by A\. Writer · \d{4}-\d{2}-\d{2}/)
    }
    for (const part of [/Calculation report/i, /Units in use US units/, /Contents/, /Checks \d+ of \d+ met/]) expect(pages[0]).toMatch(part)
    const whole = pages.join(' ')
    for (const sheet of sheets) expect(whole).toContain(`Sheet ${sheet}`)
    expect(whole).toMatch(/met, [\d.]+ \S+ \(\d+(\.\d+)? %\) to spare/)
    expect(whole).toContain('Sources of the methods')
    // Each page of the first sheet is headed by the title row, which stays in view, or by the column headings of the table that it goes on with.
    const duty = pages.filter((text) => text.includes(`${title} – ${sheets[0]}`))
    expect(duty.length).toBeGreaterThan(1)
    expect(duty[0]).toContain(heading)
    for (const text of duty) expect(text.includes(heading) || /value unit method source/i.test(text)).toBe(true)
    for (const ofTheApp of ['Start from a template', 'All values up to date', 'Restate', 'Kept in the workbook']) expect(whole).not.toContain(ofTheApp)

    // Printing being over, nothing of it is left, and what it says of its making is one step of the workbook.
    expect(await page.locator('.report-place').count()).toBe(0)
    expect(await page.evaluate(() => document.adoptedStyleSheets.length)).toBe(0)
    expect(await page.locator('html').getAttribute('data-printed')).toBe('1')
    await page.getByRole('button', { name: 'Print', exact: true }).click()
    expect(await dialog.getByLabel('Prepared by').inputValue()).toBe('A. Writer')
    await dialog.getByRole('button', { name: 'Cancel' }).click()
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.keyboard.press('Control+p')
    expect(await dialog.getByLabel('Prepared by').inputValue()).toBe('')
    expect(app.trouble).toEqual([])
    // What makes the report is loaded when it is first asked for, from where the app itself came.
    expect(app.lateRequests.filter((url) => !/\/assets\/[\w.-]+\.(js|css|json)$/.test(url))).toEqual([])
  })

  it('is ink on white, whatever the theme', async () => {
    const app = await openApp()
    const { page } = app
    await page.emulateMedia({ colorScheme: 'dark' })
    await notePrinting(page)
    await page.keyboard.press('Control+p')
    await page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).click()
    await page.locator('html[data-printed]').waitFor()
    expect(await page.locator('.report-place').isVisible()).toBe(false)
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
    expect(await page.locator('.report-place').isVisible()).toBe(true)
    expect(await page.getByRole('grid').isVisible()).toBe(false)
    const colours = await page.evaluate(() => [document.body, document.querySelector('.report-place')?.shadowRoot?.querySelector('.report')].map((one) => one && getComputedStyle(one).backgroundColor))
    expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(255, 255, 255)'])
    // Any text may be grey, but far from white: WCAG 2.1 asks for 4.5 to 1, which is rgb(118, 118, 118) on white.
    const lightest = await page.evaluate(() => Math.max(...[...(document.querySelector('.report-place')?.shadowRoot?.querySelectorAll('.report *') ?? [])].map((one) => Math.max(...(getComputedStyle(one).color.match(/\d+/g) ?? []).slice(0, 3).map(Number)))))
    expect(lightest).toBeLessThanOrEqual(118)
    expect(app.trouble).toEqual([])
  })

  it('has the figures with title and numbers, on the printer as in the exported file, in ink on white', async () => {
    const app = await openApp()
    const { page } = app
    await page.emulateMedia({ colorScheme: 'dark' })
    await notePrinting(page)
    const figure = drumFigure('Drum', 'vertical', 'Drum seven in section')
    const workbook = { ...bookOf({ Drum: drumCells(48, 16, 'hemi', 14.4, LEVELS) }, [figure]), title: 'Figured' }
    await openWorkbook(page, 'Figured', [...workbookText(workbook)].join(''))

    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: /^Report \(\.html\)/ }).click()
    const file = await download
    expect(file.suggestedFilename()).toBe('Figured.html')
    const folder = await mkdtemp(join(tmpdir(), 'lowside-report-'))
    await file.saveAs(join(folder, 'report.html'))
    const html = await readFile(join(folder, 'report.html'), 'utf8')
    await rm(folder, { recursive: true })

    await page.keyboard.press('Control+p')
    await page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).click()
    await page.locator('html[data-printed]').waitFor()
    const inks = await page.locator('.report-place .figure-drawing text').evaluateAll(lightestOf)
    const pages = await pagesOf(await page.pdf({ preferCSSPageSize: true }))
    expect(app.trouble).toEqual([])

    const alone = await app.context.newPage()
    await alone.emulateMedia({ colorScheme: 'dark' })
    await alone.setContent(html)
    const alonePages = await pagesOf(await alone.pdf({ preferCSSPageSize: true }))
    for (const one of [inks, await alone.locator('.figure-drawing text').evaluateAll(lightestOf)]) {
      expect(one.length).toBeGreaterThan(5)
      expect(Math.max(...one)).toBeLessThanOrEqual(118)
    }
    for (const text of [pages.join(' '), alonePages.join(' ')]) {
      expect(text).toMatch(/Figure 1 ?Drum seven in section/)
      for (const number of ['14.4 in', '5.8 in', '27.8 in', '48 in inside diameter, 16 ft between tangent lines']) expect(text).toContain(number)
    }
    expect(alonePages.map((text) => /(\d+) \/ (\d+)/.exec(text)?.slice(1).map(Number))).toEqual(alonePages.map((_, index) => [index + 1, alonePages.length]))
  })

  it('says so in words if what makes it cannot be loaded', async () => {
    const app = await openApp()
    await app.page.route('**/assets/print-report-*.js', (route) => route.abort())
    await app.page.keyboard.press('Control+p')
    await app.page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).click()
    await app.page.getByText('The report could not be made: what makes it cannot be loaded, as Lowside is served no more.').waitFor()
    expect(await app.page.locator('.report-place').count()).toBe(0)
  })

  it('warns of a workbook of 3 500 rows, and prints the sheets that are left, repeated head and all', async () => {
    const app = await openApp()
    const { page } = app
    await notePrinting(page)
    const rows = (count: number, of: string) => Object.fromEntries([
      ['A1', ['Tag', 'heading']], ['B1', ['Charge', 'heading']], ['B2', ['lb', 'unit']],
      ...Array.from({ length: count - 2 }, (_, row): [string, unknown][] => [[`A${row + 3}`, [`${of} ${row + 1}`, 'text']], [`B${row + 3}`, [row * 1.5, 'input']]]).flat(),
    ])
    const sheets = [{ name: 'Vessels', frozen: [2, 0], cells: rows(3400, 'Vessel') }, { name: 'Lines', frozen: [2, 0], cells: rows(100, 'Line') }]
    await openWorkbook(page, 'Inventory', JSON.stringify({ lowside: 1, title: 'Inventory', sheets }))
    await page.getByRole('button', { name: 'Print', exact: true }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('alert').filter({ hasText: /3 500 rows, about \d+ pages/ }).waitFor()
    expect(await dialog.getByRole('status').textContent()).toMatch(/^3 500 rows, about \d{2,3} pages$/)
    await dialog.getByLabel('Vessels').uncheck()
    expect(await dialog.getByRole('alert').count()).toBe(0)
    expect(await dialog.getByRole('status').textContent()).toMatch(/^100 rows/)
    await dialog.getByRole('checkbox', { name: /^With the review/ }).uncheck()

    const pages = await printed(page)
    const lines = pages.filter((text) => /\bLine \d+/.test(text))
    expect(lines.length).toBeGreaterThan(1)
    for (const text of lines) expect(text).toMatch(/Tag Charge lb/i)
    expect(pages.join(' ')).toContain('Line 98')
    expect(pages.join(' ')).not.toMatch(/Vessel \d/)
    expect(pages[0]).toMatch(/Vessels no checks not printed/)
    expect(pages[0]).toContain('findings were not looked for')
    expect(app.trouble).toEqual([])
  })
})
