import { describe, expect, it } from 'vitest'
import { cellAt, openApp, settled, shown, useBrowser, type Opened } from './app.ts'
import { sound } from './sound.ts'

useBrowser()

/** Wide enough to show the demo and some empty columns beside it. */
async function openWide(): Promise<Opened> {
  const app = await openApp({ width: 1920, height: 1080 })
  app.page.setDefaultTimeout(5000)
  return app
}

const inLine = ({ page }: Opened) => page.getByRole('textbox', { name: 'Content', exact: true })
const inCell = ({ page }: Opened) => page.getByRole('textbox', { name: /^Content of/ })
const suggestions = ({ page }: Opened) => page.getByRole('listbox', { name: 'Suggestions' })
const address = ({ page }: Opened) => page.getByRole('textbox', { name: 'Address' })

/** A place beside the demo, which stands in columns A to F of its first sheet. */
async function atEmptyCell({ page }: Opened, cell = 'G6'): Promise<void> {
  await cellAt(page, cell).click()
}

describe('entering', () => {
  it('goes down, up, right and left by Enter and Tab with Shift, and nowhere by Escape', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    for (const [typed, key, next] of [['1', 'Enter', 'G7'], ['2', 'Shift+Enter', 'G6'], ['3', 'Tab', 'H6'], ['4', 'Shift+Tab', 'G6'], ['5', 'ArrowDown', 'G7'], ['6', 'ArrowRight', 'H7']] as const) {
      await page.keyboard.type(typed)
      await page.keyboard.press(key)
      expect([typed, await address(app).inputValue()]).toEqual([typed, next])
    }
    expect(await shown(page, 'G6', /5/)).toBe('5')
    expect(await shown(page, 'G7', /6/)).toBe('6')
    await page.keyboard.type('99')
    await page.keyboard.press('Escape')
    expect([await address(app).inputValue(), await inLine(app).inputValue()]).toEqual(['H7', ''])
    await sound(app)
  })

  it('changes what is there by F2, double click and the entry line, and breaks a line by Ctrl+Enter', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('one')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('F2')
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.type('X')
    await page.keyboard.press('Control+Enter')
    await page.keyboard.type('Y')
    expect(await inCell(app).inputValue()).toBe('onX\nYe')
    await page.keyboard.press('Enter')
    await cellAt(page, 'G6').dblclick()
    await page.keyboard.type('!')
    await page.keyboard.press('Enter')
    await cellAt(page, 'G6').click()
    await inLine(app).click()
    await page.keyboard.press('Control+End')
    await page.keyboard.type('?')
    await page.keyboard.press('Tab')
    expect(await address(app).inputValue()).toBe('H6')
    await cellAt(page, 'G6').click()
    expect(await inLine(app).inputValue()).toBe('onX\nYe!?')
    await sound(app)
  })

  it('takes formulas as other programs write them', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    for (const formula of ['=1E5*2', '=IF(TRUE,"3/4"" NPS","")', '=IF(true;7;8)', '=+4']) {
      await page.keyboard.type(formula)
      await page.keyboard.press('Enter')
    }
    await settled(page)
    expect([await shown(page, 'G6', /\d/), await shown(page, 'G7', /NPS/), await shown(page, 'G8', /\d/), await shown(page, 'G9', /\d/)]).toEqual(['200000', '3/4" NPS', '7', '4'])
    await sound(app)
  })
})

describe('pointing', () => {
  it('writes references by clicks and drags, on other sheets too, and comes back', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=2*')
    await cellAt(page, 'C6').click()
    expect(await inCell(app).inputValue()).toBe('=2*C6')
    await cellAt(page, 'C7').click()
    expect(await inCell(app).inputValue()).toBe('=2*C7')
    await page.keyboard.type('+COUNT(')
    await cellAt(page, 'C6').hover()
    await page.mouse.down()
    await cellAt(page, 'D8').hover()
    await page.mouse.up()
    expect(await inCell(app).inputValue()).toBe('=2*C7+COUNT(C6:D8')
    await page.keyboard.type(')+')
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Vertical drum').click()
    await cellAt(page, 'C8').click()
    expect(await inLine(app).inputValue()).toBe("=2*C7+COUNT(C6:D8)+'Vertical drum'!C8")
    await page.keyboard.press('Enter')
    await settled(page)
    expect(await page.getByRole('grid').getAttribute('aria-label')).toBe('Sheet Duty')
    expect(await address(app).inputValue()).toBe('G7')
    await cellAt(page, 'G6').click()
    expect(await inLine(app).inputValue()).toBe("=2*C7+COUNT(C6:D8)+'Vertical drum'!C8")
    // Where no reference fits, a click enters and goes there.
    await page.keyboard.type('=1')
    await cellAt(page, 'C6').click()
    expect(await address(app).inputValue()).toBe('C6')
    expect(await shown(page, 'G6', /1/)).toBe('1')
    await sound(app)
  })

  it('writes references by arrows, stretched with Shift, and F8 makes them absolute', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=SUM(')
    for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'Shift+ArrowDown', 'Shift+ArrowRight']) await page.keyboard.press(key)
    expect(await inCell(app).inputValue()).toBe('=SUM(C6:D7')
    for (const then of ['$C$6:$D$7', 'C$6:D$7', '$C6:$D7', 'C6:D7']) {
      await page.keyboard.press('F8')
      expect(await inCell(app).inputValue()).toBe(`=SUM(${then}`)
    }
    await page.keyboard.type(')*')
    await page.keyboard.press('ArrowUp')
    expect(await inCell(app).inputValue()).toBe('=SUM(C6:D7)*G5')
    // The field's own undo takes back what was pointed at.
    await page.keyboard.press('Control+z')
    expect(await inCell(app).inputValue()).toBe('=SUM(C6:D7)*')
    await page.keyboard.press('Escape')
    expect(await inLine(app).inputValue()).toBe('')
    await sound(app)
  })

  it('leaves the arrows to the text after the caret was moved by hand', async () => {
    const app = await openWide()
    const { page } = app
    await cellAt(page, 'C6').click()
    await page.keyboard.press('F2')
    await page.keyboard.press('Home')
    await page.keyboard.type('=1+2+')
    await page.keyboard.press('Home')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.type('5')
    expect(await inCell(app).inputValue()).toMatch(/^=1\+52\+/)
    await page.keyboard.press('Escape')
    await sound(app)
  })
})

