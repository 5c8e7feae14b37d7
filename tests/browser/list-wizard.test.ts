import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { openApp, settled, shown, useBrowser, cellAt } from './app.ts'
import { findings } from './axe.ts'

useBrowser()

const LIST = [
  'Cold store, revision B',
  'Tag;Orientation;ID [mm];T/T length [m];Heads;Temp [°C];Qty;Room;Suction;Normal fill (%);Max fill (%);Type',
  'V-1;Vert.;600;2,5;2:1 SE;-10;1;Dock;High;25;30;Surge drum',
  'V-2;Horiz.;24";2,5;F&D;-10;2;Dock;High;25;30;Surge drum',
  'V-3;Vert.;abc;2,5;2:1;-10;1;Dock;High;25;30;Surge drum',
  'V-4;Vert.;xyz;2,5;2:1;-10;1;Dock;High;25;30;Surge drum',
].join('\n')

async function openInventory(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Start from a template' }).click()
  await page.getByRole('button', { name: /^Ammonia charge inventory/ }).click()
  await page.locator('.title-place[data-title="Ammonia charge inventory"]').waitFor()
  await settled(page)
}

/** From the verb to the wizard, by keys alone but for the file, which the operating system asks for. */
async function openWizard(page: Page, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Import', exact: true }).focus()
  await page.keyboard.press('Enter')
  await (await chooser).setFiles({ name: 'client.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
  await page.getByRole('button', { name: 'Rows into a list' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('dialog', { name: 'Rows into a list: client.csv' }).waitFor()
  await page.getByRole('status').filter({ hasText: /rows, \d+ with problems/ }).waitFor({ state: 'attached' })
}

it('an estimator brings a client’s list in by keyboard: one row mended, one left out, the mapping kept and offered again, and undo', async () => {
  const { page, context, trouble } = await openApp()
  await openInventory(page)
  await openWizard(page, LIST)

  // What the headings say is chosen already; the list begins below a title.
  expect(await page.getByLabel('Headings of the file').inputValue()).toBe('1')
  expect(await page.getByLabel('Append to').inputValue()).toBe('Charge')
  expect(await page.getByLabel('Unit of the file for Inside diameter').inputValue()).toBe('mm')
  expect(await page.locator('.list-preview tbody').first().textContent()).toContain('23.622')
  expect(await findings(page)).toEqual([])

  // Two rows cannot be taken: the button says why, and beside each it says what is accepted.
  const append = page.getByRole('button', { name: /^Append/ })
  expect(await append.getAttribute('aria-disabled')).toBe('true')
  expect(await page.locator('#list-hindrance').textContent()).toBe('2 rows with problems: mend them, or leave them out')
  expect(await page.locator('.list-remarks').first().textContent()).toContain('Inside diameter “abc”: not a number; accepted: a number in a unit of length')
  await append.focus()
  await page.keyboard.press('Enter')
  expect(await page.getByRole('dialog').count()).toBe(1)

  // One is mended, in another unit than the list's; the other one is left out.
  const mend = page.getByLabel('Inside diameter in row 5, mended')
  await mend.focus()
  await page.keyboard.press('Control+A')
  await page.keyboard.type('700 mm')
  await page.keyboard.press('Tab')
  await page.locator('#list-hindrance').filter({ hasText: '1 row with problems: mend it, or leave it out' }).waitFor()
  await page.getByLabel('Take row 6 of the file').focus()
  await page.keyboard.press('Space')
  await page.locator('#list-hindrance').filter({ hasText: '4 rows in the file, 1 left out' }).waitFor()

  const name = page.getByLabel('Keep this mapping as')
  await name.focus()
  await page.keyboard.type('Client B')
  await page.keyboard.press('Enter')
  await page.getByText('Kept as “Client B”, in the workbook').waitFor()

  await append.focus()
  await page.keyboard.press('Enter')
  await page.getByText(/3 rows appended to Charge; undo takes them back\. Totals: Volume .* → .* ft3/).waitFor()
  await settled(page)
  await page.getByRole('grid', { name: 'Sheet Charge' }).waitFor()
  expect(await shown(page, 'B66', /V-1/)).toBe('V-1')
  expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid')
  expect(await page.locator('.notice[role=status]').textContent()).toMatch(/At most [\d.]+ → [\d.]+ lb/)
  expect(await cellAt(page, 'B68').textContent()).toContain('V-3')

  // The same headings: the mapping is offered.
  await openWizard(page, LIST.replaceAll('V-', 'W-'))
  expect(await page.getByRole('combobox', { name: 'Mapping', exact: true }).inputValue()).toBe('Client B')
  // Escape asks once before it puts away what was chosen.
  await page.getByLabel('Leave out rows with problems').focus()
  await page.keyboard.press('Space')
  await page.keyboard.press('Escape')
  await page.getByText('Escape once more puts all this away').waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid')

  await page.keyboard.press('Control+Z')
  await settled(page)
  await page.getByRole('button', { name: 'Undo' }).focus()
  expect(await shown(page, 'B66', /Insert rows above/)).toContain('Insert rows above')
  expect(trouble).toEqual([])
  await context.close()
})

it('ten thousand rows: the screen stays live, the preview is cut into pages', async () => {
  const { page, context, trouble } = await openApp()
  await openInventory(page)
  const rows = Array.from({ length: 10_000 }, (_, index) => `T-${index},pipe,2,20,10,20,30,1,Dock,High,Coil`)
  await openWizard(page, ['Tag,Shape,Dia (in),Length (ft),Temp (°F),Normal fill (%),Max fill (%),Qty,Room,Suction,Type', ...rows].join('\n'))
  await page.getByText('1 to 100 of 10000').waitFor()
  expect(await page.locator('.list-preview tbody').count()).toBe(100)
  // While the rows are worked out afresh, a frame is drawn many times.
  const frames = await page.evaluate(async () => {
    let count = 0
    let isOver = false
    const tick = () => {
      count++
      if (!isOver) requestAnimationFrame(tick)
    }
    requestAnimationFrame(tick)
    const unit = document.querySelector<HTMLSelectElement>('select[aria-label="Unit of the file for Length"]')
    if (!unit) throw new Error('no unit of Length')
    unit.value = 'm'
    unit.dispatchEvent(new Event('change', { bubbles: true }))
    while (document.querySelector('.list-preview [aria-busy=true]')) await new Promise((resolve) => setTimeout(resolve))
    isOver = true
    return count
  })
  expect(frames).toBeGreaterThan(2)
  expect(await page.locator('.list-preview tbody').first().textContent()).toContain('65.6168')
  await page.getByRole('button', { name: 'Append 10 000 rows' }).click()
  await page.getByText(/10000 rows appended to Charge/).waitFor()
  await settled(page)
  // The first of them are in view, all are selected.
  expect(await shown(page, 'B66', /T-0/)).toBe('T-0')
  expect(await cellAt(page, 'B70').isVisible()).toBe(true)
  expect(trouble).toEqual([])
  await context.close()
})
