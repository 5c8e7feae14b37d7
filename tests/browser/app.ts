import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium, type Browser, type BrowserContext, type Locator, type Page } from 'playwright-core'
import { afterAll, beforeAll, inject } from 'vitest'
import { parseAddress } from '../../src/workbook/address.ts'

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** Console errors, page errors, policy violations and requests to elsewhere, as they come. A test ends with this list empty. */
  readonly trouble: readonly string[]
  /** Requests made after the page had loaded. */
  readonly lateRequests: readonly string[]
}

const ONE_DRUM = readFileSync(fileURLToPath(new URL('one-drum.lowside.json', import.meta.url)), 'utf8')

let browser: Browser | undefined

/** Connects the tests of a file to the one browser of the run. */
export function useBrowser(): void {
  beforeAll(async () => {
    browser = await chromium.connect(inject('browserUrl'))
  })
  afterAll(async () => {
    await browser?.close()
  })
}

/** What a page opens first: one drum, whose few cells the tests know, or the demo plant as it comes with Lowside. */
export type First = 'one drum' | 'demo plant'

/** A fresh page on the built app, with a workbook open and calculated. */
export async function openApp(viewport = { width: 1280, height: 720 }, first: First = 'one drum'): Promise<Opened> {
  if (browser === undefined) throw new Error('call useBrowser() at the top of the test file')
  const appUrl = inject('appUrl')
  const context = await browser.newContext({ viewport, acceptDownloads: true })
  const page = await context.newPage()
  const trouble: string[] = []
  const lateRequests: string[] = []
  let loaded = false
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') trouble.push(`console: ${message.text()}`)
  })
  page.on('pageerror', (error) => trouble.push(`page: ${error.message}`))
  page.on('request', (request) => {
    const url = request.url()
    if (url.startsWith('blob:') || url.startsWith('data:')) return
    if (!url.startsWith(appUrl)) trouble.push(`request to elsewhere: ${url}`)
    if (loaded) lateRequests.push(url)
  })
  // A save dialog of the operating system cannot be driven: without it the app downloads.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
  if (first === 'one drum') await startWithOneDrum(page)
  await page.goto(appUrl)
  await page.locator('.title-place:not([data-title="Untitled"])').waitFor()
  await settled(page)
  await page.waitForLoadState('networkidle')
  loaded = true
  return { page, context, trouble, lateRequests }
}

/** Opens a workbook without any cell in place of the demo. */
export async function openBlank(page: Page): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open' }).click()
  const blank = '{"lowside": 1, "title": "Blank", "sheets": [{"name": "Sheet", "cells": {}}]}'
  await (await chooser).setFiles({ name: 'blank.lowside.json', mimeType: 'application/json', buffer: Buffer.from(blank) })
  await page.getByRole('grid', { name: 'Sheet Sheet' }).waitFor()
  await settled(page)
}

/** Puts one drum in the place of the demo plant, which takes longer to open. */
export async function startWithOneDrum(page: Page): Promise<void> {
  await page.route('**/assets/tallowmere.lowside-*.json', (route) => route.fulfill({ contentType: 'application/json', body: ONE_DRUM }))
}

/** Waits until no recalculation is under way. The words come some moments after it has begun, the grid's attribute at once. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[role=grid]:not([aria-busy=true])').waitFor({ state: 'attached' })
  await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor()
}

/** Types over a cell in view and enters it; done once everything is calculated. */
export async function enter(page: Page, address: string, text: string): Promise<void> {
  await cellAt(page, address).click()
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
  await settled(page)
}

/** A cell in view by its address. */
export function cellAt(page: Page, address: string): Locator {
  const at = parseAddress(address)
  if (at === undefined) throw new Error(`${address} is no address`)
  // The header row and the column of row numbers come first.
  return page.locator(`[role=row][aria-rowindex="${at.row + 2}"]:not([hidden]) [role=gridcell][aria-colindex="${at.column + 2}"]`)
}

/** What a cell in view shows, once it shows something that fits. */
export async function shown(page: Page, address: string, fits: RegExp): Promise<string> {
  const cell = cellAt(page, address).filter({ hasText: fits })
  await cell.waitFor()
  return ((await cell.textContent()) ?? '').trim()
}
