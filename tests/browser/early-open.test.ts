import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { describe, expect, inject, it } from 'vitest'

const LARGE = fileURLToPath(new URL('../../demo-data/tallowmere.lowside.json', import.meta.url))
const SMALL = fileURLToPath(new URL('one-drum.lowside.json', import.meta.url))
const titleOf = (path: string): string => (JSON.parse(readFileSync(path, 'utf8')) as { readonly title: string }).title

describe('a file opened while the first workbook is still on its way', () => {
  it.each([['small', SMALL], ['large', LARGE]])('stands there in its place: a %s one', async (_, path) => {
    const browser = await chromium.connect(inject('browserUrl'))
    const context = await browser.newContext()
    try {
      const page = await context.newPage()
      await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'))
      // The demo is slow to come, so that the file is chosen before it is there.
      await page.route('**/tallowmere*', async (route) => {
        await new Promise((resolve) => setTimeout(resolve, 1500))
        await route.continue()
      })
      await page.goto(inject('appUrl'))
      const chooser = page.waitForEvent('filechooser')
      await page.getByRole('button', { name: 'Open', exact: true }).click()
      const copy = { name: 'mine.lowside.json', mimeType: 'application/json', buffer: Buffer.from(readFileSync(path, 'utf8').replace(titleOf(path), 'Mine')) }
      await (await chooser).setFiles(copy)
      const mine = page.locator('.title-place[data-title="Mine"]')
      await mine.waitFor()
      await page.waitForTimeout(4000)
      expect(await mine.count()).toBe(1)
    } finally {
      await context.close()
      await browser.close()
    }
  })
})
