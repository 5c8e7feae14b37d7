import { mkdtemp, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Download } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readWorkbook } from '../../src/workbook/file.ts'
import { cellAt as cellOf } from '../../src/workbook/document.ts'
import { readZip, xmlCells } from '../unit/read-zip.ts'
import { cellAt, openApp, settled, shown, useBrowser, type Opened } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

/** Types over the active cell and enters it. */
async function type({ page }: Opened, text: string): Promise<void> {
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
  await settled(page)
}

/** A download as a file of the tests' own. */
async function kept(download: Download): Promise<string> {
  const path = join(await mkdtemp(join(tmpdir(), 'lowside-')), download.suggestedFilename())
  await download.saveAs(path)
  return path
}

describe('the main job in the browser', () => {
  it('opens with the demo drum, follows a changed load, and exports what it shows', async () => {
    const app = await openApp()
    const { page } = app
    expect(await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()).toBe('Tallowmere surge drum SD-3')
    const before = await shown(page, 'C16', /^\s*\d+\s*$/)

    // The keyboard goes from the top of the sheet to the load, which stands in C6.
    await page.getByRole('grid').focus()
    await page.keyboard.press('Control+Home')
    for (let step = 0; step < 5; step++) await page.keyboard.press('ArrowDown')
    for (let step = 0; step < 2; step++) await page.keyboard.press('ArrowRight')
    await type(app, '180')
    expect(await shown(page, 'C6', /180/)).toBe('180')
    const after = await shown(page, 'C16', new RegExp(`^\\s*(?!${before}\\b)\\d+\\s*$`))
    expect(Number(after)).toBeGreaterThan(Number(before))

    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: /\.xlsx/ }).click()
    const file = await kept(await download)
    // Read by the tests' own reader of zip and XML, not by what wrote it.
    const parts = readZip(await readFile(file))
    // The first sheet is the cover.
    const sheet = xmlCells(parts.get('xl/worksheets/sheet2.xml') ?? '')
    expect(Number(sheet.get('C6')?.value)).toBe(180)
    expect(Number(sheet.get('C16')?.value)).toBe(Number(after))
    await sound(app)
  })

  it('undoes and redoes, by key and by button', async () => {
    const app = await openApp()
    const { page } = app
    const before = await shown(page, 'C16', /^\s*\d+\s*$/)
    await cellAt(page, 'C6').click()
    await type(app, '180')
    const after = await shown(page, 'C16', new RegExp(`^\\s*(?!${before}\\b)\\d+\\s*$`))
    await page.keyboard.press('Control+z')
    expect(await shown(page, 'C16', new RegExp(`^\\s*${before}\\s*$`))).toBe(before)
    await page.getByRole('button', { name: 'Redo' }).click()
    expect(await shown(page, 'C16', new RegExp(`^\\s*${after}\\s*$`))).toBe(after)
    await sound(app)
  })

  it('says in words what is wrong with an entry, and keeps what was typed', async () => {
    const app = await openApp()
    const { page } = app
    await cellAt(page, 'C14').click()
    await type(app, '=SAT.PRESSURE(31,"psig")')
    await cellAt(page, 'C14').click()
    expect(await shown(page, 'C14', /#VALUE!/)).toContain('#VALUE!')
    await page.getByRole('complementary', { name: 'Side panel' }).getByText('temperature needs a unit: write C5:D5 or "31 °F"').first().waitFor()
    expect(await page.getByRole('region', { name: 'Entry line' }).getByRole('textbox').last().inputValue()).toBe('=SAT.PRESSURE(31,"psig")')
    await sound(app)
  })

  it('shows a check that is not met with its margin, and the sheet list says so', async () => {
    const app = await openApp()
    const { page } = app
    const sheets = page.getByRole('navigation', { name: 'Sheets' })
    await sheets.getByText('Vertical drum').click()
    // An own inside diameter, too small for the velocity allowed.
    await cellAt(page, 'C8').click()
    await type(app, '20')
    await sheets.getByText(/not met/).first().waitFor()
    await page.keyboard.press('Control+End')
    for (let step = 0; step < 3; step++) await page.keyboard.press('ArrowLeft')
    await page.getByRole('gridcell').filter({ hasText: /not met by [\d.]+ ft\/min/ }).waitFor()
    await sound(app)
  })

  it('saves to a file that reads back with the change, and opens it again', async () => {
    const app = await openApp()
    const { page } = app
    await cellAt(page, 'C6').click()
    await type(app, '61.5')
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save' }).click()
    const file = await download
    const path = await kept(file)
    const read = readWorkbook(await readFile(path, 'utf8'))
    if (!('workbook' in read)) throw new Error(read.problems[0]?.message)
    expect(cellOf(read.workbook, 'Duty', 5, 2)?.content).toBe(61.5)
    expect(file.suggestedFilename()).toMatch(/\.lowside\.json$/)

    const chooser = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'Open' }).click()
    await (await chooser).setFiles({ name: 'again.lowside.json', mimeType: 'application/json', buffer: await readFile(path) })
    expect(await shown(page, 'C6', /61\.5/)).toBe('61.5')
    await sound(app)
  })

  it('refuses a damaged file with its place, and leaves the open workbook as it was', async () => {
    const app = await openApp()
    const { page } = app
    const chooser = page.waitForEvent('filechooser')
    await page.getByRole('button', { name: 'Open' }).click()
    const damaged = '{"lowside": 1, "title": "x", "sheets": [\n {"name": "S", "cells": {\n  "C9": [1, "resul"]}}]}'
    await (await chooser).setFiles({ name: 'bad.lowside.json', mimeType: 'application/json', buffer: Buffer.from(damaged) })
    await page.getByRole('dialog').getByText(/line 3.*C9.*unknown role "resul"/).waitFor()
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click()
    expect(await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()).toBe('Tallowmere surge drum SD-3')
    await sound(app)
  })

  it('restates in SI units in one step, which one undo takes back', async () => {
    const app = await openApp()
    const { page } = app
    await page.getByRole('button', { name: 'Restate' }).click()
    await page.getByRole('menuitem', { name: 'Restate in SI' }).click()
    await settled(page)
    expect(await shown(page, 'D6', /kW/)).toBe('kW')
    expect(await shown(page, 'D16', /mm/)).toBe('mm')
    await page.getByRole('button', { name: /^Undo/ }).click()
    expect(await shown(page, 'D6', /TR/)).toBe('TR')
    await sound(app)
  })

  it('starts from a template', async () => {
    const app = await openApp()
    const { page } = app
    await page.getByRole('button', { name: 'Start from a template' }).click()
    await page.getByRole('dialog').getByText('Surge drum sizing').click()
    await settled(page)
    expect(await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()).toBe('Surge drum sizing')
    await sound(app)
  })
})
