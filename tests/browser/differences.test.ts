import { describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { cellAt, enter, openApp, settled, shown, useBrowser } from './app.ts'
import { findings as accessFindings } from './axe.ts'
import { sound } from './sound.ts'

useBrowser()

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
const panel = (page: Page) => page.getByRole('region', { name: 'Differences', exact: true })
const compared = (page: Page, words: RegExp) => panel(page).getByRole('status').filter({ hasText: words }).waitFor()
const current = (page: Page) => panel(page).locator('.review-item [aria-current=true]')
const effects = (page: Page) => panel(page).getByRole('region', { name: 'Effect on results' })

async function saved(page: Page, press: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent('download')
  await press()
  const chunks: Buffer[] = []
  for await (const chunk of await (await download).createReadStream()) chunks.push(Buffer.from(chunk))
  return Buffer.concat(chunks).toString('utf8')
}

describe('differences', () => {
  it('from the workbook as it was opened are walked through by keys, with their effect on results, taken back one by one, and begin anew with saving', async () => {
    const opened = await openApp()
    const { page } = opened
    await button(page, 'Differences').focus()
    await page.keyboard.press('Enter')
    await compared(page, /^No difference from the workbook as it was opened$/)
    await enter(page, 'C6', '96')
    await enter(page, 'C7', '20')
    await compared(page, /^2 differences from the workbook as it was opened, on 1 sheet$/)
    await effects(page).getByText(/^\d+ come to something else, of \d+ results and checks\.$/).waitFor()
    expect(await accessFindings(page)).toEqual([])

    await button(page, 'Next difference').focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => cellAt(page, 'C6').getAttribute('class')).toContain('active')
    expect(await current(page).textContent()).toMatch(/^input Duty!C6/)
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Next difference')
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => cellAt(page, 'C7').getAttribute('class')).toContain('active')
    expect(await page.evaluate(() => document.activeElement?.classList.contains('review-go'))).toBe(true)
    await page.keyboard.press('Home')
    expect(await current(page).textContent()).toMatch(/Duty!C6/)
    expect(await panel(page).locator('.review-item.current .difference-sides').textContent()).toMatch(/84 TR.*96 TR/)

    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await shown(page, 'C6', /84/)
    await compared(page, /^1 difference from/)
    expect(await current(page).textContent()).toMatch(/Duty!C7/)
    await button(page, 'Undo').click()
    await shown(page, 'C6', /96/)
    await compared(page, /^2 differences/)
    await button(page, 'Take all 2 back').click()
    await shown(page, 'C6', /84/)
    await compared(page, /^No difference/)
    await button(page, 'Undo').click()
    await compared(page, /^2 differences/)

    await saved(page, () => button(page, 'Save').click())
    await compared(page, /^No difference from the workbook as it was saved at /)
    await enter(page, 'C6', '97')
    await compared(page, /^1 difference from the workbook as it was saved at /)

    // One chosen result is told even where it stays the same.
    await cellAt(page, 'C16').click()
    await button(page, 'Show Duty!C16 only').click()
    await effects(page).getByRole('button', { name: 'Leave out Duty!C16' }).waitFor()
    expect(await effects(page).locator('tbody tr').count()).toBe(1)
    await sound(opened)
  })

  it('from another file, of the workbook or of a spreadsheet that Lowside exported; rows inserted are known as such; the report is a file', async () => {
    const opened = await openApp()
    const { page } = opened
    const before = await saved(page, () => button(page, 'Save').click())
    const download = page.waitForEvent('download')
    await button(page, 'Export').click()
    await page.getByRole('menuitem', { name: 'Spreadsheet (.xlsx)' }).first().click()
    const chunks: Buffer[] = []
    for await (const chunk of await (await download).createReadStream()) chunks.push(Buffer.from(chunk))

    await cellAt(page, 'C7').click()
    await page.keyboard.press('Alt+Insert')
    await settled(page)
    await enter(page, 'C6', '96')
    await button(page, 'Differences').click()
    const choose = async (name: string, buffer: Buffer) => {
      const chooser = page.waitForEvent('filechooser')
      await button(page, 'Choose a file…').click()
      await (await chooser).setFiles({ name, mimeType: '', buffer })
    }
    await choose('before.lowside.json', Buffer.from(before))
    await compared(page, /^\d differences? from “before\.lowside\.json”/)
    expect(await panel(page).locator('.review-word').allTextContents()).toEqual(['input', 'rows inserted'])
    await choose('before.xlsx', Buffer.concat(chunks))
    await compared(page, /^2 differences from “before\.xlsx”/)
    const report = await saved(page, () => button(page, 'Save as a report').click())
    expect(report).toMatch(/<html[\s\S]*before\.xlsx[\s\S]*96/)
    await choose('broken.lowside.json', Buffer.from('{"lowside": 1, "title": 3}'))
    await panel(page).getByRole('alert').filter({ hasText: /“broken\.lowside\.json” cannot be compared with: .*Accepted: a workbook file/ }).waitFor()
    await sound(opened)
  })

  it('of the demo from the template it came from: found by its likeness, with the sheets it has of it', async () => {
    const opened = await openApp({ width: 1280, height: 720 }, 'demo plant')
    const { page } = opened
    await button(page, 'Differences').click()
    await compared(page, /^No difference/)
    await page.getByRole('radio', { name: 'the template it came from' }).check()
    await panel(page).getByRole('status').filter({ hasText: /^\d+ differences from the template “Plant”/ }).waitFor({ timeout: 60_000 })
    expect(await accessFindings(page)).toEqual([])
    await panel(page).getByRole('combobox', { name: 'Template compared with' }).selectOption('Pressure relief of the vessels')
    await panel(page).getByRole('status').filter({ hasText: /^\d+ differences from the template “Pressure relief of the vessels”/ }).waitFor({ timeout: 60_000 })
    await sound(opened)
  })

  it('while a case is current, results are those of that case in both; against a template, which has no such case, those of the base', async () => {
    const opened = await openApp({ width: 1280, height: 720 }, 'demo plant')
    const { page } = opened
    await button(page, 'Cases').click()
    await page.getByRole('list', { name: 'Cases' }).getByRole('button', { name: /^Summer peak/ }).click()
    await settled(page)
    await button(page, 'Differences').click()
    await compared(page, /^1 difference from the workbook as it was opened$/)
    await effects(page).getByText(/^None of .+ results and checks comes to anything else\.$/).waitFor()
    await effects(page).getByText('In both workbooks the results are those of Summer peak.').waitFor()
    await page.getByRole('radio', { name: 'the template it came from' }).check()
    await effects(page).getByText('In both workbooks the results are those of Base.').waitFor({ timeout: 60_000 })
    await sound(opened)
  })
})
