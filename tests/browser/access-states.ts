import type { Page } from 'playwright-core'
import { cellAt, settled } from './app.ts'

/** A state of the screen that anyone can reach, and how. */
export interface ScreenState {
  readonly name: string
  readonly reach: (page: Page) => Promise<void>
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
/** A verb of the top line, from the list of those that a narrow window has no room for. */
export async function verb(page: Page, name: string): Promise<void> {
  const more = button(page, 'More')
  if (await more.isVisible()) await more.click()
  await button(page, name).click()
}

/** Opens a panel that may be open already. */
async function panel(page: Page, name: string): Promise<void> {
  if ((await button(page, name).getAttribute('aria-pressed')) === 'false') await button(page, name).click()
}

/** Wherever the cell is: in a small window its column may be out of view. */
async function goTo(page: Page, address: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Address' }).fill(address)
  await page.keyboard.press('Enter')
}

async function type(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address)
  await page.keyboard.type(text)
}

async function enter(page: Page, address: string, text: string): Promise<void> {
  await type(page, address, text)
  await page.keyboard.press('Enter')
  await settled(page)
}

const dialog = (page: Page) => page.getByRole('dialog').waitFor()

/** Keeps nothing from here on: what is changed then is in no store and no file. */
async function withoutStore(page: Page): Promise<void> {
  await page.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException('not here', 'SecurityError')
    }
  })
  await page.reload()
  await page.getByRole('note', { name: 'Kept' }).filter({ hasText: 'Not kept in this browser' }).waitFor()
  await settled(page)
}

