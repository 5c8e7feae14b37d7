import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { SCREEN_STATES, verb } from './access-states.ts'
import { cellAt, enter, openApp, settled, useBrowser } from './app.ts'
import { cutOff, cutOffCells } from './cut-off.ts'

useBrowser()

/** 1280 by 720 at 200 %, in the px of style sheets. */
const ZOOMED = { width: 640, height: 360 }

const outgrown = (page: Page) => page.evaluate(() => {
  const { scrollWidth, scrollHeight } = document.documentElement
  return [Math.max(0, scrollWidth - innerWidth), Math.max(0, scrollHeight - innerHeight)]
})

describe('at 200 %', () => {
  it.each(SCREEN_STATES)('nothing is cut off, and the page does not scroll: $name', async ({ reach }) => {
    const { page, context, trouble } = await openApp(ZOOMED)
    await reach(page)
    expect(await cutOff(page)).toEqual([])
    expect(await outgrown(page)).toEqual([0, 0])
    expect(trouble).toEqual([])
    await context.close()
  })

  it('the cell at hand is in view beside an open panel, on a sheet whose fixed rows would fill the grid too', async () => {
    const { page, trouble } = await openApp(ZOOMED)
    await page.getByRole('button', { name: 'Why', exact: true }).click()
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Sizes tried').click()
    await settled(page)
    for (const key of ['Control+End', 'Control+Home', 'PageDown', 'ArrowRight', 'ArrowRight', 'ArrowRight']) {
      await page.keyboard.press(key)
      const isShown = () => page.getByRole('grid').evaluate((grid) => {
        const cell = document.getElementById(grid.getAttribute('aria-activedescendant') ?? '')?.getBoundingClientRect()
        const seen = grid.getBoundingClientRect()
        return cell !== undefined && cell.width > 0 && cell.left >= seen.left && cell.top >= seen.top && cell.left < seen.left + grid.clientWidth && cell.top < seen.top + grid.clientHeight
      })
      await expect.poll(isShown).toBe(true)
    }
    const [grid, panel] = [await page.getByRole('grid').boundingBox(), await page.getByRole('region', { name: 'Why' }).boundingBox()]
    expect((grid?.x ?? 0) + (grid?.width ?? 0)).toBeLessThanOrEqual(panel?.x ?? 0)
    expect(trouble).toEqual([])
  })

  it('verbs are in a list behind one button, which Escape and a choice close', async () => {
    const { page, trouble } = await openApp(ZOOMED)
    const more = page.getByRole('button', { name: 'More', exact: true })
    const save = page.getByRole('button', { name: 'Save', exact: true })
    expect(await save.isVisible()).toBe(false)
    await more.focus()
    await page.keyboard.press('Enter')
    expect(await save.isVisible()).toBe(true)
    await page.keyboard.press('Tab')
    await page.keyboard.press('Escape')
    expect([await save.isVisible(), await more.evaluate((button) => button === document.activeElement)]).toEqual([false, true])
    await verb(page, 'Restate')
    await page.getByRole('menuitem', { name: 'Restate in SI' }).click()
    await settled(page)
    expect(await save.isVisible()).toBe(false)
    await verb(page, 'Start from a template')
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    expect(await more.evaluate((button) => button === document.activeElement)).toBe(true)
    expect(trouble).toEqual([])
  })
})

/** One of each kind of paper: what stands in the others is set in the same way. */
const KINDS = /^(the demo|a table|the hint|format|a note|Why|Guide with|Find|what to print|templates|errors)/

describe('with the text spacing of WCAG 1.4.12', () => {
  it.each(SCREEN_STATES.filter(({ name }) => KINDS.test(name)))('nothing is cut off: $name', async ({ reach }) => {
    const { page, context, trouble } = await openApp()
    await page.evaluate(() => {
      const spacing = new CSSStyleSheet()
      spacing.replaceSync('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }')
      document.adoptedStyleSheets = [spacing]
    })
    await reach(page)
    expect(await cutOff(page)).toEqual([])
    expect(await cutOffCells(page)).toEqual([])
    expect(trouble).toEqual([])
    await context.close()
  })
})

/** A piece of the screen as it is drawn. */
const drawn = async (page: Page, address: string, part: { readonly x: number; readonly width: number }): Promise<string> => {
  const box = await cellAt(page, address).boundingBox()
  if (!box) throw new Error(`${address} is not in view`)
  return (await page.screenshot({ clip: { x: box.x + part.x, y: box.y + 5, width: part.width, height: 15 } })).toString('base64')
}

describe('contrast and motion', () => {
  it.each([
    ['the system\'s own colours', { forcedColors: 'active', colorScheme: 'light' }],
    ['the system\'s own dark colours', { forcedColors: 'active', colorScheme: 'dark' }],
    ['more contrast', { contrast: 'more' }],
    ['more contrast in the dark', { contrast: 'more', colorScheme: 'dark' }],
  ] as const)('marks, the selection and the active cell are drawn in %s', async (_name, appearance) => {
    const { page, trouble } = await openApp()
    await page.emulateMedia(appearance)
    await enter(page, 'C8', '=1/0')
    await enter(page, 'C10', '=1=1')
    await page.getByRole('combobox', { name: 'Role' }).waitFor()
    await cellAt(page, 'C10').click()
    await page.getByRole('combobox', { name: 'Role' }).selectOption('check')
    await settled(page)
    await cellAt(page, 'A12').click()
    const blank = await drawn(page, 'A14', { x: 4, width: 15 })
    for (const [what, address, x] of [['error', 'C8', 7], ['check', 'C10', 7]] as const) {
      expect([what, (await drawn(page, address, { x, width: 15 })) === (await drawn(page, 'A14', { x: 4, width: 15 }))]).toEqual([what, false])
    }
    const bar = { x: 3, width: 4 }
    expect(await drawn(page, 'C6', bar)).not.toBe(await drawn(page, 'A14', bar))
    await cellAt(page, 'A14').click()
    expect(await drawn(page, 'A14', { x: 0, width: 15 })).not.toBe(blank)
    await page.keyboard.press('Shift+ArrowDown')
    await page.mouse.move(0, 0)
    expect(await drawn(page, 'A15', { x: 4, width: 15 })).not.toBe(blank)
    expect(trouble).toEqual([])
  })

  it('nothing moves by itself', async () => {
    const { page } = await openApp()
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await verb(page, 'Start from a template')
    const moving = () => page.evaluate(() => [...document.querySelectorAll('*')].filter((element) => {
      const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element)
      return transitionDuration.split(', ').some((time) => time !== '0s') || animationName !== 'none' || scrollBehavior !== 'auto'
    }).length + document.getAnimations().length)
    expect(await moving()).toBe(0)
    await page.evaluate(() => document.querySelector<HTMLElement>('.status-line')?.style.setProperty('transition', 'color 1s'))
    expect(await moving()).toBe(1)
  })
})
