import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, inject, it, onTestFinished } from 'vitest'
import { cellAt, startWithOneDrum } from './app.ts'
import { startKillable } from './killed-browser.ts'

/** Each takes a second or two: `KILLS=200 npx vitest run tests/browser/killed.test.ts` runs as many as the project asks of itself. */
const KILLS = Number(process.env['KILLS'] ?? 8)
/** Browsers side by side, each with a profile of its own, since each mostly waits. */
const LANES = 2
/** Milliseconds of editing before a kill, at most. */
const LONGEST_MS = 500

describe('a killed browser', () => {
  it(`loses nothing that was shown as kept, and damages nothing, in ${KILLS} kills while editing`, { timeout: KILLS * 10_000 + 60_000 }, async () => {
    const lanes = await Promise.all(Array.from({ length: LANES }, (_, lane) => editAndKill(Math.floor((KILLS + lane) / LANES))))
    const edits = lanes.reduce((sum, lane) => sum + lane.edits, 0)
    console.info(`${KILLS} kills, ${edits} edits`)
    expect(lanes.flatMap(({ losses }) => losses)).toEqual([])
    // Otherwise nothing was put to the test.
    expect(edits).toBeGreaterThan(KILLS)
  })
})

/** Edits the same workbook again and again, each time until the browser is killed; says what was not there afterwards. */
async function editAndKill(kills: number): Promise<{ readonly edits: number; readonly losses: readonly string[] }> {
  const profile = await mkdtemp(join(tmpdir(), 'lowside-killed-'))
  onTestFinished(() => rm(profile, { recursive: true, force: true }))
  const losses: string[] = []
  let acknowledged = 0
  let entered = 0
  for (let kill = 0; kill <= kills; kill++) {
    const { page, kill: end } = await startKillable(profile)
    onTestFinished(end)
    await startWithOneDrum(page)
    await page.goto(inject('appUrl'))
    const found = await recovered(page)
    if (found < acknowledged) losses.push(`kill ${kill}: ${acknowledged} was shown as kept, ${found} is there`)
    // It may be more than was heard of: the kill cuts off what the page had still to say.
    acknowledged = entered = found
    if (kill < kills) {
      await page.exposeBinding('report', (_, number: number, isKept: boolean) => {
        entered = Math.max(entered, number)
        if (isKept) acknowledged = number
      })
      await startEditing(page, found)
      await new Promise((resolve) => setTimeout(resolve, Math.random() * LONGEST_MS))
    }
    await end()
  }
  return { edits: entered, losses }
}

/** The number last entered, after looking whether the workbook is whole. */
async function recovered(page: Page): Promise<number> {
  await cellAt(page, 'A56').waitFor()
  await page.getByRole('note', { name: 'Kept' }).filter({ hasText: /^Kept in this browser$/ }).waitFor()
  expect(await page.getByRole('alert').textContent()).toBe('')
  expect(await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()).toBe('Tallowmere surge drum SD-3')
  await cellAt(page, 'C16').filter({ hasText: /^\s*\d+\s*$/ }).waitFor()
  const [one, other] = await Promise.all(['A56', 'B56'].map((address) => cellAt(page, address).textContent()))
  // Both are entered in one action: never one without the other.
  expect(one).toBe(other)
  expect(one).toMatch(/^\s*\d*\s*$/)
  return Number(one)
}

/** Enters one number after another, each into two cells at once, and reports those that are shown as kept. */
async function startEditing(page: Page, from: number): Promise<void> {
  await cellAt(page, 'A56').click()
  await page.evaluate((start) => {
    const { report } = globalThis as unknown as { report(number: number, isKept: boolean): Promise<void> }
    const grid = document.querySelector('[role=grid]')
    const kept = document.querySelector('[aria-label=Kept]')
    let number = start
    void (async () => {
      for (;;) {
        // One action, or a few in a row faster than the disk.
        for (let burst = Math.ceil(Math.random() * 4); burst > 0; burst--) {
          const clipboardData = new DataTransfer()
          number++
          void report(number, false)
          clipboardData.setData('text/plain', `${number}\t${number}`)
          grid?.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
        }
        while (kept?.textContent !== 'Kept in this browser') await new Promise((resolve) => setTimeout(resolve))
        void report(number, true)
      }
    })()
  }, from)
}
