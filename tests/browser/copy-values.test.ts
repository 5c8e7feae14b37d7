import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, openApp, openBlank, settled, shown, useBrowser, type Opened } from './app.ts'

useBrowser()

const ROWS = 400
/** Numbers in A, twice each in B: far more rows than are in view, or read together with those in view. */
const LINES = Array.from({ length: ROWS }, (_, at) => `${at + 1}\t=A${at + 1}*2`).join('\n')
const DOUBLES = Array.from({ length: ROWS }, (_, at) => `${(at + 1) * 2}`)

async function openDoubles(): Promise<Opened> {
  const app = await openApp()
  const { page } = app
  await openBlank(page)
  await app.context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await cellAt(page, 'A1').click()
  await page.getByRole('grid').evaluate((grid, text) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, LINES)
  // The end of what was pasted is in view now.
  await settled(page)
  await page.keyboard.press('Control+Home')
  await cellAt(page, 'B1').click()
  await shown(page, 'B1', /^2$/)
  await settled(page)
  await page.keyboard.press('Control+Shift+ArrowDown')
  await expect.poll(() => page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe(`B1:B${ROWS}`)
  await page.getByRole('grid').focus()
  return app
}

const clipboard = (page: Page): Promise<string[]> => page.evaluate(async () => (await navigator.clipboard.readText()).trimEnd().split(/\r?\n/))

describe('copying formulas whose values are out of view', () => {
  it('gives other programs every value, and pastes here as formulas', async () => {
    const app = await openDoubles()
    const { page } = app
    await page.keyboard.press('Control+c')
    await expect.poll(() => clipboard(page)).toEqual(DOUBLES)
    await page.keyboard.press('Control+Home')
    await cellAt(page, 'D1').click()
    await page.keyboard.press('Control+v')
    // The reference has moved along by two columns, to what was computed: twice nothing.
    await expect.poll(() => page.getByRole('textbox', { name: 'Content' }).inputValue()).toBe('=C1*2')
    await page.context().close()
    expect(app.trouble).toEqual([])
  })

  it('where the browser refuses, says so, and takes the values when one copies again', async () => {
    const app = await openDoubles()
    const { page } = app
    await page.evaluate(() => {
      Clipboard.prototype.write = () => Promise.reject(new DOMException('not now', 'NotAllowedError'))
    })
    await page.keyboard.press('Control+c')
    await page.getByRole('alert').getByText('copy again').waitFor()
    await page.keyboard.press('Control+c')
    await expect.poll(() => clipboard(page)).toEqual(DOUBLES)
    await expect.poll(() => page.getByRole('alert').textContent()).toBe('')
    await page.context().close()
    expect(app.trouble).toEqual([])
  })
})
