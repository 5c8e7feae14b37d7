import { describe, expect, it } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { cellAt, enter, openApp, settled, shown, useBrowser } from './app.ts'
import { withVessels } from '../review/clean.ts'
import { findings as accessFindings } from './axe.ts'
import { sound } from './sound.ts'

useBrowser()

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
const panel = (page: Page) => page.getByRole('region', { name: 'Findings', exact: true })
const state = (page: Page) => panel(page).getByRole('status')
const kind = (page: Page, heading: string) => panel(page).getByRole('list', { name: heading })
const current = (page: Page) => panel(page).locator('[aria-current=true]')

/** Looking takes longer than a moment on a loaded machine. */
const PATIENT = { timeout: 30_000 }

/** Looked for as the workbook is now. */
async function looked(page: Page): Promise<string> {
  await state(page).filter({ hasText: /^(Open|Nothing)[^;]*(; \d+ accepted)?$/ }).waitFor()
  return (await state(page).textContent()) ?? ''
}

async function openFindings(page: Page): Promise<void> {
  await button(page, 'Findings').focus()
  await page.keyboard.press('Enter')
  await looked(page)
}

async function accept(form: Locator, name: string, note: string): Promise<void> {
  await form.getByRole('textbox', { name: 'Name' }).fill(name)
  await form.getByRole('textbox', { name: /^Note/ }).fill(note)
  await form.getByRole('button', { name: 'Accept', exact: true }).press('Enter')
}