/** Each from a fresh page with the demo open. */
export const SCREEN_STATES: readonly ScreenState[] = [
  { name: 'the demo', reach: async () => undefined },
  { name: 'a table with a selected range', async reach(page) {
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Sizes tried').click()
    await settled(page)
    await goTo(page, 'C8:E10')
    await panel(page, 'Why')
    await page.getByRole('region', { name: 'The selected range' }).getByText('numbers').waitFor()
  } },
  { name: 'suggestions at the cell', async reach(page) {
    await type(page, 'C6', '=DRUM')
    await page.getByRole('listbox', { name: 'Suggestions' }).waitFor()
    await page.keyboard.press('ArrowDown')
  } },
  { name: 'suggestions in the entry line', async reach(page) {
    await goTo(page, 'C6')
    await page.getByRole('textbox', { name: 'Content', exact: true }).fill('=SAT')
    await page.getByRole('listbox', { name: 'Suggestions' }).waitFor()
  } },
  { name: 'the hint of an argument', async reach(page) {
    await type(page, 'C7', '=FEED.FLOW(C6:D6,')
    await page.locator('.typing-hint').waitFor()
  } },
  { name: 'a formula that cannot be read', async reach(page) {
    await type(page, 'C7', '=C6+*2')
    await page.locator('.typing-problem').first().waitFor()
  } },
  { name: 'units at the cell', async reach(page) {
    await goTo(page, 'C6')
    await page.keyboard.press('Alt+ArrowDown')
    await dialog(page)
  } },
  { name: 'units in the entry line', async reach(page) {
    await goTo(page, 'C16')
    await button(page, 'Unit: in').click()
    await dialog(page)
  } },
  { name: 'format and note', async reach(page) {
    await goTo(page, 'C6')
    await page.keyboard.press('Alt+Enter')
    await dialog(page)
  } },
  { name: 'a note, and a unit that does not fit', async reach(page) {
    await goTo(page, 'C6')
    await page.keyboard.press('Alt+Enter')
    await page.getByRole('textbox', { name: 'Note on the cell' }).fill('From the load list, revision 2')
    await button(page, 'Keep the note').click()
    await enter(page, 'D7', 'TRx')
    await goTo(page, 'C6')
    await cellAt(page, 'C6').hover()
    await page.getByRole('tooltip').waitFor()
  } },
  { name: 'Why with a way back', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Why')
    await page.getByRole('list', { name: 'Fed by' }).getByRole('button').first().click()
    await page.getByRole('navigation', { name: 'The way back' }).waitFor()
    await page.getByRole('list', { name: 'Used by' }).waitFor()
  } },
  { name: 'Guide', reach: (page) => panel(page, 'Guide') },
  { name: 'Guide with a function and a method', async reach(page) {
    await panel(page, 'Guide')
    await page.locator('.guide-entry summary').first().click()
    await page.getByText(/ gives /).first().waitFor()
    await page.locator('h2:text("Methods") ~ .guide-entry summary').first().click()
  } },
  { name: 'Find with cells found', async reach(page) {
    await page.keyboard.press('Control+f')
    await page.keyboard.type('droplet')
    await page.getByRole('list', { name: 'Cells found' }).getByRole('button').first().waitFor()
  } },
  { name: 'no panel', async reach(page) {
    const close = button(page, 'Close the side panel')
    if (await close.isVisible()) await close.click()
  } },
  { name: 'the menu Restate', reach: (page) => verb(page, 'Restate') },
  { name: 'the menu Export', reach: (page) => verb(page, 'Export') },
  { name: 'the menu of cells', async reach(page) {
    await cellAt(page, 'C6').click({ button: 'right' })
    await page.getByRole('menu').waitFor()
  } },
  { name: 'the menu of a sheet', async reach(page) {
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Cautions').click({ button: 'right' })
    await page.getByRole('menu').waitFor()
  } },
  { name: 'a sheet being named', async reach(page) {
    await page.getByRole('navigation', { name: 'Sheets' }).getByText('Cautions').dblclick()
    await page.getByRole('textbox', { name: 'New name of sheet Cautions' }).waitFor()
  } },
  { name: 'what to print', async reach(page) {
    await verb(page, 'Print')
    await dialog(page)
  } },
  { name: 'Figure', reach: (page) => panel(page, 'Figure') },
  { name: 'templates', async reach(page) {
    await verb(page, 'Start from a template')
    await page.getByRole('dialog').getByText('Empty workbook').waitFor()
  } },
  { name: 'recent workbooks, one about to be forgotten', async reach(page) {
    await verb(page, 'Start from a template')
    await page.getByRole('dialog').getByText('Empty workbook').click()
    await page.getByRole('grid', { name: 'Sheet Sheet' }).waitFor()
    await settled(page)
    await verb(page, 'Recent')
    await page.getByRole('button', { name: /^Forget/ }).first().click()
    await button(page, 'Keep it').waitFor()
  } },
  { name: 'a file that cannot be read', async reach(page) {
    const chooser = page.waitForEvent('filechooser')
    await verb(page, 'Open')
    await (await chooser).setFiles({ name: 'broken.lowside.json', mimeType: 'application/json', buffer: Buffer.from('{"lowside": 1, "title": 3}') })
    await dialog(page)
  } },
  { name: 'changes that nothing holds', async reach(page) {
    await withoutStore(page)
    await enter(page, 'C6', '90')
    await verb(page, 'Start from a template')
    await dialog(page)
  } },
  { name: 'cases, of which one is current and differs', async reach(page) {
    await panel(page, 'Cases')
    await button(page, 'New case').click()
    await page.keyboard.type('Summer peak')
    await page.keyboard.press('Enter')
    await enter(page, 'C6', '96')
    await goTo(page, 'C16')
    await button(page, /^Compare /).click()
    await page.locator('.cases-table .case-difference').first().waitFor()
  } },
  { name: 'a sweep with its figures and the values at a point', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Sweep')
    await page.getByRole('combobox', { name: /^Input: choose/ }).selectOption({ index: 1 })
    await page.getByRole('checkbox', { name: /^all checks/ }).check()
    await button(page, 'Run').click()
    await page.getByRole('slider').first().press('ArrowRight')
    await page.getByText('The points as a table').click()
    await button(page, 'Stop').waitFor({ state: 'detached' })
  } },
  { name: 'an input solved for', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Solve for')
    await page.getByRole('combobox', { name: /^Input: choose/ }).selectOption({ index: 1 })
    await page.getByRole('textbox', { name: /^Goal/ }).fill('40')
    await button(page, 'Run').click()
    await page.getByText(/The way there/).click()
  } },
  { name: 'margins', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Margins')
    await button(page, 'Run').click()
    await page.getByRole('img', { name: /^What moves/ }).waitFor()
  } },
  { name: 'findings, one of them being accepted', async reach(page) {
    await enter(page, 'C6', '=1/0')
    await panel(page, 'Findings')
    await page.getByRole('list', { name: 'Cells with errors' }).waitFor()
    await button(page, 'Next finding').click()
    await page.getByText('What was looked for').click()
    await button(page, 'Accept with a note…').click()
    await page.getByRole('textbox', { name: 'Name', exact: true }).waitFor()
  } },
  { name: 'differences, one of them with its way back', async reach(page) {
    await enter(page, 'C6', '90')
    await panel(page, 'Differences')
    await button(page, 'Next difference').click()
    await button(page, 'Take this back').waitFor()
  } },
  { name: 'differences from a template', async reach(page) {
    await panel(page, 'Differences')
    await page.getByRole('radio', { name: 'the template it came from' }).check()
    await page.getByRole('combobox', { name: 'Template compared with' }).selectOption('Basis')
    await page.locator('.differences-panel .review-item').first().waitFor()
  } },
  { name: 'checked, a stale mark being checked again, with the record', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Checked')
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('R. Smith')
    await button(page, 'Mark as checked').click()
    await page.getByText('1 mark, all good.').waitFor()
    await enter(page, 'C6', '90')
    await page.getByText('1 line', { exact: true }).click()
    await button(page, 'Check again…').click()
    await button(page, 'Check again').waitFor()
  } },
  { name: 'why a checked cell that has changed since', async reach(page) {
    await goTo(page, 'C16')
    await panel(page, 'Checked')
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('R. Smith')
    await button(page, 'Mark as checked').click()
    await page.getByText('1 mark, all good.').waitFor()
    await enter(page, 'C6', '90')
    await panel(page, 'Why')
    await goTo(page, 'C16')
    await page.getByText(/the mark is stale\.$/).waitFor()
  } },
  { name: 'a notice', async reach(page) {
    await verb(page, 'Restate')
    await page.getByRole('menuitem', { name: 'Restate in US units' }).click()
    await page.getByText('Nothing to restate').waitFor()
  } },
  { name: 'a problem', async reach(page) {
    await page.getByRole('textbox', { name: 'Address' }).fill('no cell')
    await page.keyboard.press('Enter')
    await page.getByRole('alert').getByText('is no cell').waitFor()
  } },
  { name: 'errors', async reach(page) {
    await enter(page, 'C6', '=1/0')
    await goTo(page, 'C16')
    await panel(page, 'Why')
    await page.locator('.panel [role=alert], .why-message').first().waitFor()
  } },
]

/** Another tab on the same workbook, which the first one writes. */
export async function readingTab(page: Page): Promise<Page> {
  const other = await page.context().newPage()
  await other.goto(page.url())
  await other.getByRole('note', { name: 'Kept' }).filter({ hasText: 'Another tab writes' }).waitFor()
  await settled(other)
  return other
}
