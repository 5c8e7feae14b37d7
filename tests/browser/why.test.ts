import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, openBlank, settled, shown, useBrowser } from './app.ts'

useBrowser()

/** Wherever the cell is: its column may be out of view. */
async function goTo(page: Page, address: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Address' }).fill(address)
  await page.keyboard.press('Enter')
}

describe('why, in the browser', () => {
  it('puts the values into the formula and leads to what feeds it and back, by keyboard alone', async () => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C16').click()
    const panel = page.getByRole('region', { name: 'Why' })
    const words = panel.locator('.walk-words')
    await words.waitFor()
    const value = (await shown(page, 'C16', /\d/)).trim()
    expect(await words.textContent()).toContain(`= ${value}`)

    const address = page.getByRole('textbox', { name: 'Address' })
    const fedBy = panel.getByRole('list', { name: 'Fed by' })
    const first = fedBy.getByRole('button').first()
    // On another sheet, with its name in front.
    const to = /!([A-Z]+\d+)/.exec((await first.locator('.walk-address').textContent()) ?? '')?.[1]
    expect(to).toBeDefined()
    await first.focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => address.inputValue()).toBe(to)
    await panel.getByRole('list', { name: 'Used by' }).getByRole('button', { name: /\bC16\b/ }).waitFor()
    // The focus is still in the panel; the way back is the last place before it.
    expect(await page.evaluate(() => document.activeElement?.closest('.panel')?.getAttribute('aria-label'))).toBe('Why')
    await page.keyboard.press('Shift+Tab')
    await page.keyboard.press('Enter')
    await expect.poll(() => address.inputValue()).toBe('C16')
    expect(await panel.getByRole('navigation', { name: 'The way back' }).count()).toBe(0)
    expect(trouble).toEqual([])
  })

  it('keeps the way back while another panel is open, and calls a unit cell what it is', async () => {
    const { page, trouble } = await openApp()
    await openBlank(page)
    for (const [address, text] of [['A1', 'Bore'], ['B1', '4'], ['C1', 'in'], ['A2', 'Twice the bore'], ['B2', '=UNIT.CONVERT(B1:C1,C2)*2'], ['C2', 'in']] as const) await enter(page, address, text)
    await cellAt(page, 'C2').click()
    await page.getByRole('combobox', { name: 'Role' }).selectOption('unit')
    await cellAt(page, 'B2').click()
    const panel = page.getByRole('region', { name: 'Why' })
    const fedBy = panel.getByRole('list', { name: 'Fed by' })
    expect(await panel.locator('.walk-words').textContent()).toBe('4 in × 2 = 8 in')
    await fedBy.getByRole('button', { name: 'its unit C2 in' }).waitFor()
    await fedBy.getByRole('button', { name: /^Bore/ }).click()
    const back = panel.getByRole('navigation', { name: 'The way back' })
    await back.getByText('B2').waitFor()
    for (const name of ['Guide', 'Why']) await page.getByRole('complementary', { name: 'Side panel' }).getByRole('button', { name, exact: true }).click()
    await back.getByRole('button', { name: '← B2' }).click()
    await expect.poll(() => page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe('B2')
    expect(await back.count()).toBe(0)
    expect(trouble).toEqual([])
  })

  it('says what a selected range adds up to, and follows an edit', async () => {
    const { page, trouble } = await openApp()
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Cautions').click()
    for (const [address, text] of [['F1', '3'], ['F2', '4'], ['F3', '=F1*2']] as const) {
      await goTo(page, address)
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
    }
    await settled(page)
    await goTo(page, 'F1')
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Shift+ArrowDown')
    const total = page.getByRole('region', { name: 'The selected range' })
    await expect.poll(() => total.locator('dd').allTextContents()).toEqual(['3', '13', '3', '6'])
    expect(trouble).toEqual([])
  })
})
