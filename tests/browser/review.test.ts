import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import type { Download, Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { template, typed } from '../review/planted/plant.ts'
import { cellAt, openApp, settled, useBrowser } from './app.ts'
import { enterAt, keys, mouse, type Hand } from './hands.ts'
import { pagesOf } from './pdf.ts'
import { sound } from './sound.ts'

useBrowser()

/*
 * A whole review: a colleague’s workbook is opened, looked through, put right, accepted in part, marked and signed. In it a relief capacity is typed
 * over its formula, a valve is rated too low, a discharge line is too long, and the design pressure is another than the template’s.
 */

const TITLE = 'Relief of the north plant'
const COLLEAGUES = writeWorkbook({ ...typed({ 'Basis!C9': '300', 'Relief!J9': '9', 'Relief!N10': '6', 'Relief!R12': '2000' })(template('relief')), title: TITLE })

describe.each([['mouse', mouse], ['keys alone', keys]] as const)('a review with %s', (_name, handOf) => {
  it('goes from opening to the signed report, and the command line says the same', async () => {
    const app = await openApp()
    const { page } = app
    const hand = handOf(page)
    await page.evaluate(() => {
      window.print = () => void (document.documentElement.dataset['printed'] = 'yes')
    })
    await open(page, hand)

    const findings = await panel(page, hand, 'Findings')
    await outcome(findings, /^Open: .*error/)
    // One is mended: the formula that was typed over is put back, and the finding is gone.
    await hand.walkTo(findings, 'finding', 'Relief!J9')
    await cellIs(page, 'Relief', 'J9')
    await hand.press(findings.getByRole('button', { name: 'Put the template’s formula back' }))
    await page.getByText('Relief!J9 is mended').waitFor()
    await place(findings, 'Relief!J9').waitFor({ state: 'detached' })

    // One is accepted, with a note and a name.
    await hand.walkTo(findings, 'finding', 'Relief!O10')
    await hand.press(findings.getByRole('button', { name: 'Accept with a note…' }))
    const accepting = findings.getByRole('form', { name: 'Accept Relief!O10' })
    await hand.fill(accepting.getByLabel('Name'), 'R. Ellis')
    await hand.fill(accepting.getByLabel(/^Note/), 'A larger valve is on order, PO 1187')
    await hand.press(accepting.getByRole('button', { name: 'Accept', exact: true }))
    await outcome(findings, /; \d+ accepted$/)

    // What differs from the template: the design pressure is taken back.
    const differences = await panel(page, hand, 'Differences')
    await hand.choose(differences.getByRole('radio', { name: 'the template it came from' }))
    await outcome(differences, /differences? from the template/)
    await hand.walkTo(differences, 'difference', 'Basis!C9')
    await hand.press(differences.getByRole('button', { name: 'Take this back' }))
    await place(differences, 'Basis!C9').waitFor({ state: 'detached' })
    await hand.goTo('Basis', 'C9')
    await cellAt(page, 'C9').filter({ hasText: '250' }).waitFor()

    // Where the capacity comes from, down to the inputs.
    await hand.goTo('Relief', 'J9')
    const why = await panel(page, hand, 'Why')
    await hand.press(why.locator('summary').filter({ hasText: 'Derivation' }))
    const steps = why.getByRole('tree', { name: 'Steps of the derivation' })
    await steps.waitFor()
    for (const step of ['Relief!J9', 'Relief!C9', 'Relief!D9', 'Relief!E9']) await steps.getByText(step).first().waitFor()

    // The sheet is marked as checked; the list of sheets shows it.
    const checked = await panel(page, hand, 'Checked')
    const marking = checked.getByRole('form', { name: 'Mark as checked' })
    await hand.choose(marking.getByRole('radio', { name: /the whole sheet/ }))
    expect(await marking.getByLabel('Name').inputValue()).toBe('R. Ellis')
    await hand.choose(marking.getByRole('radio', { name: 'inspection' }))
    await hand.fill(marking.getByLabel(/^Note/), 'Row by row against the data reports')
    await hand.press(marking.getByRole('button', { name: 'Mark as checked' }))
    const share = page.locator('.sheet[data-sheet="Relief"] .sheet-checked')
    await share.filter({ hasText: /^all \d+ checked$/ }).waitFor()

    // Something upstream changes: the mark goes stale and says what it was.
    await enterAt(page, hand, 'Basis', 'C7', '2900')
    await share.filter({ hasText: '1 mark stale' }).waitFor()
    const news = (await panel(page, hand, 'Checked')).getByRole('list', { name: 'What has changed since mark 1' })
    expect(await news.textContent()).toBe('Site elevation (Basis!C7) was 0 ft, is 2900 ft.')
    await hand.press(checked.getByRole('button', { name: 'Check again…' }))
    const again = checked.getByRole('form', { name: 'Check Relief again' })
    await hand.fill(again.getByLabel(/^Note/), 'At 2 900 ft')
    await hand.press(again.getByRole('button', { name: 'Check again', exact: true }))
    await share.filter({ hasText: /^all \d+ checked$/ }).waitFor()

    // What is open when it is signed.
    await outcome(await panel(page, hand, 'Findings'), /; \d+ accepted$/)
    const stillOpen = await listedIn(findings)
    expect(stillOpen).toContain('error Relief!T12')

    // The report, on paper and as a file.
    await hand.press(page.getByRole('button', { name: 'Print', exact: true }))
    const dialog = page.getByRole('dialog', { name: 'Print the calculation report' })
    await hand.fill(dialog.getByLabel('Prepared by'), 'A. Writer')
    await hand.fill(dialog.getByLabel('Checked by'), 'R. Ellis')
    expect(await dialog.getByRole('checkbox', { name: /^With the review/ }).isChecked()).toBe(true)
    await hand.press(dialog.getByRole('button', { name: 'Print', exact: true }))
    await page.locator('html[data-printed]').waitFor()
    const paper = (await pagesOf(await page.pdf({ preferCSSPageSize: true }))).join(' ')
    const html = await textOf(page, await saved(page, () => hand.take(page.getByRole('button', { name: 'Export' }), page.getByRole('menuitem', { name: /^Report \(\.html\)/ }))))

    const file = await saved(page, () => hand.press(page.getByRole('button', { name: 'Save', exact: true })))
    const read = readWorkbook(file)
    const lastHash = 'workbook' in read ? (read.workbook.review?.record.at(-1)?.hash ?? 'no record') : 'no workbook'
    expect(lastHash).toMatch(/^[0-9a-f]{64}$/)
    for (const report of [paper, html].map((text) => text.replace(/\s+/g, ' '))) {
      for (const part of [
        'A larger valve is on order, PO 1187', 'R. Ellis', 'Relief!O10', 'Row by row against the data reports', 'At 2 900 ft', 'inspection', lastHash,
        'Prepared by', 'Checked by', 'Signature', 'Engineering estimate, not a compliance finding',
      ]) expect.soft(report).toContain(part)
      for (const one of stillOpen.filter((words) => !words.startsWith('remark'))) expect.soft(report).toContain(one)
    }
    await sound(app)

    // The command line finds and compares the same in the file that was saved.
    const cli = await commandLine(file)
    const check = await cli('check', 'saved.lowside.json', '--json')
    const found = JSON.parse(check.out) as readonly { readonly severity: string; readonly place: string }[]
    expect(found.map(({ severity, place: at }) => `${severity} ${at}`).toSorted()).toEqual(stillOpen.toSorted())
    expect(check.code).toBe(1)
    const compare = await cli('compare', '--template', 'saved.lowside.json', '--json')
    const { differences: differ } = JSON.parse(compare.out) as { readonly differences: readonly { readonly now?: string; readonly before?: string }[] }
    expect(compare.code).toBe(1)
    expect(differ.flatMap(({ now, before }) => now ?? before ?? [])).toEqual(expect.arrayContaining(['Basis!C7', 'Relief!N10']))
    expect((await cli('compare', 'saved.lowside.json', 'saved.lowside.json')).code).toBe(0)
    await cli.remove()
  })
})

async function open(page: Page, hand: Hand): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await hand.press(page.getByRole('button', { name: 'Open', exact: true }))
  await (await chooser).setFiles({ name: 'north.lowside.json', mimeType: 'application/json', buffer: Buffer.from(COLLEAGUES) })
  await page.locator(`.title-place[data-title="${TITLE}"]`).waitFor()
  await settled(page)
}

