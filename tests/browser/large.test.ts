import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { emptySheet, type Cell, type Workbook } from '../../src/workbook/document.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { cellAt, enter, openApp, openBlank, settled, shown, useBrowser } from './app.ts'

useBrowser()

const ROWS = 30_000

/** Diameters in one unit that stands in the header, and areas that all depend on it. */
function inventory(): Buffer {
  const cell = (content: number | string, role: Cell['role']): Cell => ({ content, role })
  const rows = Array.from({ length: ROWS }, (_, at) => [
    cell(`V-${at + 1}`, 'label'), cell(10 + (at % 60), 'input'), cell(`=UNIT.CONVERT(B${at + 2}&B$1,C$1)`, 'result'), cell(`=UNIT.CONVERT(C${at + 2}&C$1,"m")*2`, 'result'),
    ...['ft', 'yd', 'cm'].map((unit) => cell(`=UNIT.CONVERT(B${at + 2}&B$1,"${unit}")`, 'result')),
  ])
  const workbook: Workbook = {
    title: 'Long list', purpose: '', names: new Map(), figures: [],
    sheets: [{ ...emptySheet('Inventory'), frozen: [1, 1], rows: [[cell('Vessel', 'heading'), cell('in', 'unit'), cell('mm', 'unit'), cell('m', 'unit')], ...rows] }],
  }
  return Buffer.from(writeWorkbook(workbook))
}
const file = { name: 'long.lowside.json', mimeType: 'application/json', buffer: inventory() }

async function choose(page: Page): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open' }).click()
  await (await chooser).setFiles(file)
}

const bar = (page: Page) => page.getByRole('progressbar')
const activeCell = (page: Page) => page.getByRole('grid').getAttribute('aria-activedescendant')

/** Runs in the page: notes the time between frames. */
function watchFrames(): void {
  const gaps: number[] = []
  let last = performance.now()
  const frame = (): void => {
    const now = performance.now()
    gaps.push(now - last)
    last = now
    requestAnimationFrame(frame)
  }
  requestAnimationFrame(frame)
  Reflect.set(window, 'gaps', gaps)
}

/** The longest time without a frame, as a part of all the time watched. */
async function longestGap(page: Page): Promise<number> {
  const gaps = await page.evaluate(() => Reflect.get(window, 'gaps') as number[])
  return Math.max(...gaps) / gaps.reduce((sum, gap) => sum + gap, 0)
}

const isKept = (page: Page) => page.getByRole('note', { name: 'Kept' }).filter({ hasText: /^Kept in this browser$/ }).waitFor()