describe('findings', () => {
  it('are looked for as cells change, walked through by keys, and the grid goes along while the focus stays', async () => {
    const opened = await openApp()
    const { page } = opened
    await openFindings(page)
    await enter(page, 'C6', '=1/0')
    await kind(page, 'Cells with errors').getByRole('button', { name: /Duty!C6/ }).waitFor()
    await looked(page)
    expect(await state(page).textContent()).toMatch(/^Open: 1 error/)
    await page.getByRole('navigation', { name: 'Sheets' }).getByText(/\d+ findings?$/).first().waitFor()

    await cellAt(page, 'C9').click()
    await button(page, 'Next finding').focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => cellAt(page, 'C6').getAttribute('class')).toContain('active')
    expect(await current(page).textContent()).toMatch(/^error Duty!C6/)
    // The focus stays in the panel, and goes along the list by keys.
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Next finding')
    await page.keyboard.press('End')
    const last = await current(page).textContent()
    expect(last).not.toMatch(/Duty!C6/)
    expect(await page.evaluate(() => document.activeElement?.classList.contains('review-go'))).toBe(true)
    await page.keyboard.press('ArrowDown')
    expect(await current(page).textContent()).toMatch(/Duty!C6/)
    await page.keyboard.press('ArrowUp')
    expect(await current(page).textContent()).toBe(last)
    await page.keyboard.press('Home')

    // Errors alone, by their shape and word.
    await button(page, /^\d+ remarks?$/).click()
    await button(page, /^\d+ warnings?$/).click()
    expect(await panel(page).locator('.findings-group .review-item').count()).toBe(1)
    await button(page, /^\d+ warnings?$/).click()
    expect(await accessFindings(page)).toEqual([])

    await button(page, 'Undo').click()
    await settled(page)
    await expect.poll(() => kind(page, 'Cells with errors').count(), PATIENT).toBe(0)

    // Put away, they stand in the sheet list as they were, and say that they are of before.
    await button(page, 'Why').click()
    await enter(page, 'C6', '90')
    await page.getByRole('navigation', { name: 'Sheets' }).locator('.sheet-findings.old').first().waitFor()
    await sound(opened)
  })

  it('a formula that was typed over is put back, as one step; a finding is accepted with a note, which stands in the saved file, and opened again', async () => {
    const opened = await openApp({ width: 1280, height: 720 }, 'demo plant')
    const { page } = opened
    await enter(page, 'C16', '181')
    await openFindings(page)
    const typedOver = kind(page, 'Values typed where a formula belongs').getByRole('button', { name: /Basis!C16/ })
    await typedOver.click()
    const putBack = panel(page).getByRole('button', { name: /formula back/ })
    await putBack.click()
    await settled(page)
    await shown(page, 'C16', /186\.6/)
    await expect.poll(() => typedOver.count(), PATIENT).toBe(0)
    await button(page, 'Undo').click()
    await shown(page, 'C16', /^181/)
    await typedOver.waitFor()
    await looked(page)

    // Without a note it is not accepted, and the form says what is missing.
    await typedOver.click()
    await button(page, 'Accept with a note…').press('Enter')
    const form = panel(page).getByRole('form', { name: 'Accept Basis!C16' })
    await form.getByRole('textbox', { name: 'Name' }).fill('R. Ames')
    const verb = form.getByRole('button', { name: 'Accept', exact: true })
    expect(await verb.getAttribute('aria-disabled')).toBe('true')
    await form.getByText('Still needed: a note that says why it may stand.').waitFor()
    await page.keyboard.press('Escape')
    await form.waitFor({ state: 'detached' })
    await button(page, 'Accept with a note…').press('Enter')
    await accept(form, 'R. Ames', 'Measured at the station')
    await expect.poll(() => typedOver.count(), PATIENT).toBe(0)
    expect(await looked(page)).toMatch(/; \d+ accepted$/)
    await panel(page).getByText('Accepted', { exact: true }).click()
    const accepted = panel(page).getByRole('list', { name: 'Accepted findings' }).locator('li', { hasText: 'Basis!C16' })
    expect(await accepted.textContent()).toMatch(/Measured at the stationR\. Ames, \d{4}-\d\d-\d\d/)
    expect(await accessFindings(page)).toEqual([])

    const download = page.waitForEvent('download')
    await button(page, 'Save').click()
    const chunks: Buffer[] = []
    for await (const chunk of await (await download).createReadStream()) chunks.push(Buffer.from(chunk))
    const saved = readWorkbook(Buffer.concat(chunks).toString('utf8'))
    if (!('workbook' in saved)) throw new Error('the saved file cannot be read')
    const own = saved.workbook.review?.accepted.filter(({ by }) => by !== undefined)
    expect(own).toMatchObject([{ sheet: 'Basis', area: { top: 15, left: 2, bottom: 15, right: 2 }, note: 'Measured at the station', by: 'R. Ames' }])
    expect(saved.workbook.review?.record.at(-1)).toMatchObject({ what: 'finding accepted', by: 'R. Ames' })
    expect(writeWorkbook(saved.workbook)).toContain('Measured at the station')

    // Mended after all, what was accepted of it stands for nothing.
    await enter(page, 'C16', '=SAT.PRESSURE(condensing_temperature,D16)')
    const gone = panel(page).getByRole('list', { name: 'Accepted before, and not found any more' })
    expect(await gone.locator('li').textContent()).toMatch(/^Basis!C16.*Measured at the station/)
    await button(page, 'Undo').click()
    await gone.waitFor({ state: 'detached' })
    await looked(page)

    // The name is remembered.
    await accepted.getByRole('button', { name: 'Open again…' }).click()
    expect(await panel(page).getByRole('textbox', { name: 'Name' }).inputValue()).toBe('R. Ames')
    await panel(page).getByRole('button', { name: 'Open again', exact: true }).click()
    await typedOver.waitFor()
    await looked(page)
    expect(await gone.count()).toBe(0)

    // All of a kind at once, as one step.
    await enter(page, 'C11', '13.2')
    await panel(page).getByRole('button', { name: 'Accept all 2 with a note…' }).click()
    await panel(page).getByRole('textbox', { name: /^Note/ }).fill('As measured')
    await panel(page).getByRole('button', { name: 'Accept all 2', exact: true }).press('Enter')
    await expect.poll(() => typedOver.count(), PATIENT).toBe(0)
    await button(page, 'Undo').click()
    await typedOver.waitFor()
    await sound(opened)
  })

  it('of an inventory of ten thousand vessels are looked for while the screen goes on, and stopped by button and by key', async () => {
    const opened = await openApp()
    const { page } = opened
    const chooser = page.waitForEvent('filechooser')
    await button(page, 'Open').click()
    await (await chooser).setFiles({ name: 'inventory.lowside.json', mimeType: 'application/json', buffer: Buffer.from(writeWorkbook(withVessels(10_000))) })
    await page.locator('.title-place:not([data-title="Tallowmere surge drum SD-3"])').waitFor({ timeout: 120_000 })
    await settled(page)

    await button(page, 'Findings').click()
    await panel(page).getByRole('button', { name: 'Stop' }).click()
    await panel(page).getByText('Stopped.').waitFor()
    await button(page, 'Look again').click()
    await panel(page).getByRole('button', { name: 'Stop' }).waitFor()
    await page.getByRole('progressbar', { name: 'Looking for findings' }).nth(1).waitFor()
    await page.keyboard.press('Escape')
    await panel(page).getByText('Stopped.').waitFor()

    await button(page, 'Look again').click()
    await panel(page).getByRole('button', { name: 'Stop' }).waitFor()
    await page.getByRole('grid').focus()
    const before = await page.getByRole('grid').getAttribute('aria-activedescendant')
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => page.getByRole('grid').getAttribute('aria-activedescendant')).not.toBe(before)
    expect(await panel(page).getByRole('button', { name: 'Stop' }).isVisible()).toBe(true)
    await looked(page)
    await sound(opened)
  })
})
