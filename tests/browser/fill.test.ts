import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, openBlank, settled, shown, useBrowser, type Opened } from './app.ts'

useBrowser()

/** Pastes as another program's text would be. */
const paste = ({ page }: Opened, text: string): Promise<void> =>
  page.getByRole('grid').evaluate((grid, pasted) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', pasted)
    grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, text)

/** What copying, or cutting, puts on the clipboard. */
const copied = ({ page }: Opened, kind: 'copy' | 'cut'): Promise<string> =>
  page.getByRole('grid').evaluate((grid, type) => {
    const clipboardData = new DataTransfer()
    grid.dispatchEvent(new ClipboardEvent(type, { clipboardData, bubbles: true, cancelable: true }))
    return clipboardData.getData('text/plain')
  }, kind)

async function select({ page }: Opened, from: string, to: string): Promise<void> {
  await cellAt(page, from).click()
  await cellAt(page, to).click({ modifiers: ['Shift'] })
}

const texts = ({ page }: Opened, addresses: readonly string[]): Promise<string[]> =>
  Promise.all(addresses.map(async (address) => ((await cellAt(page, address).textContent()) ?? '').trim()))

describe('filling, copying and pasting in the browser', () => {
  it('fills down and across by key, references following, and one undo takes it back', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    for (const [address, text] of [['A1', '1'], ['A2', '2'], ['A3', '3'], ['B1', '=A1*10']] as const) await enter(page, address, text)
    await select(app, 'B1', 'B3')
    await page.keyboard.press('Alt+Shift+ArrowDown')
    await settled(page)
    await shown(page, 'B3', /30/)
    expect(await texts(app, ['B1', 'B2', 'B3'])).toEqual(['10', '20', '30'])

    await select(app, 'B1', 'C2')
    await page.keyboard.press('Alt+Shift+ArrowRight')
    await shown(page, 'C2', /200/)
    expect(await texts(app, ['C1', 'C2'])).toEqual(['100', '200'])
    await page.keyboard.press('Control+z')
    await settled(page)
    expect(await texts(app, ['C1', 'C2', 'B2'])).toEqual(['', '', '20'])

    await cellAt(page, 'B1').click()
    await page.keyboard.press('Alt+Shift+ArrowDown')
    await page.getByText('To fill down, select the cells to repeat').waitFor()
    expect(app.trouble).toEqual([])
  })

  it('fills by dragging the mark at the corner', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await enter(page, 'A1', '4')
    await enter(page, 'B1', '=A1+1')
    await cellAt(page, 'B1').click()
    const mark = await page.locator('.fill-mark').boundingBox()
    const target = await cellAt(page, 'B4').boundingBox()
    if (!mark || !target) throw new Error('neither mark nor target is in view')
    await page.mouse.move(mark.x + 9, mark.y + 9)
    await page.mouse.down()
    await page.mouse.move(target.x + 20, target.y + 8, { steps: 4 })
    expect(await page.locator('.fill-preview').count()).toBe(1)
    await page.mouse.up()
    await settled(page)
    await shown(page, 'B4', /1/)
    expect(await texts(app, ['B1', 'B2', 'B3', 'B4'])).toEqual(['5', '1', '1', '1'])
    expect(await page.locator('.fill-preview').count()).toBe(0)
    expect(app.trouble).toEqual([])
  })

  it('takes quoted cells with line breaks, and gives them', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await cellAt(page, 'A1').click()
    await paste(app, '"first\nsecond ""marked"""\t7\r\nplain\t8\r\n')
    await settled(page)
    expect(await texts(app, ['A1', 'B1', 'A2', 'B2'])).toEqual(['first\nsecond "marked"', '7', 'plain', '8'])
    expect(await copied(app, 'copy')).toBe('"first\nsecond ""marked"""\t7\r\nplain\t8')
    expect(app.trouble).toEqual([])
  })

  it('copies formulas with their references, repeats them over a larger selection, and cuts', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    for (const [address, text] of [['A1', '1'], ['A2', '2'], ['A3', '3'], ['B1', '=A1*10']] as const) await enter(page, address, text)
    await cellAt(page, 'B1').click()
    const text = await copied(app, 'copy')
    await select(app, 'B2', 'B3')
    await paste(app, text)
    await settled(page)
    await shown(page, 'B3', /30/)
    expect(await texts(app, ['B2', 'B3'])).toEqual(['20', '30'])
    await select(app, 'A2', 'A3')
    expect(await copied(app, 'cut')).toBe('2\r\n3')
    await settled(page)
    expect(await texts(app, ['A1'])).toEqual(['1'])
    // What was cut moves: the formulas that refer to it follow.
    await cellAt(page, 'D5').click()
    await paste(app, '2\r\n3')
    await settled(page)
    await cellAt(page, 'B2').click()
    expect(await page.getByRole('textbox', { name: 'Content' }).inputValue()).toBe('=D5*10')
    expect(await shown(page, 'B3', /30/)).toBe('30')
    expect(app.trouble).toEqual([])
  })

  it('pastes 10 000 rows as one step, with the formulas computed', async () => {
    const app = await openApp()
    const { page } = app
    await openBlank(page)
    await cellAt(page, 'A1').click()
    await paste(app, Array.from({ length: 10_000 }, (_, row) => `V-${row + 1}\t${row + 1}\tft3\t=B${row + 1}*2`).join('\r\n'))
    await settled(page)
    expect(await shown(page, 'D10000', /20000/)).toBe('20000')
    await page.keyboard.press('Control+z')
    await settled(page)
    await page.keyboard.press('Control+Home')
    expect(await texts(app, ['A1', 'D3'])).toEqual(['', ''])
    expect(app.trouble).toEqual([])
  })
})