describe('a large workbook', () => {
  it('opens with its progress shown while the screen goes on; a stop leaves the open workbook as it was', async () => {
    const { page, trouble } = await openApp()
    await openBlank(page)
    await enter(page, 'A1', '2')
    await enter(page, 'A2', '=A1*2')

    await choose(page)
    await bar(page).waitFor()
    expect(await bar(page).getAttribute('aria-label')).toMatch(/long\.lowside\.json$/)
    await page.getByRole('grid').focus()
    await page.keyboard.press('Escape')
    await bar(page).waitFor({ state: 'detached' })
    expect(await page.getByText('long.lowside.json was not opened: stopped').isVisible()).toBe(true)
    expect(await shown(page, 'A2', /4/)).toBe('4')
    await enter(page, 'A1', '5')
    expect(await shown(page, 'A2', /10/)).toBe('10')

    await page.evaluate(watchFrames)
    await choose(page)
    await bar(page).waitFor()
    await page.getByRole('grid').focus()
    const before = await activeCell(page)
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => activeCell(page)).not.toBe(before)
    // Still the former workbook, and still under way.
    expect(await page.getByRole('grid', { name: 'Sheet Sheet' }).count()).toBe(1)
    expect(await bar(page).count()).toBe(1)

    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)
    // 10 in are 254 mm (NIST SP 811, appendix B.8: 1 in = 25.4 mm exactly).
    expect(await shown(page, 'C2', /254/)).toBe('254')
    await page.getByRole('grid').focus()
    await page.keyboard.press('Control+ArrowDown')
    // The last diameter is 10 + 29 999 % 60 = 69 in: 1.7526 m, and twice that.
    expect(await shown(page, `D${ROWS + 1}`, /\d/)).toBe('3.5052')
    expect(await longestGap(page)).toBeLessThan(1 / 4)
    expect(trouble).toEqual([])
  })

  it('takes what is typed while it recalculates; recalculating and an export can be stopped', async () => {
    const { page, trouble } = await openApp()
    await choose(page)
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)

    // What the bottom line says at the moment in which a typed number comes to be shown.
    await page.evaluate(() => {
      const target = document.querySelector('[role=row][aria-rowindex="4"]:not([hidden]) [role=gridcell][aria-colindex="3"]')
      if (target) new MutationObserver(() => {
        if (target.textContent === '77') Reflect.set(window, 'stateThen', document.querySelector('[aria-label=Recalculation]')?.textContent)
      }).observe(target, { characterData: true, childList: true, subtree: true })
    })
    await cellAt(page, 'B3').click()
    await cellAt(page, 'B1').click()
    await page.keyboard.type('cm')
    await page.keyboard.press('Enter')
    await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'Recalculating' }).waitFor()
    await cellAt(page, 'B3').click()
    await page.keyboard.type('77')
    await page.keyboard.press('Enter')
    await shown(page, 'B3', /77/)
    await settled(page)
    expect(await page.evaluate(() => Reflect.get(window, 'stateThen') as unknown)).toBe('Recalculating')
    expect(await shown(page, 'C3', /770/)).toBe('770')
    expect(await shown(page, 'C4', /120/)).toBe('120')

    await cellAt(page, 'B1').click()
    await page.keyboard.type('in')
    await page.keyboard.press('Enter')
    await bar(page).waitFor()
    await page.keyboard.press('Escape')
    await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'stopped: values may be out of date' }).waitFor()
    expect(await shown(page, 'C4', /\d/)).toBe('120')
    expect(await cellAt(page, 'C4').evaluate((cell) => getComputedStyle(cell).fontStyle)).toBe('italic')
    // What is entered meanwhile counts as well.
    await cellAt(page, 'B4').click()
    await page.keyboard.type('20')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Recalculate' }).click()
    await settled(page)
    // 20 in and 13 in (NIST SP 811).
    expect(await shown(page, 'C4', /508/)).toBe('508')
    expect(await shown(page, 'C5', /330/)).toBe('330.2')

    const downloads: string[] = []
    page.on('download', (download) => downloads.push(download.suggestedFilename()))
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: /\.xlsx/ }).click()
    await bar(page).waitFor()
    expect(await bar(page).getAttribute('aria-label')).toMatch(/Exporting/)
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await page.getByText('Stopped: nothing was written').waitFor()
    await bar(page).waitFor({ state: 'detached' })
    expect(downloads).toEqual([])
    // The thread that computes has been left alone.
    await enter(page, 'B4', '10')
    expect(await shown(page, 'C4', /254/)).toBe('254')
    expect(trouble).toEqual([])
  })

  it('writes a file with its workings while the screen goes on, and says how far it is', async () => {
    const { page, trouble } = await openApp()
    await choose(page)
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)

    await page.evaluate(watchFrames)
    await page.evaluate(() => {
      const shares: number[] = []
      Reflect.set(window, 'shares', shares)
      const look = (): void => {
        const value = document.querySelector('[role=progressbar], progress')?.getAttribute('value')
        if (value != null && shares.at(-1) !== Number(value)) shares.push(Number(value))
        requestAnimationFrame(look)
      }
      requestAnimationFrame(look)
    })
    const download = page.waitForEvent('download', { timeout: 170_000 })
    await page.getByRole('button', { name: 'Export' }).click()
    await page.getByRole('menuitem', { name: /\.xlsx/ }).click()
    await bar(page).waitFor()
    // The grid answers meanwhile.
    await page.getByRole('grid').focus()
    const before = await activeCell(page)
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => activeCell(page)).not.toBe(before)
    expect(await bar(page).count()).toBe(1)

    expect((await download).suggestedFilename()).toMatch(/\.xlsx$/)
    await bar(page).waitFor({ state: 'detached' })
    const shares = await page.evaluate(() => Reflect.get(window, 'shares') as number[])
    expect(shares.length).toBeGreaterThan(10)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(await longestGap(page)).toBeLessThan(1 / 10)
    expect(trouble).toEqual([])
  })

  it('comes back on a reload with its edits while the screen goes on; a stop leaves it among the recent ones', async () => {
    const { page, trouble } = await openApp()
    await choose(page)
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)
    await isKept(page)
    await enter(page, 'B3', '77')
    await isKept(page)

    await page.addInitScript(watchFrames)
    await page.reload()
    await bar(page).filter({ visible: true }).waitFor()
    expect(await bar(page).getAttribute('aria-label')).toMatch(/Long list$/)
    // What is typed before it is there would go to no workbook.
    await page.getByRole('grid').focus()
    await page.keyboard.type('5')
    await page.keyboard.press('Enter')
    await page.getByRole('alert').getByText('still being opened').waitFor()
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)
    // 77 in are 1955.8 mm (NIST SP 811, appendix B.8: 1 in = 25.4 mm exactly).
    expect(await shown(page, 'C3', /\d/)).toBe('1955.8')
    expect(await longestGap(page)).toBeLessThan(1 / 4)
    await isKept(page)

    await page.reload()
    await bar(page).waitFor()
    await page.getByRole('grid').focus()
    await page.keyboard.press('Escape')
    await page.getByText('“Long list” was not opened: stopped. It stays among the recent workbooks').waitFor()
    await settled(page)
    expect(await page.getByRole('grid', { name: 'Sheet Duty' }).count()).toBe(1)

    await page.getByRole('button', { name: 'Recent' }).click()
    await page.getByRole('dialog', { name: 'Recent workbooks' }).getByRole('button', { name: /^Long list/ }).click()
    // It is worth a while: the list gives way to the screen, which can stop it.
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await bar(page).waitFor()
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)
    expect(await shown(page, 'C3', /\d/)).toBe('1955.8')
    expect(trouble).toEqual([])
  })

  it('is looked through while the screen goes on: first results at once, all of them at the end, or those until a stop', async () => {
    const { page, trouble } = await openApp()
    await choose(page)
    await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor()
    await settled(page)
    await page.keyboard.press('Control+f')
    const count = page.locator('.find-count')
    await page.getByRole('radio', { name: 'what is shown' }).check()
    await page.evaluate(watchFrames)
    // A slow machine: on a quick one the search is over before it has anything to say of its way.
    const machine = await page.context().newCDPSession(page)
    await machine.send('Emulation.setCPUThrottlingRate', { rate: 10 })
    await page.getByRole('textbox', { name: 'Text' }).fill('254')
    await count.filter({ hasText: /so far$/ }).waitFor()
    expect(await page.getByRole('list', { name: 'Cells found' }).getByRole('button').first().textContent()).toContain('Inventory!C2')
    await count.filter({ hasText: /are listed$/ }).waitFor()
    const whole = await count.textContent()
    // Ten times as slow, it still does not stand still for long.
    expect(await longestGap(page)).toBeLessThan(1 / 4)

    await page.getByRole('textbox', { name: 'Text' }).fill('25')
    await bar(page).waitFor()
    expect(await bar(page).getAttribute('aria-label')).toMatch(/^Looking through/)
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await count.filter({ hasText: /until the search was stopped$/ }).waitFor()
    await bar(page).waitFor({ state: 'detached' })
    // Looked for anew, it is as before.
    await page.getByRole('textbox', { name: 'Text' }).fill('254')
    await count.filter({ hasText: whole ?? 'no count' }).waitFor()
    expect(trouble).toEqual([])
  })
})
