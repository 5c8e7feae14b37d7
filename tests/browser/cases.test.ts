import { describe, expect, it } from 'vitest'
import type { Page } from 'playwright-core'
import { cellAt, enter, openApp, settled, shown, useBrowser } from './app.ts'
import { findings } from './axe.ts'
import { sound } from './sound.ts'

useBrowser()

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const panel = (page: Page) => page.getByRole('region', { name: 'Cases', exact: true })
const current = (page: Page) => page.getByRole('list', { name: 'Cases' }).locator('[aria-current=true]')

/** What a compared result shows in each case, once all have been worked out. */
async function results(page: Page, row: string): Promise<string[]> {
  await page.locator('.cases-state', { hasText: /^$/ }).waitFor({ state: 'attached' })
  return page.locator('.cases-table tr', { has: page.getByRole('button', { name: row, exact: true }) }).locator('td .case-result').allTextContents()
}

describe('cases', () => {
  it('one is made by the keyboard, inputs edited while it is current belong to it, results stand side by side, and all can be undone', async () => {
    const opened = await openApp()
    const { page } = opened
    await button(page, 'Cases').focus()
    await page.keyboard.press('Enter')
    await button(page, 'New case').focus()
    await page.keyboard.press('Enter')
    await page.keyboard.type('Summer peak')
    await page.keyboard.press('Enter')
    expect(await current(page).textContent()).toMatch(/Summer peak/)
    expect(await page.locator('.current-case').textContent()).toMatch(/Summer peak/)

    await enter(page, 'C6', '96')
    await cellAt(page, 'C6').click()
    expect(await cellAt(page, 'C6').getAttribute('class')).toContain('case-differs')
    expect(await cellAt(page, 'C6').getAttribute('aria-description')).toContain('differs from the base, which has 84')
    const base = panel(page).getByRole('textbox', { name: /^Duty!C6 in Base/ })
    expect(await base.inputValue()).toBe('84')

    await cellAt(page, 'C16').click()
    await panel(page).getByRole('button', { name: 'Compare Duty!C16' }).click()
    await expect.poll(() => results(page, 'Vertical drum, inside diameter')).toHaveLength(2)
    const [first, second] = (await results(page, 'Vertical drum, inside diameter')).map(Number)
    expect(second).toBeGreaterThan(first ?? Infinity)
    expect(await panel(page).locator('.case-difference').first().textContent()).toMatch(/^\+\d+ in/)

    // Written side by side: the other case's value, while this one is current.
    await base.focus()
    await base.fill('120')
    await page.keyboard.press('Enter')
    await shown(page, 'C6', /96/)
    await expect.poll(async () => Number((await results(page, 'Vertical drum, inside diameter'))[0])).toBeGreaterThan(first ?? Infinity)

    await page.getByRole('list', { name: 'Cases' }).getByRole('button', { name: /^Base/ }).focus()
    await page.keyboard.press('Enter')
    await shown(page, 'C6', /120/)
    await button(page, 'Undo').click()
    await shown(page, 'C6', /96/)
    for (let step = 0; step < 4; step++) await button(page, 'Undo').click()
    await shown(page, 'C6', /84/)
    await page.getByText('No case yet').waitFor()
    for (let step = 0; step < 5; step++) await button(page, 'Redo').click()
    await shown(page, 'C6', /120/)
    await sound(opened)
  })

  it('a case is renamed, noted, copied, made the base and deleted from its menu; a value goes back to the base’s', async () => {
    const opened = await openApp()
    const { page } = opened
    await button(page, 'Cases').click()
    await button(page, 'New case').click()
    await page.keyboard.type('One')
    await page.keyboard.press('Enter')
    await enter(page, 'C6', '96')
    const choose = async (of: string, what: string) => {
      await page.getByRole('button', { name: `Case ${of}: rename, note, copy, make the base, delete` }).click()
      await page.getByRole('menuitem', { name: what }).click()
    }
    await choose('One', 'Rename')
    await page.keyboard.type('Base')
    await page.keyboard.press('Enter')
    await page.getByText('what the inputs are without any case').waitFor()
    await page.getByRole('textbox', { name: 'New name of case One' }).fill('Peak')
    await page.keyboard.press('Enter')
    await choose('Peak', 'Write a note')
    await page.keyboard.type('Assumed')
    await page.keyboard.press('Enter')
    await page.locator('.case-note', { hasText: 'Assumed' }).waitFor()
    await choose('Peak', 'Copy')
    expect(await current(page).textContent()).toMatch(/^Peak copy/)
    await panel(page).getByRole('button', { name: 'Duty!C6 in Peak copy: back to the base’s value' }).click()
    await shown(page, 'C6', /84/)
    await choose('Peak', 'Make this the base')
    await shown(page, 'C6', /96/)
    expect(await current(page).textContent()).toMatch(/^Base/)
    await choose('Former base', 'Delete')
    await page.getByText('Case "Former base" is deleted; Undo brings it back').waitFor()
    await sound(opened)
  })

  it('the demo shows which zone a raised suction leaves unserved; Why tells the base’s value; nothing axe finds, nothing scrolls the page', async () => {
    const opened = await openApp({ width: 1280, height: 720 }, 'demo plant')
    const { page } = opened
    await button(page, 'Cases').click()
    await panel(page).getByText('Zones, Cheese store: Served?').waitFor({ timeout: 60_000 })
    expect(await results(page, 'High: Zones not served')).toEqual(['0', '0', '1'])
    expect(await findings(page)).toEqual([])
    await page.getByRole('list', { name: 'Cases' }).getByRole('button', { name: /^Raised suction/ }).click()
    await settled(page)
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('1 of 8 checks not met').waitFor()
    await button(page, 'New case').click()
    expect(await findings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('textbox', { name: 'Address' }).fill('C21')
    await page.keyboard.press('Enter')
    await button(page, 'Why').click()
    await page.getByText('base: 22 °F').waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth && document.documentElement.scrollHeight <= innerHeight)).toBe(true)
    await sound(opened)
  })
})
