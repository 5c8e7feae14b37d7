import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, openBlank, settled, shown, useBrowser } from './app.ts'

useBrowser()

describe('units, formats and notes in the browser', () => {
  it('changes a unit by the list at the cell: an input keeps its number, or is converted where one asks for it', async () => {
    const app = await openApp()
    const { page } = app
    await cellAt(page, 'C6').click()
    expect(await shown(page, 'C6', /84/)).toBe('84')
    await page.keyboard.press('Alt+ArrowDown')
    await page.getByRole('menuitemradio', { name: 'kW', exact: true }).click()
    await settled(page)
    expect([await shown(page, 'C6', /\d/), await shown(page, 'D6', /kW/)]).toEqual(['84', 'kW'])
    await page.keyboard.press('Control+z')
    expect(await shown(page, 'D6', /TR/)).toBe('TR')

    await cellAt(page, 'D6').click()
    await page.keyboard.press('Alt+ArrowDown')
    await page.getByRole('menuitemcheckbox', { name: 'convert the number too' }).click()
    await page.getByRole('menuitemradio', { name: 'kW', exact: true }).click()
    // 1 TR is 12 000 Btu/h, 3.51685 kW (NIST SP 811, B.8).
    expect(Number(await shown(page, 'C6', /295/))).toBeCloseTo(84 * 3.516853, 1)
    expect(app.trouble).toEqual([])
  })

  it('changes a result with its unit, picked in the entry line', async () => {
    const app = await openApp()
    const { page } = app
    const inches = Number(await shown(page, 'C16', /^\s*\d+\s*$/))
    await cellAt(page, 'C16').click()
    await page.getByRole('region', { name: 'Entry line' }).getByRole('button', { name: 'Unit: in' }).click()
    await page.getByRole('menuitemradio', { name: 'mm', exact: true }).click()
    expect(await page.getByRole('menuitemcheckbox').count()).toBe(0)
    // 1 in is 25.4 mm exactly (NIST SP 811, B.6).
    expect(Number(await shown(page, 'C16', /\d{3}/))).toBeCloseTo(inches * 25.4, 1)
    expect(app.trouble).toEqual([])
  })

  it('marks what does not fit, with words for it, and refuses nothing', async () => {
    const app = await openApp()
    const { page } = app
    await enter(page, 'D6', 'TRx')
    expect(await cellAt(page, 'D6').getAttribute('aria-description')).toBe('"TRx" is no unit that Lowside knows; accepted: one of the list, which Alt + Down opens')
    expect(await cellAt(page, 'D6').getAttribute('class')).toContain('misfit')
    await enter(page, 'C7', 'warm')
    await cellAt(page, 'C7').click()
    await page.getByRole('region', { name: 'Why' }).getByText('"warm" is a text, and the unit % stands beside it').waitFor()
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await settled(page)
    expect(await page.locator('.cell.misfit').count()).toBe(0)
    expect(app.trouble).toEqual([])
  })

  it('sets digits and decimals by key and in the paper, for all that is selected', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await enter(page, 'A1', '12.345678')
    await enter(page, 'A2', '2.5')
    await cellAt(page, 'A1').click()
    await page.keyboard.press('Control+.')
    expect(await shown(page, 'A1', /12/)).toBe('12.3457')
    await page.keyboard.press('Control+,')
    await page.keyboard.press('Control+,')
    expect(await shown(page, 'A1', /^12\.35$/)).toBe('12.35')
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('Alt+Enter')
    await page.getByRole('radio', { name: 'decimals' }).check()
    await page.getByRole('spinbutton', { name: 'Number of decimals' }).fill('3')
    await page.getByRole('spinbutton', { name: 'Number of decimals' }).press('Enter')
    expect([await shown(page, 'A1', /12\.346/), await shown(page, 'A2', /2\.500/)]).toEqual(['12.346', '2.500'])
    await page.getByRole('radio', { name: 'as it comes' }).check()
    await page.keyboard.press('Escape')
    expect([await shown(page, 'A1', /12\.346/), await shown(page, 'A2', /^2\.5$/)]).toEqual(['12.346', '2.5'])
    expect(app.trouble).toEqual([])
  })

  it('keeps a note, shows it under the pointer and in Why, and takes it away again', async () => {
    const app = await openApp()
    const { page } = app
    await cellAt(page, 'C6').click()
    await page.keyboard.press('Alt+Enter')
    await page.getByRole('textbox', { name: 'Note on the cell' }).fill('From the load list, revision 2')
    await page.getByRole('button', { name: 'Keep the note' }).click()
    expect(await cellAt(page, 'C6').getAttribute('aria-description')).toBe('input, Refrigeration load on the drum; note: From the load list, revision 2')
    await page.getByRole('region', { name: 'Why' }).getByText('From the load list, revision 2').waitFor()
    await cellAt(page, 'C6').hover()
    await page.getByRole('tooltip').getByText('From the load list, revision 2').waitFor()

    await page.keyboard.press('Alt+Enter')
    await page.getByRole('textbox', { name: 'Note on the cell' }).fill('')
    await page.getByRole('button', { name: 'Keep the note' }).click()
    expect(await page.locator('.cell.noted').count()).toBe(0)
    expect(app.trouble).toEqual([])
  })

  it('breaks a long text into lines, and fits a column to what stands in it by a double click on its edge', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await enter(page, 'A4', 'a text that is much longer than the column is wide')
    const height = async () => (await cellAt(page, 'A4').boundingBox())?.height ?? 0
    const width = async () => (await cellAt(page, 'A4').boundingBox())?.width ?? 0
    const [before, narrow] = [await height(), await width()]
    await cellAt(page, 'A4').click()
    await page.keyboard.press('Alt+Enter')
    await page.getByRole('checkbox', { name: 'break long text into lines' }).check()
    await page.keyboard.press('Escape')
    expect(await height()).toBeGreaterThan(before)
    await page.keyboard.press('Control+z')
    expect(await height()).toBe(before)

    await page.locator('[data-edge="0"]').dblclick()
    const wide = await width()
    expect(wide).toBeGreaterThan(narrow)
    expect(await cellAt(page, 'A4').evaluate((cell) => cell.scrollWidth <= cell.clientWidth + 1)).toBe(true)
    await page.keyboard.press('Control+z')
    expect(await width()).toBe(narrow)
    expect(app.trouble).toEqual([])
  })
})
