import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, settled, shown, useBrowser } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

describe('the demo plant', () => {
  it('opens first, every check met, and says on which sheets', async () => {
    const opened = await openApp({ width: 1280, height: 720 }, 'demo plant')
    const { page } = opened
    expect(await page.getByRole('textbox', { name: 'Title of the workbook' }).inputValue()).toBe('Tallowmere cheese works')
    const sheets = page.getByRole('navigation', { name: 'Sheets' })
    for (const name of ['Basis', 'Zones', 'Drums', 'Circulation', 'Feed', 'Accumulators', 'Relief', 'Charge', 'Thresholds', 'Interlocks']) await sheets.getByText(name, { exact: true }).waitFor()
    await sheets.getByText('all 34 checks met').waitFor()
    expect(await sheets.getByText(/not met/).count()).toBe(0)
    await sound(opened)
  })

  it('a colder house suction costs no zone, a warmer one costs the cheese store: set points stay, the drop goes', async () => {
    const opened = await openApp({ width: 1920, height: 1080 }, 'demo plant')
    const { page } = opened
    await enter(page, 'C21', '25')
    const sheets = page.getByRole('navigation', { name: 'Sheets' })
    await sheets.getByText(/not met/).first().waitFor()
    await sheets.getByText('Zones', { exact: true }).click()
    await page.getByRole('grid', { name: 'Sheet Zones' }).waitFor()
    await settled(page)
    const address = page.getByRole('textbox', { name: 'Address' })
    await address.fill('U13')
    await address.press('Enter')
    await shown(page, 'T13', /not met/)
    await shown(page, 'U13', /short/)
    expect(await cellAt(page, 'T12').textContent()).toMatch(/^\s*met/)
    await page.keyboard.press('Control+z')
    await expect.poll(() => sheets.getByText(/not met/).count()).toBe(0)
    await sound(opened)
  })

  it('a colder room moves its set point and the figure that shows it', async () => {
    const opened = await openApp({ width: 1920, height: 1080 }, 'demo plant')
    const { page } = opened
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Zones', { exact: true }).click()
    await page.getByRole('button', { name: 'Figure', exact: true }).click()
    const figure = page.getByRole('img', { name: /Zones from room to house suction/ })
    await figure.waitFor()
    const before = await figure.innerHTML()
    const setPoint = await shown(page, 'L13', /\d/)
    await enter(page, 'D13', '35')
    expect(await shown(page, 'L13', /\d/)).not.toBe(setPoint)
    await expect.poll(() => figure.innerHTML()).not.toBe(before)
    await sound(opened)
  })
})
