import { mkdtemp, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { build, preview } from 'vite'
import { Graph } from '../../src/calc/graph.ts'
import { compareWorkbooks } from '../../src/review/differences/compare-workbooks.ts'
import { reviewed } from '../../src/review/reviewed.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { launchBrowser } from '../browser/chromium.ts'
import { TEMPLATES, withVessels } from '../review/clean.ts'
import { template, typed } from '../review/planted/plant.ts'
import { atMost, justSo, millisecondsOf, sideBySide, times, type Figure } from './measure.ts'

const [FEW, MANY] = [1_000, 10_000] as const
const ROUNDS = 3
/** Design section 9: growth no worse than linear × 1.2. */
const MOST_GROWTH = 1.2

/** Findings and differences of an inventory of 10 000 vessels: against its calculation, against a tenth of it, and what the screen does meanwhile. */
export async function review(): Promise<readonly Figure[]> {
  return [...inventories(), ...(await onTheScreen())]
}

function inventories(): readonly Figure[] {
  const templates = TEMPLATES.map(template)
  const [few, many] = [calculated(withVessels(FEW)), calculated(withVessels(MANY))]
  const later = calculated(revised(many.workbook))
  const { calculation, findings, fewer, comparison, fewerCompared } = sideBySide(ROUNDS, {
    calculation: () => millisecondsOf(() => new Graph(many.workbook).allAreas()),
    findings: () => millisecondsOf(() => reviewed(many.workbook, many.areas, templates)),
    fewer: () => millisecondsOf(() => reviewed(few.workbook, few.areas, templates)),
    comparison: () => millisecondsOf(() => compareWorkbooks(many, later)),
    fewerCompared: () => millisecondsOf(() => compareWorkbooks(few, calculatedOnce(few.workbook))),
  })
  const count = MANY.toLocaleString('en')
  return [
    justSo(`all findings of ${count} vessels, of the time of their calculation`, times(findings / calculation)),
    atMost(`… from ${FEW.toLocaleString('en')} to ${count} vessels, against linear growth`, findings / fewer / (MANY / FEW), MOST_GROWTH),
    justSo(`two versions of ${count} vessels compared, rows inserted, of the time of calculating one`, times(comparison / calculation)),
    atMost(`… from ${FEW.toLocaleString('en')} to ${count} vessels, against linear growth`, comparison / fewerCompared / (MANY / FEW), MOST_GROWTH),
  ]
}

interface Calculated {
  readonly workbook: Workbook
  readonly areas: ReturnType<Graph['allAreas']>
}

const calculated = (workbook: Workbook): Calculated => ({ workbook, areas: new Graph(workbook).allAreas() })

const revisions = new Map<Workbook, Calculated>()
/** The later version of a workbook, calculated outside of what is measured. */
function calculatedOnce(workbook: Workbook): Calculated {
  const found = revisions.get(workbook) ?? calculated(revised(workbook))
  revisions.set(workbook, found)
  return found
}

/** A later version: a vessel put in high up, and a few numbers changed far apart. */
function revised(workbook: Workbook): Workbook {
  const longer = applyEdits(workbook, insertLines(workbook, 'Charge', { axis: 'rows', at: 20, count: 3 })).workbook
  return typed({ 'Charge!I12': '28', 'Charge!L40': '12', 'Charge!M500': '22' })(longer)
}

/** One frame of a 60 Hz screen. */
const FRAME_MS = 1000 / 60

/** The longest gap between frames while all findings of a large inventory are looked for and listed, and how long it takes to stop. */
async function onTheScreen(): Promise<readonly Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'lowside-bench-'))
  const [dist, file] = [join(folder, 'dist'), join(folder, 'inventory.lowside.json')]
  await build({ logLevel: 'error', build: { outDir: dist } })
  await writeFile(file, writeWorkbook(withVessels(MANY)))
  const server = await preview({ logLevel: 'error', configFile: false, build: { outDir: dist }, preview: { host: '127.0.0.1', port: 0 } })
  const address = server.httpServer.address()
  const browserServer = await launchBrowser()
  const browser = await chromium.connect(browserServer.wsEndpoint())
  try {
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 720 } })).newPage()
    // The runner's compiler names functions by a helper of its own, which a page has not.
    await page.addInitScript('globalThis.__name = (named) => named; delete window.showSaveFilePicker')
    await page.goto(`http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}/`)
    await opened(page, file)
    const panel = page.getByRole('complementary', { name: 'Side panel' }).getByRole('button', { name: 'Findings', exact: true })
    const rest = await longestGap(page, () => page.waitForTimeout(2000))
    const gap = await longestGap(page, async () => {
      await panel.click()
      await page.locator('.findings-panel').getByRole('status').filter({ hasText: /open/i }).waitFor({ timeout: 300_000 })
    })
    // A change is a reason to look again.
    const stopMs = await stopped(page, async () => {
      await page.getByRole('grid').focus()
      await page.keyboard.type('2')
      await page.keyboard.press('Enter')
    })
    const count = MANY.toLocaleString('en')
    return [
      { what: `findings of ${count} vessels looked for and listed: longest time without a frame`, figure: `${inFrames(gap)} (at rest ${inFrames(rest)})`, reach: `≤ ${MOST_FRAMES} frames`, met: gap <= MOST_FRAMES * FRAME_MS + 0.5 },
      justSo(`findings of ${count} vessels looked for: from Stop to stopped`, inFrames(stopMs)),
    ]
  } finally {
    await browser.close()
    await browserServer.close()
    await server.close()
  }
}

/** As while a large file is opened. */
const MOST_FRAMES = 3

const inFrames = (ms: number): string => `${(ms / FRAME_MS).toFixed(1)} frames`

async function opened(page: Page, file: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open' }).click()
  await (await chooser).setFiles(file)
  await page.locator(`.title-place[data-title="${template('charge-inventory').title}"]`).waitFor({ timeout: 120_000 })
  await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor({ timeout: 120_000 })
}

/** Milliseconds from the button that stops it until the panel says that it has. */
async function stopped(page: Page, begin: () => Promise<void>): Promise<number> {
  await begin()
  const stop = page.locator('.findings-panel').getByRole('button', { name: 'Stop' })
  await stop.waitFor({ timeout: 60_000 })
  return page.evaluate(() => new Promise<number>((resolve) => {
    const start = performance.now()
    const look = (): void => {
      if (document.querySelector('.findings-panel')?.textContent.includes('Stopped.') === true) resolve(performance.now() - start)
      else requestAnimationFrame(look)
    }
    const buttons = [...document.querySelectorAll<HTMLButtonElement>('.findings-panel .review-progress button')]
    buttons[0]?.click()
    requestAnimationFrame(look)
  }))
}

/** The longest time between two frames of the page while something is done. */
async function longestGap(page: Page, work: () => Promise<void>): Promise<number> {
  await page.evaluate(() => {
    Reflect.set(window, 'longestGap', 0)
    Reflect.set(window, 'gapsDone', false)
    let last = performance.now()
    const frame = (): void => {
      const now = performance.now()
      Reflect.set(window, 'longestGap', Math.max(Reflect.get(window, 'longestGap') as number, now - last))
      last = now
      if (!Reflect.get(window, 'gapsDone')) requestAnimationFrame(frame)
    }
    requestAnimationFrame(frame)
  })
  await work()
  return page.evaluate(() => {
    Reflect.set(window, 'gapsDone', true)
    return Reflect.get(window, 'longestGap') as number
  })
}
