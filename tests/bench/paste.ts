import type { Browser, Page } from 'playwright-core'
import { median } from './measure.ts'

const ROWS = 10_000

/** Text of another program, 10 000 rows of six columns, one of them formulas, pasted into an empty sheet: the longest time between two frames, of several pastes. */
export async function pasting(browser: Browser, url: string): Promise<{ readonly longestMs: number; readonly restMs: number }> {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 720 } })).newPage()
  await page.addInitScript('globalThis.__name = (named) => named')
  await page.goto(url)
  await settled(page)
  await page.getByRole('button', { name: 'Start from a template' }).click()
  await page.getByRole('dialog').getByText('Empty workbook').click()
  await page.getByRole('grid', { name: 'Sheet Sheet' }).waitFor()
  const restMs = median(await frameTimes(page, 0))
  const longest: number[] = []
  for (let round = 0; round < 5; round++) {
    await page.keyboard.press('Control+Home')
    await settled(page)
    longest.push(Math.max(...(await frameTimes(page, ROWS))))
    await settled(page)
    await page.keyboard.press('Control+z')
  }
  await page.context().close()
  // The first paste also waits for the browser to compile what it runs.
  return { longestMs: median(longest.slice(1)), restMs }
}

const settled = (page: Page): Promise<void> => page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor()

/** Times between frames from the paste of so many rows on, until half a second after the last of them is shown; of a second at rest where there are none. */
const frameTimes = (page: Page, rows: number): Promise<number[]> =>
  page.evaluate((count) => new Promise<number[]>((resolve) => {
    const grid = document.querySelector<HTMLElement>('[role=grid]')
    if (grid === null) throw new Error('there is no grid to paste into')
    grid.focus()
    const text = Array.from({ length: count }, (_, row) => `V-${row + 1}\t${row + 1}\tft3\t=B${row + 1}*2\tzone ${row % 9}\t-40`).join('\r\n')
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    const times: number[] = []
    let last = 0
    let until = count === 0 ? 1000 : Infinity
    let begun = 0
    const frame = (): void => {
      const now = performance.now()
      if (last === 0) {
        begun = now
        if (count > 0) setTimeout(() => grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })))
      } else times.push(now - last)
      last = now
      const isShown = count > 0 && [...document.querySelectorAll('[role=gridcell]')].some(({ textContent }) => textContent === `V-${count}`)
      if (isShown && until === Infinity) until = now - begun + 500
      if (now - begun < until) requestAnimationFrame(frame)
      else resolve(times)
    }
    requestAnimationFrame(frame)
  }), rows)
