import { mkdtemp, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { chromium, type Browser, type Page } from 'playwright-core'
import { build, preview } from 'vite'
import { emptySheet, type Cell, type Workbook } from '../../src/workbook/document.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { launchBrowser } from '../browser/chromium.ts'
import { justSo, median, type Figure } from './measure.ts'
import { pasting } from './paste.ts'

/** One frame of a 60 Hz screen. */
const FRAME_MS = 1000 / 60
const SIZES = [1_000, 10_000, 100_000] as const

/** A charge inventory: eight columns, two of them own functions on header units, a total that every row feeds. */
function inventory(count: number): Workbook {
  const cell = (content: number | string, role: Cell['role']): Cell => ({ content, role })
  const header = ['Vessel', 'in', 'ft', '°F', 'ft3', 'lb', 'Zone', `=SUM(F3:F${count + 2})`].map((text, i) => cell(text, i === 7 ? 'result' : i === 0 || i === 6 ? 'heading' : 'unit'))
  const rows = Array.from({ length: count }, (_, i) => {
    const row = i + 3
    return [
      cell(`V-${i + 1}`, 'label'), cell(12 + (i % 60), 'input'), cell(4 + (i % 17), 'input'), cell(-40 + (i % 80), 'input'),
      cell(`=VESSEL.VOLUME(B${row}&B$2,C${row}&C$2,"2:1","horizontal",E$2)`, 'result'), cell(`=E${row}*LIQUID.DENSITY(D${row}&D$2,"lb/ft3")*0.4`, 'result'), cell(`Zone ${1 + (i % 9)}`, 'text'),
    ]
  })
  return { title: `Inventory of ${count}`, purpose: '', names: new Map(), figures: [], sheets: [{ ...emptySheet('Inventory'), frozen: [2, 1], rows: [[cell('Inventory', 'title')], header, ...rows] }] }
}

/** Frame times of a page while something is done in each frame, and of the same page while nothing is. */
async function frames(page: Page, count: number, inFrame: 'rest' | 'line' | 'page'): Promise<number[]> {
  return page.evaluate(
    ([wanted, what]) => new Promise<number[]>((resolve) => {
      const scroller = document.querySelector<HTMLElement>('[role=grid]')
      if (scroller === null) throw new Error('there is no grid to scroll')
      const step = what === 'rest' ? 0 : what === 'line' ? 26 : scroller.clientHeight
      const times: number[] = []
      let last = performance.now()
      const frame = (): void => {
        const now = performance.now()
        times.push(now - last)
        last = now
        scroller.scrollTop = (scroller.scrollTop + step) % (scroller.scrollHeight - scroller.clientHeight)
        if (times.length <= wanted) requestAnimationFrame(frame)
        else resolve(times.slice(2))
      }
      requestAnimationFrame(frame)
    }),
    [count, inFrame] as const,
  )
}

/** From a key that enters a changed number to the frame in which the result beside it shows another text. */
async function keyToPaint(page: Page, edits: number): Promise<number[]> {
  const times: number[] = []
  for (let edit = 0; edit < edits; edit++) {
    // B3 holds a diameter, E3 the volume that follows from it.
    await page.locator('[role=row][aria-rowindex="4"] [role=gridcell][aria-colindex="3"]').click()
    await page.keyboard.type(String(20 + (edit % 40)))
    await page.evaluate(() => {
      const result = document.querySelector('[role=row][aria-rowindex="4"] [role=gridcell][aria-colindex="6"]')
      const before = result?.textContent
      Reflect.set(window, 'painted', new Promise<number>((resolve) => {
        addEventListener('keydown', ({ timeStamp }) => {
          const look = (): void => {
            if (document.querySelector('[role=row][aria-rowindex="4"] [role=gridcell][aria-colindex="6"]')?.textContent === before) requestAnimationFrame(look)
            else {
              // A task of its own comes to its turn after this frame has been drawn.
              const { port1, port2 } = new MessageChannel()
              port1.onmessage = () => resolve(performance.now() - timeStamp)
              port2.postMessage(0)
            }
          }
          requestAnimationFrame(look)
        }, { once: true, capture: true })
      }))
    })
    await page.keyboard.press('Enter')
    times.push(await page.evaluate(() => Reflect.get(window, 'painted') as Promise<number>))
  }
  return times
}

const percentile = (times: readonly number[], share: number): number => times.toSorted((one, other) => one - other)[Math.ceil(times.length * share) - 1] ?? Number.NaN

const inFrames = (what: string, ms: number, most: number, bare: number): Figure => ({
  what, figure: `${(ms / FRAME_MS).toFixed(2)} frames (${ms.toFixed(1)} ms; a frame at rest ${bare.toFixed(1)} ms)`, reach: `≤ ${most} frames`, met: ms <= most * FRAME_MS + 0.5,
})

async function openInventory(browser: Browser, url: string, count: number, folder: string): Promise<{ page: Page; openMs: number; blockMs: number }> {
  const path = join(folder, `inventory-${count}.lowside.json`)
  await writeFile(path, writeWorkbook(inventory(count)))
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 720 } })).newPage()
  // The runner's compiler names functions by a helper of its own, which a page has not.
  await page.addInitScript('globalThis.__name = (named) => named; delete window.showSaveFilePicker')
  await page.goto(url)
  await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor()
  await page.evaluate(() => {
    let last = performance.now()
    Reflect.set(window, 'longestGap', 0)
    const frame = (): void => {
      const now = performance.now()
      Reflect.set(window, 'longestGap', Math.max(Reflect.get(window, 'longestGap') as number, now - last))
      last = now
      if (!Reflect.get(window, 'gapsDone')) requestAnimationFrame(frame)
    }
    requestAnimationFrame(frame)
  })
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open' }).click()
  const start = performance.now()
  await (await chooser).setFiles(path)
  await page.getByRole('grid', { name: 'Sheet Inventory' }).waitFor({ timeout: 120_000 })
  await page.getByRole('gridcell', { name: /^\d/ }).nth(8).waitFor({ timeout: 120_000 })
  await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor({ timeout: 120_000 })
  const openMs = performance.now() - start
  const blockMs = await page.evaluate(() => {
    Reflect.set(window, 'gapsDone', true)
    return Reflect.get(window, 'longestGap') as number
  })
  return { page, openMs, blockMs }
}