describe('suggestions', () => {
  it('are chosen by arrows, taken by Tab, Enter or a click, and put aside by Escape', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=SAT.PR')
    await suggestions(app).getByRole('option', { name: /SAT\.PRESSURE/, selected: true }).waitFor()
    expect(await inCell(app).getAttribute('aria-activedescendant')).toBe(await suggestions(app).getByRole('option', { selected: true }).getAttribute('id'))
    await page.keyboard.press('Tab')
    expect(await inCell(app).inputValue()).toBe('=SAT.PRESSURE(')
    await page.keyboard.type('"5 ')
    await suggestions(app).getByRole('option', { name: /°F/ }).click()
    expect(await inCell(app).inputValue()).toBe('=SAT.PRESSURE("5 °F"')
    await page.keyboard.type(',"ps')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    expect(await inCell(app).inputValue()).toBe('=SAT.PRESSURE("5 °F","psig"')
    await page.keyboard.type(')+SU')
    await suggestions(app).waitFor()
    await page.keyboard.press('Escape')
    await suggestions(app).waitFor({ state: 'detached' })
    expect(await inCell(app).inputValue()).toBe('=SAT.PRESSURE("5 °F","psig")+SU')
    await page.keyboard.press('Backspace')
    await page.keyboard.press('Escape')
    await page.keyboard.press('Backspace')
    await page.keyboard.press('Backspace')
    await page.keyboard.press('Enter')
    await settled(page)
    // 34.27 psia at 5 °F (NBS Circular 142, 1923) is 19.57 psig at the standard atmosphere of 14.696 psia.
    expect(Number(await shown(page, 'G6', /^\s*19/))).toBeCloseTo(19.57, 1)
    await sound(app)
  })

  it('are sheets by name, and units in a unit cell', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=1+Vert')
    await suggestions(app).getByRole('option', { name: /Vertical drum/ }).click()
    expect(await inCell(app).inputValue()).toBe("=1+'Vertical drum'!")
    await page.keyboard.press('Escape')
    // The load's unit, TR.
    await cellAt(page, 'D6').click()
    await page.keyboard.type('k')
    await suggestions(app).getByRole('option', { name: /^kW/ }).first().click()
    expect(await inCell(app).inputValue()).toBe('kW')
    await page.keyboard.press('Enter')
    expect(await shown(page, 'D6', /kW/)).toBe('kW')
    await sound(app)
  })
})

describe('the hint', () => {
  it('says what the argument at hand accepts, and follows the caret', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=SAT.PRESSURE(')
    await page.getByText(/accepted: a temperature -77\.6 °C = -107\.68 °F/).waitFor()
    await page.keyboard.type('C6:D6,')
    await page.getByText(/accepted: a unit of pressure/).waitFor()
    await page.keyboard.press('ArrowLeft')
    expect(await inCell(app).inputValue()).toBe('=SAT.PRESSURE(C6:D6,F6')
    // The pointed reference is written and the caret put behind it in a frame of its own; no hand is quicker than that.
    await page.waitForTimeout(200)
    await page.keyboard.press('Home')
    for (let step = 0; step < 16; step++) await page.keyboard.press('ArrowRight')
    await page.getByText(/accepted: a temperature -77\.6 °C = -107\.68 °F/).waitFor()
    await page.keyboard.press('Escape')
    await page.keyboard.type('=ROUND(C6,')
    await page.getByText(/decimal places/).waitFor()
    await page.keyboard.press('Escape')
    await sound(app)
  })
})

describe('a formula that cannot be read', () => {
  it('is marked at its place while it is typed, and kept when it is entered', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=1+*2')
    await page.locator('.typing-problem').getByText('a value is missing between + and *, at character 4').waitFor()
    expect(await page.locator('.cell-editor .token-problem').textContent()).toBe('*')
    expect(await inCell(app).getAttribute('aria-invalid')).toBe('true')
    await page.keyboard.press('Enter')
    await settled(page)
    await cellAt(page, 'G6').click()
    expect(await inLine(app).inputValue()).toBe('=1+*2')
    await page.keyboard.press('F2')
    await page.locator('.typing-problem').getByText('a value is missing between + and *, at character 4').waitFor()
    await page.keyboard.press('Escape')
    await sound(app)
  })

  it('is not blamed while its end is still to come', async () => {
    const app = await openWide()
    const { page } = app
    await atEmptyCell(app)
    await page.keyboard.type('=SUM(1,(2+')
    expect(await inCell(app).getAttribute('aria-invalid')).toBe('false')
    await page.keyboard.press('Home')
    await page.getByText('a value is missing after +').waitFor()
    await page.keyboard.press('Escape')
    await sound(app)
  })
})
