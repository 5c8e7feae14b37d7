import { describe, expect, it } from 'vitest'
import { cellAt, openApp, openBlank, settled, shown, useBrowser } from './app.ts'

useBrowser()

describe('find and replace in the browser', () => {
  it('opens by key, lists the cells of all sheets, and goes to one', async () => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C6').click()
    await page.keyboard.press('Control+f')
    await page.keyboard.type('droplet')
    const list = page.getByRole('list', { name: 'Cells found' })
    await list.getByRole('button').first().waitFor()
    const first = (await list.getByRole('button').first().textContent()) ?? ''
    expect(first.toLowerCase()).toContain('droplet')
    await page.keyboard.press('Enter')
    // Goes on after the cell at hand, on whatever sheet the next one is.
    const at = await page.getByRole('textbox', { name: 'Address' }).inputValue()
    expect(await list.locator('[aria-current=true]').textContent()).toContain(`!${at}`)
    expect(trouble).toEqual([])
  })

  it('finds what formulas come to only where one looks in what is shown', async () => {
    const { page, trouble } = await openApp()
    const diameter = await shown(page, 'C16', /^\s*\d+\s*$/)
    await page.keyboard.press('Control+f')
    await page.getByRole('textbox', { name: 'Text' }).fill(diameter.trim())
    await page.getByRole('checkbox', { name: 'the whole text of a cell' }).check()
    await page.getByRole('checkbox', { name: 'this sheet only' }).check()
    const formula = page.getByRole('list', { name: 'Cells found' }).getByRole('button', { name: 'Duty!C16' })
    await page.getByRole('radio', { name: 'what is shown' }).check()
    await formula.waitFor()
    await page.getByRole('radio', { name: 'what was typed' }).check()
    await formula.waitFor({ state: 'detached' })
    expect(trouble).toEqual([])
  })

  it('replaces in formulas too, all in one step that one undo takes back', async () => {
    const { page, trouble } = await openApp()
    await openBlank(page)
    for (const [address, text] of [['A1', '3'], ['A2', '4'], ['B1', '=A1*2'], ['B2', '=A2*2']] as const) {
      await cellAt(page, address).click()
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
    }
    await shown(page, 'B2', /8/)
    await page.keyboard.press('Control+f')
    await page.getByRole('checkbox', { name: 'this sheet only' }).check()
    await page.getByRole('textbox', { name: 'Text' }).fill('*2')
    await page.getByRole('textbox', { name: 'Replace by' }).fill('*100')
    await page.getByText('In 2 cells').waitFor()
    await page.getByRole('button', { name: 'Replace all' }).click()
    expect(await shown(page, 'B2', /400/)).toBe('400')
    expect(await shown(page, 'B1', /300/)).toBe('300')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await settled(page)
    expect(await shown(page, 'B1', /^6$/)).toBe('6')
    expect(await shown(page, 'B2', /^8$/)).toBe('8')

    // One at a time: the first press goes to the first one, the second replaces it.
    await cellAt(page, 'B1').click()
    await page.getByRole('button', { name: 'Replace, go on' }).click()
    expect(await shown(page, 'B1', /300/)).toBe('300')
    expect(await shown(page, 'B2', /^8$/)).toBe('8')
    expect(await page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe('B2')
    expect(trouble).toEqual([])
  })
})