/** What the browser has to fetch before the first screen works: scripts, by their size under gzip. */
async function firstLoad(browser: Browser, url: string, folder: string): Promise<Figure> {
  const page = await (await browser.newContext()).newPage()
  const scripts = new Set<string>()
  page.on('request', (request) => request.url().endsWith('.js') && scripts.add(new URL(request.url()).pathname))
  await page.goto(url)
  await page.getByRole('status', { name: 'Recalculation' }).filter({ hasText: 'All values up to date' }).waitFor()
  const sizes = await Promise.all([...scripts].map(async (path) => gzipSync(await readFile(join(folder, path))).length))
  const kilobytes = sizes.reduce((sum, size) => sum + size, 0) / 1000
  return { what: 'first load, scripts under gzip', figure: `${kilobytes.toFixed(0)} kB`, reach: '≤ 500 kB', met: kilobytes <= 500 }
}

/** The screen in a headless browser, drawn by software: figures in frames of 60 Hz, beside a frame of the same page at rest. */
export async function screen(): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'lowside-bench-'))
  const dist = join(folder, 'dist')
  await build({ logLevel: 'error', build: { outDir: dist } })
  const server = await preview({ logLevel: 'error', configFile: false, build: { outDir: dist }, preview: { host: '127.0.0.1', port: 0 } })
  const address = server.httpServer.address()
  const browserServer = await launchBrowser()
  const browser = await chromium.connect(browserServer.wsEndpoint())
  try {
    const url = `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}/`
    const figures = [await firstLoad(browser, url, dist)]
    const { longestMs, restMs } = await pasting(browser, url)
    figures.push(inFrames('paste of 10 000 rows of six cells: longest time without a frame', longestMs, 3, restMs))
    for (const count of SIZES) {
      const { page, openMs, blockMs } = await openInventory(browser, url, count, folder)
      const rows = `${count.toLocaleString('en')} rows`
      const rest = median(await frames(page, 60, 'rest'))
      figures.push(justSo(`${rows}: open a file until every value is there`, `${(openMs / 1000).toFixed(1)} s`), inFrames(`${rows}: longest the screen stands still while opening`, blockMs, 3, rest))
      const lines = await frames(page, 200, 'line')
      figures.push(inFrames(`${rows}: scroll a line a frame, p95`, percentile(lines, 0.95), 1, rest), inFrames(`${rows}: scroll a line a frame, longest`, Math.max(...lines), 3, rest))
      figures.push(inFrames(`${rows}: scroll a page a frame, p95`, percentile(await frames(page, 120, 'page'), 0.95), 2, rest))
      await page.getByRole('grid').focus()
      await page.keyboard.press('Control+Home')
      await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 300)))
      const keys = await keyToPaint(page, count > 10_000 ? 10 : 30)
      figures.push(inFrames(`${rows}: one edit, key to paint, median`, median(keys), 1, rest), inFrames(`${rows}: one edit, key to paint, p95`, percentile(keys, 0.95), 2, rest))
      await page.context().close()
    }
    return figures
  } finally {
    await browser.close()
    await browserServer.close()
    await server.close()
  }
}
