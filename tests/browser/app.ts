import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { afterAll, beforeAll, inject } from 'vitest'

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** Console errors, page errors, policy violations and requests to elsewhere, as they come. A test ends with this list empty. */
  readonly trouble: readonly string[]
  /** Requests made after the page had loaded. */
  readonly lateRequests: readonly string[]
}

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

/** A fresh page on the built app, with the demo open and calculated. */
export async function openApp(viewport = { width: 1280, height: 720 }): Promise<Opened> {
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
  await page.goto(appUrl)
  await page.getByRole('grid').waitFor()
  await page.waitForLoadState('networkidle')
  loaded = true
  return { page, context, trouble, lateRequests }
}
