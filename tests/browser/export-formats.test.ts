import { mkdtemp, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Papa from 'papaparse'
import type { Download, Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { readZip } from '../unit/read-zip.ts'
import { openSheets } from '../workings/open-document.ts'
import { enter, openApp, shown, useBrowser } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

/** Chooses from the menu Export by keyboard, so many items down from its first. */
async function exported(page: Page, down: number, words: RegExp): Promise<Download> {
  await page.getByRole('button', { name: 'Export' }).focus()
  await page.keyboard.press('Enter')
  for (let step = 0; step < down; step++) await page.keyboard.press('ArrowDown')
  expect(await page.locator(':focus').textContent()).toMatch(words)
  const download = page.waitForEvent('download')
  await page.keyboard.press('Enter')
  const file = await download
  expect(await page.locator(':focus').getAttribute('aria-expanded')).toBe('false')
  return file
}

async function bytesOf(download: Download): Promise<Uint8Array> {
  const path = join(await mkdtemp(join(tmpdir(), 'lowside-')), download.suggestedFilename())
  await download.saveAs(path)
  return readFile(path)
}

it('exports to OpenDocument what the screen shows, by keyboard', async () => {
  const app = await openApp()
  const { page } = app
  await enter(page, 'C6', '180')
  const diameter = await shown(page, 'C16', /^\s*\d+\s*$/)
  const file = await exported(page, 1, /Spreadsheet \(\.ods\)/)
  expect(file.suggestedFilename()).toBe('Tallowmere surge drum SD-3.ods')
  const bytes = await bytesOf(file)
  await page.getByText('Exported to an OpenDocument spreadsheet').waitFor()
  const duty = openSheets(bytes).get('Duty')?.cells
  expect(duty?.get('C6')?.attributes.get('office:value')).toBe('180')
  expect(Number(duty?.get('C16')?.attributes.get('office:value'))).toBe(Number(diameter))
  await sound(app)
})

it('exports the values, a file a sheet in one zip file, by keyboard', async () => {
  const app = await openApp()
  const { page } = app
  await enter(page, 'C6', '180')
  const diameter = await shown(page, 'C16', /^\s*\d+\s*$/)
  const file = await exported(page, 2, /Values \(\.csv, a file a sheet\)/)
  expect(file.suggestedFilename()).toBe('Tallowmere surge drum SD-3.csv.zip')
  const parts = readZip(await bytesOf(file))
  await page.getByText('Exported the values, a file a sheet').waitFor()
  expect([...parts.keys()]).toEqual(expect.arrayContaining(['README.txt', 'csv-metadata.json', 'Duty.csv', 'Cautions.csv']))
  const rows = Papa.parse<string[]>(parts.get('Duty.csv') ?? '').data
  expect(rows[5]?.[2]).toBe('180')
  expect(Number(rows[15]?.[2])).toBe(Number(diameter))
  await sound(app)
})