/** A panel beside the grid, opened if it is not. */
async function panel(page: Page, hand: Hand, name: string): Promise<Locator> {
  const button = page.getByRole('complementary', { name: 'Side panel' }).getByRole('button', { name, exact: true })
  if ((await button.getAttribute('aria-pressed')) !== 'true') await hand.press(button)
  return page.getByRole('region', { name, exact: true })
}

/** Waits until what a panel found fits, for the workbook as it is now. */
const outcome = (panelShown: Locator, fits: RegExp): Promise<void> => panelShown.getByRole('status').filter({ hasText: fits }).first().waitFor()

const place = (panelShown: Locator, at: string): Locator => panelShown.locator('.review-place').getByText(at, { exact: true })

async function cellIs(page: Page, sheet: string, address: string): Promise<void> {
  await page.getByRole('grid', { name: `Sheet ${sheet}`, exact: true }).waitFor()
  await page.waitForFunction((wanted) => document.querySelector<HTMLInputElement>('input[aria-label="Address"]')?.value === wanted, address)
}

/** All open findings as the panel lists them: "warning Relief!J9". */
async function listedIn(findings: Locator): Promise<string[]> {
  const items = findings.locator('.findings-group .review-item')
  return items.evaluateAll((all) => all.map((one) => `${one.querySelector('.review-word')?.textContent} ${one.querySelector('.review-place')?.textContent}`))
}

async function saved(page: Page, save: () => Promise<void>): Promise<string> {
  const downloading: Promise<Download> = page.waitForEvent('download')
  await save()
  const folder = await mkdtemp(join(tmpdir(), 'lowside-review-'))
  const path = join(folder, 'file')
  await (await downloading).saveAs(path)
  const text = await readFile(path, 'utf8')
  await rm(folder, { recursive: true })
  return text
}

/** What an exported report says, read as a browser shows it. */
async function textOf(page: Page, html: string): Promise<string> {
  const alone = await page.context().newPage()
  await alone.setContent(html)
  const text = await alone.evaluate(() => document.body.innerText)
  await alone.close()
  return text
}

interface CommandLine {
  (...args: string[]): Promise<{ readonly code: number; readonly out: string }>
  readonly remove: () => Promise<void>
}

/** The command line in a folder with the file that was saved, beside the templates as they are. */
async function commandLine(file: string): Promise<CommandLine> {
  const folder = await mkdtemp(join(tmpdir(), 'lowside-review-'))
  await writeFile(join(folder, 'saved.lowside.json'), file)
  const call = async (...args: string[]): ReturnType<CommandLine> => {
    const out: string[] = []
    const code = await run(args, { out: (text) => out.push(text), err: (text) => out.push(text), input: Readable.from(['']), folder, templates: join(import.meta.dirname, '../../templates') })
    return { code, out: out.join('\n') }
  }
  return Object.assign(call, { remove: () => rm(folder, { recursive: true }) })
}
