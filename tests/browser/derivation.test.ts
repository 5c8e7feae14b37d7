import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { openApp, useBrowser, type Opened } from './app.ts'
import { findings } from './axe.ts'
import { pagesOf } from './pdf.ts'

useBrowser()

/** Liquid fed × time / ρL: a formula with conversions and a function in it, upstream of which there are some more. */
const BALLAST = 'C44'
const NAME = 'Ballast volume wanted below the control level'

async function goTo(page: Page, address: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Address' }).fill(address)
  await page.keyboard.press('Enter')
}

/** Opens the fold of Why by keyboard, and gives the tree of steps. */
async function openDerivation({ page }: Opened): Promise<Locator> {
  await goTo(page, BALLAST)
  await page.locator('.walk-words').waitFor()
  const fold = page.locator('.derivation-fold > summary')
  await fold.focus()
  await page.keyboard.press('Enter')
  const tree = page.getByRole('tree', { name: 'Steps of the derivation' })
  await tree.waitFor()
  return tree
}

async function notePrinting(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => void (document.documentElement.dataset['printed'] = 'yes')
  })
}

async function printed(page: Page): Promise<readonly string[]> {
  await page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).click()
  await page.locator('html[data-printed]').waitFor()
  return pagesOf(await page.pdf({ preferCSSPageSize: true }))
}

describe('the derivation beside the grid', () => {
  it('is walked by keyboard alone: opened, from a step to what it is computed from, to its cell and back', async () => {
    const app = await openApp()
    const { page, trouble } = app
    const tree = await openDerivation(app)
    const step = (name: RegExp) => tree.getByRole('treeitem', { name })
    await step(new RegExp(NAME)).waitFor()
    // The result stands first, open, and is where the keyboard comes in.
    expect(await tree.getByRole('treeitem').first().getAttribute('aria-label')).toContain(NAME)
    await tree.getByRole('treeitem').first().focus()
    expect(await tree.getByRole('treeitem').first().getAttribute('aria-expanded')).toBe('true')
    expect(await tree.textContent()).toMatch(/= [\d.]+ kg\/s × 60 s \/ [\d.]+ kg\/m3/)
    const here = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))

    await page.keyboard.press('ArrowRight')
    const used = await here()
    expect(used).not.toContain(NAME)
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press(' ')
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('End')
    expect(await here()).toMatch(/^1, /)
    await page.keyboard.press('Home')
    await page.keyboard.press('ArrowDown')
    const second = (await here()) ?? ''
    await page.keyboard.press('Enter')
    const [, address = ''] = /Duty!([A-Z]+\d+)$/.exec(second) ?? []
    await expect.poll(() => page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe(address)
    // The list stays, and so does the keyboard; the way back is there.
    expect(await here()).toBe(second)
    expect(await tree.getByRole('treeitem').first().getAttribute('aria-label')).toContain(NAME)
    await page.getByRole('navigation', { name: 'The way back' }).getByRole('button', { name: `← ${BALLAST}` }).click()
    await expect.poll(() => page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe(BALLAST)
    expect(await findings(page)).toEqual([])
    expect(trouble).toEqual([])
  })

  it('reads the other way round, opens and closes all, and follows the mouse and the numbers in the text', async () => {
    const app = await openApp()
    const { page, trouble } = app
    const tree = await openDerivation(app)
    await page.getByRole('checkbox', { name: 'Result first' }).uncheck()
    expect(await tree.getByRole('treeitem').last().getAttribute('aria-label')).toContain(NAME)
    await page.getByRole('button', { name: 'Open all' }).click()
    expect(await tree.locator('[aria-expanded=false]').count()).toBe(0)
    await tree.getByRole('treeitem').last().locator('.derivation-number').first().click()
    expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('treeitem')
    await page.getByRole('button', { name: 'Close all' }).click()
    expect(await tree.locator('[aria-expanded=true]').count()).toBe(0)
    await tree.getByRole('treeitem', { name: /Load with margin/ }).locator('.derivation-go').click()
    await expect.poll(() => page.getByRole('textbox', { name: 'Address' }).inputValue()).toBe('C38')
    await page.getByRole('button', { name: 'Derive the selected cell' }).click()
    await expect.poll(() => tree.getByRole('treeitem').last().getAttribute('aria-label')).toContain('Load with margin')
    expect(trouble).toEqual([])
  })

  it('says that the workbook has changed, and derives again', async () => {
    const app = await openApp()
    const { page, trouble } = app
    const tree = await openDerivation(app)
    await goTo(page, 'C13')
    await page.keyboard.type('2')
    await page.keyboard.press('Enter')
    await page.getByText('The workbook has changed since.').waitFor()
    await goTo(page, BALLAST)
    await page.getByRole('button', { name: 'Derive again' }).click()
    await expect.poll(() => tree.textContent()).toMatch(/× 120 s/)
    expect(trouble).toEqual([])
  })
})

