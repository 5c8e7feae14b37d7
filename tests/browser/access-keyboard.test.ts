import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, openApp, useBrowser } from './app.ts'

useBrowser()

interface Stop {
  readonly name: string
  /** The focused element, what holds it, or the cell it points at has an outline or a frame. */
  readonly isSeen: boolean
}

/** Where the focus is, in words, and whether that can be seen. */
const stop = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const at = document.activeElement
    if (!at || at === document.body) return { name: 'the page', isSeen: true }
    const pointed = document.getElementById(at.getAttribute('aria-activedescendant') ?? '')
    const marked = [pointed ?? at, at.closest('.entry-field'), at.closest('.cell-editor')].filter((element) => element !== null)
    const isFramed = (element: Element): boolean => {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element)
      return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1) || (boxShadow !== 'none' && !boxShadow.startsWith('rgba(0, 0, 0, 0)'))
    }
    const label = at.getAttribute('aria-label') ?? at.textContent?.trim() ?? ''
    const { width, height } = at.getBoundingClientRect()
    return { name: `${at.tagName.toLowerCase()} ${label}`, isSeen: marked.some(isFramed) && width > 0 && height > 0 }
  })

/** Every stop of Tab, or Shift+Tab, from where the focus is until the page ends or `end` says so. */
async function walk(page: Page, key: 'Tab' | 'Shift+Tab', end: (at: Stop) => boolean): Promise<Stop[]> {
  const stops: Stop[] = []
  // More stops than any part of the screen has.
  while (stops.length < 250) {
    await page.keyboard.press(key)
    const at = await stop(page)
    if (end(at)) return stops
    stops.push(at)
  }
  throw new Error(`no end after ${stops.length} stops: ${stops.slice(-3).map(({ name }) => name).join(', ')}`)
}

const isGrid = ({ name }: Stop): boolean => name.startsWith('div Sheet ')
const isOver = ({ name }: Stop): boolean => name === 'the page'
const named = (stops: readonly Stop[], part: string): boolean => stops.some(({ name }) => name.includes(part))

describe('by keyboard alone', () => {
  it.each(['light', 'forced colours'])('Tab reaches every control, each with a name and a focus that is seen, and F6 leaves the grid (%s)', async (appearance) => {
    const { page, trouble } = await openApp()
    if (appearance !== 'light') await page.emulateMedia({ forcedColors: 'active' })
    await cellAt(page, 'C6').click()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowUp')
    expect((await stop(page)).isSeen).toBe(true)
    await page.getByRole('textbox', { name: 'Title of the workbook' }).focus()
    const before = [await stop(page), ...(await walk(page, 'Tab', isGrid))]
    for (const part of ['Open', 'Recent', 'Start from a template', 'Save', 'Export', 'Restate', 'Address', 'Role', 'Content', 'Format and note', 'Unit: TR', 'Duty', 'Cautions', 'Add a sheet']) expect([part, named(before, part)]).toEqual([part, true])
    await page.keyboard.press('F6')
    const after = [await stop(page), ...(await walk(page, 'Tab', isOver))]
    for (const part of ['Why', 'Find', 'Guide', 'Close the side panel']) expect([part, named(after, part)]).toEqual([part, true])
    const stops = [...before, ...after]
    expect(stops.filter(({ isSeen }) => !isSeen)).toEqual([])
    expect(stops.filter(({ name }) => !/ \S/.test(name))).toEqual([])
    // Every control that is shown, but those that arrows or a menu key lead to.
    const controls = await page.evaluate(() => [...document.querySelectorAll('button, input, select, textarea, summary, a[href]')].filter((control) => control.checkVisibility() && !control.matches(':disabled, [tabindex="-1"]')).length)
    expect(stops.length).toBeGreaterThanOrEqual(controls)

    const back = await walk(page, 'Shift+Tab', isGrid)
    expect(back.length).toBeGreaterThanOrEqual(after.length - 1)
    expect(trouble).toEqual([])
  })

  it('F6 goes round the parts of the screen, both ways', async () => {
    const { page } = await openApp()
    await cellAt(page, 'C6').click()
    const ring: string[] = []
    for (let press = 0; press < 5; press++) {
      await page.keyboard.press('F6')
      ring.push(await page.evaluate(() => document.activeElement?.closest('header, section, nav, main, aside')?.className ?? ''))
    }
    expect(ring).toEqual(['side open', 'top-line', 'entry-line', 'sheet-list', 'middle'])
    await page.keyboard.press('Shift+F6')
    expect(await page.evaluate(() => document.activeElement?.closest('nav')?.className)).toBe('sheet-list')
  })

  it('F6 leads back onto the screen when the focus has left the page, and leaves dialogs alone', async () => {
    const { page } = await openApp()
    await cellAt(page, 'C6').click()
    const leave = () => page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur())
    const part = () => page.evaluate(() => document.activeElement?.closest('dialog, header, section, nav, main, aside, body')?.className ?? '')
    await leave()
    await page.keyboard.press('F6')
    expect(await part()).toBe('top-line')
    await leave()
    await page.keyboard.press('Shift+F6')
    expect(await part()).toBe('side open')
    await page.keyboard.press('Control+p')
    await page.getByRole('dialog').getByLabel('Prepared by').focus()
    await page.keyboard.press('F6')
    expect(await page.evaluate(() => document.activeElement?.closest('dialog') !== null)).toBe(true)
  })

  it.each([
    ['a verb', 'button Start from a template'], ['a verb', 'button Recent'], ['a menu', 'button Export'], ['a menu', 'button Restate'],
    ['the format', 'button Format and note'], ['the units', 'button Unit: TR'],
  ])('Escape leads from what %s opens back to %s', async (_kind, opener) => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C6').click()
    const button = page.getByRole('button', { name: opener.slice('button '.length), exact: true })
    await button.focus()
    await page.keyboard.press('Enter')
    await page.locator('dialog[open], [role=dialog], [role=menu]').first().waitFor()
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('dialog, [role=dialog], [role=menu]') !== null)).toBe(true)
    await page.keyboard.press('Escape')
    await page.locator('dialog[open], [role=dialog], [role=menu]').waitFor({ state: 'detached' })
    expect((await stop(page)).name).toBe(opener)
    expect(trouble).toEqual([])
  })

  it.each(['Alt+ArrowDown', 'Alt+Enter', 'Shift+F10'])('Escape leads from what %s opens back to the grid', async (key) => {
    const { page, trouble } = await openApp()
    await cellAt(page, 'C6').click()
    await page.keyboard.press(key)
    await page.locator('[role=dialog], [role=menu]').first().waitFor()
    await page.keyboard.press('Escape')
    expect(isGrid(await stop(page))).toBe(true)
    expect(trouble).toEqual([])
  })

  it('sheets: shown, named and moved, and their menu, from the list', async () => {
    const { page, trouble } = await openApp()
    const sheet = (name: string) => page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: new RegExp(`^${name}`) })
    await sheet('Cautions').focus()
    await page.keyboard.press('Enter')
    expect(await page.getByRole('grid').getAttribute('aria-label')).toBe('Sheet Cautions')
    await sheet('Cautions').focus()
    await page.keyboard.press('Shift+F10')
    await page.getByRole('menu', { name: 'Sheet Cautions' }).waitFor()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Escape')
    expect((await stop(page)).name).toContain('Cautions')
    expect(trouble).toEqual([])
  })
})
