import type { Locator, Page } from 'playwright-core'
import { settled } from './app.ts'

/** What someone does on the screen, with a mouse or with keys alone. */
export interface Hand {
  /** A button, a summary, an item of a list. */
  press(target: Locator): Promise<void>
  fill(target: Locator, text: string): Promise<void>
  /** One of several of which one is chosen. */
  choose(radio: Locator): Promise<void>
  /** Opens a menu by its button and takes an item. */
  take(menu: Locator, item: Locator): Promise<void>
  /** Shows a cell and selects it, whatever is shown before. */
  goTo(sheet: string, address: string): Promise<void>
  /** Goes to one of a list that is walked through: `item` is the one that is current then. */
  walkTo(panel: Locator, what: 'finding' | 'difference', place: string): Promise<void>
}

export const mouse = (page: Page): Hand => ({
  press: (target) => target.click(),
  async fill(target, text) {
    await target.click()
    await target.fill(text)
  },
  choose: (radio) => radio.click(),
  async take(menu, item) {
    await menu.click()
    await item.click()
  },
  async goTo(sheet, address) {
    await page.locator(`.sheet[data-sheet="${sheet}"]`).click()
    await page.getByRole('grid', { name: `Sheet ${sheet}`, exact: true }).waitFor()
    // What the grid does not show is not to be clicked.
    await page.getByRole('textbox', { name: 'Address' }).click()
    await page.keyboard.press('ControlOrMeta+a')
    await page.keyboard.type(address)
    await page.keyboard.press('Enter')
  },
  walkTo: (panel, _what, place) => itemOf(panel, place).locator('.review-go').click(),
})

export function keys(page: Page): Hand {
  const press = (key: string): Promise<void> => page.keyboard.press(key)
  const isAt = (target: Locator): Promise<boolean> => target.evaluate((element) => document.activeElement === element)
  const isIn = (target: Locator): Promise<boolean> => target.evaluate((element, parts) => element.closest(parts)?.contains(document.activeElement) === true, PARTS)

  /** Beyond the last control the browser's own come, and then the page again. */
  const isAway = (): Promise<boolean> => page.evaluate(() => document.activeElement === document.body)
  async function toPart(target: Locator): Promise<void> {
    for (let part = 0; part < 8 && !(await isIn(target)); part++) await press((await isAway()) ? 'Tab' : 'F6')
  }

  /** F6 goes from part to part of the screen, Tab through the part. */
  async function reach(target: Locator): Promise<void> {
    await target.waitFor()
    const stops: string[] = []
    await toPart(target)
    for (const key of ['Tab', 'Tab', 'Shift+Tab']) {
      for (let stop = 0; stop < MOST_STOPS; stop++) {
        if (await isAt(target)) return
        if (!(await isIn(target))) break
        await press(key)
        stops.push(`${key} ${await page.evaluate(() => document.activeElement?.textContent?.trim().slice(0, 30) ?? '')}`)
      }
      await toPart(target)
    }
    if (!(await isAt(target))) throw new Error(`keys do not lead to ${String(target)}, by way of ${stops.join('; ')}`)
  }

  return {
    async press(target) {
      await reach(target)
      await press('Enter')
    },
    async fill(target, text) {
      await reach(target)
      await press('ControlOrMeta+a')
      await page.keyboard.type(text)
    },
    async choose(radio) {
      if (await radio.isChecked()) return
      const name = await radio.getAttribute('name')
      const chosen = page.locator(`input[type=radio][name="${name}"]:checked`)
      await reach(chosen)
      for (let step = 0; step < 10 && !(await radio.isChecked()); step++) await press('ArrowDown')
    },
    async take(menu, item) {
      await reach(menu)
      await press('Enter')
      for (let step = 0; step < 10 && !(await isAt(item)); step++) await press('ArrowDown')
      await press('Enter')
    },
    async goTo(sheet, address) {
      await reach(page.locator(`.sheet[data-sheet="${sheet}"]`))
      await press('Enter')
      await page.getByRole('grid', { name: `Sheet ${sheet}`, exact: true }).waitFor()
      await reach(page.getByRole('textbox', { name: 'Address' }))
      await press('ControlOrMeta+a')
      await page.keyboard.type(address)
      await press('Enter')
    },
    async walkTo(panel, what, place) {
      await reach(panel.getByRole('button', { name: `Next ${what}` }))
      await press('Enter')
      const current = itemOf(panel, place).and(panel.locator('.current'))
      await press('Home')
      for (let step = 0; step < MOST_STOPS && (await current.count()) === 0; step++) await press('ArrowDown')
    },
  }
}

const PARTS = '[role=dialog], dialog, header, nav, main, aside, .entry-line'
const MOST_STOPS = 150

const itemOf = (panel: Locator, place: string): Locator =>
  panel.locator('.review-item').filter({ has: panel.page().locator('.review-place').getByText(place, { exact: true }) })

/** Types into a cell and enters it; done once everything is calculated. */
export async function enterAt(page: Page, hand: Hand, sheet: string, address: string, text: string): Promise<void> {
  await hand.goTo(sheet, address)
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
  await settled(page)
}