describe('the derivation report', () => {
  it('is printed on the paper chosen, with cover, given, steps, functions and cautions on numbered pages', async () => {
    const app = await openApp()
    const { page, trouble } = app
    await openDerivation(app)
    await notePrinting(page)
    await page.getByRole('button', { name: 'Derivation report…' }).click()
    const dialog = page.getByRole('dialog', { name: 'Derivation report' })
    expect(await dialog.getByLabel('Results').inputValue()).toBe(`Duty!${BALLAST}`)
    await dialog.getByLabel('Results').fill('Duty!A1')
    await dialog.getByRole('button', { name: 'Print', exact: true }).click()
    await dialog.getByRole('alert').filter({ hasText: 'Nothing is computed in Duty!A1' }).waitFor()
    await dialog.getByLabel('Results').fill(`${BALLAST}, Vertical drum!C36`)
    await dialog.getByRole('button', { name: 'Print', exact: true }).click()
    await dialog.getByRole('alert').filter({ hasText: '“Vertical drum!C36” is neither an address nor a name' }).waitFor()
    await dialog.getByLabel('Results').fill(`${BALLAST}, 'Vertical drum'!C36`)
    await dialog.getByLabel('Checked by').fill('C. Reviewer')
    await dialog.getByLabel('A4').check()
    expect(await findings(page)).toEqual([])
    const pages = await printed(page)
    for (const [index, text] of pages.entries()) {
      expect(text).toContain(`${index + 1} / ${pages.length}`)
      expect(text).toContain('Engineering estimate, not a compliance finding.')
    }
    for (const part of [/Derivation of chosen results/i, /2 results/, /C\. Reviewer/, /Signature/]) expect(pages[0]).toMatch(part)
    const whole = pages.join(' ')
    for (const part of ['Given', 'Steps', 'Functions', 'Cautions', NAME, 'FEED.FLOW']) expect(whole).toContain(part)
    expect(whole).toMatch(/kg\/s × 60 s \/ [\d.]+ kg\/m3/)
    expect(await page.locator('.report-place').count()).toBe(0)
    expect(trouble).toEqual([])
  })

  it('is saved as one file that needs nothing else', async () => {
    const app = await openApp()
    const { page, trouble } = app
    await openDerivation(app)
    await page.getByRole('button', { name: 'Derivation report…' }).click()
    const download = page.waitForEvent('download')
    await page.getByRole('dialog').getByRole('button', { name: 'Save as a file' }).click()
    const file = await download
    expect(file.suggestedFilename()).toMatch(/derivation\.html$/)
    const folder = await mkdtemp(join(tmpdir(), 'lowside-derivation-'))
    await file.saveAs(join(folder, 'derivation.html'))
    const html = await readFile(join(folder, 'derivation.html'), 'utf8')
    await rm(folder, { recursive: true })
    expect(html).toContain("default-src 'none'")
    expect(html).not.toMatch(/<script|src=|https?:\/\/(?!doi)/)
    const alone = await app.context.newPage()
    await alone.setContent(html)
    await alone.getByRole('link', { name: '[1]', exact: true }).first().click()
    expect(alone.url()).toMatch(/#step-1$|about:blank/)
    expect(trouble).toEqual([])
  })
})

describe('the hand calculation sheet', () => {
  it.each(['Letter', 'A4'])('is a page or two on %s, with room, comparison and signature', async (paper) => {
    const app = await openApp()
    const { page, trouble } = app
    await openDerivation(app)
    await notePrinting(page)
    await page.getByRole('button', { name: 'Hand calculation sheet…' }).click()
    await page.getByRole('dialog', { name: 'Hand calculation sheet' }).getByLabel(paper).check()
    const pages = await printed(page)
    expect(pages.length).toBeLessThanOrEqual(2)
    const whole = pages.join(' ')
    for (const part of [/Hand calculation sheet/i, /Sought/, /Given/, /By hand/, /By Lowside/, /Comparison/, /Computed by/, /Signature/, /Engineering estimate/]) expect(whole).toMatch(part)
    expect(whole).toMatch(/kg\/s × 60 s/)
    expect(trouble).toEqual([])
  })

  it('keeps the values on a page of their own where the checker is to compute blind', async () => {
    const app = await openApp()
    const { page, trouble } = app
    await openDerivation(app)
    const value = /([\d.]+) ft3/.exec((await page.getByRole('treeitem').first().getAttribute('aria-label')) ?? '')?.[1] ?? 'none'
    await notePrinting(page)
    await page.getByRole('button', { name: 'Hand calculation sheet…' }).click()
    await page.getByRole('dialog').getByLabel(/Without the values/).check()
    const pages = await printed(page)
    const at = pages.findIndex((text) => /values by Lowside/i.test(text))
    expect(at).toBeGreaterThan(0)
    expect(pages.slice(0, at).join(' ')).not.toContain(value)
    expect(pages.slice(at).join(' ')).toContain(value)
    expect(trouble).toEqual([])
  })
})
