import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cellAt, enter, openApp, settled, shown, useBrowser, type Opened } from './app.ts'

useBrowser()

/** Types over a cell, and waits until the app says that it is kept. */
async function enterAndKeep(page: Page, address: string, text: string): Promise<void> {
  await enter(page, address, text)
  await isKept(page)
}

const isKept = (page: Page) => page.getByRole('note', { name: 'Kept' }).filter({ hasText: /^Kept in this browser$/ }).waitFor()
const isReading = (page: Page) => page.getByRole('note', { name: 'Kept' }).filter({ hasText: 'Another tab writes' }).waitFor()
const title = (page: Page) => page.getByRole('textbox', { name: 'Title of the workbook' })
const fileState = (page: Page) => page.getByRole('status', { name: 'Saved state' })

async function secondTab({ context, page }: Opened): Promise<Page> {
  const other = await context.newPage()
  await other.goto(page.url())
  await other.getByRole('grid').waitFor()
  await settled(other)
  return other
}

async function startEmpty(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Start from a template' }).click()
  await page.getByRole('dialog').getByText('Empty workbook').click()
  await expect.poll(() => title(page).inputValue()).toBe('Untitled')
}

async function done({ trouble, context }: Opened): Promise<void> {
  expect(trouble).toEqual([])
  await context.close()
}

describe('what this browser keeps', () => {
  it('a reload keeps the changes, undone and redone ones too', async () => {
    const app = await openApp()
    const { page } = app
    await enterAndKeep(page, 'C6', '180')
    await enterAndKeep(page, 'C7', '12')
    await page.keyboard.press('Control+z')
    await isKept(page)
    const before = (await cellAt(page, 'C7').textContent()) ?? ''
    await page.reload()
    expect(await shown(page, 'C6', /180/)).toBe('180')
    expect(await shown(page, 'C7', /\d/)).toBe(before.trim())
    await isKept(page)
    await done(app)
  })

  it('says when the workbook was saved to a file and when it changed since, after a reload too', async () => {
    const app = await openApp()
    const { page } = app
    await fileState(page).filter({ hasText: /^Not in a file yet$/ }).waitFor()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save' }).click()
    await download
    await fileState(page).filter({ hasText: /^Saved to a file at \d/ }).waitFor()
    await isKept(page)
    await page.reload()
    await fileState(page).filter({ hasText: /^Saved to a file at \d/ }).waitFor()
    await enterAndKeep(page, 'C6', '181')
    await fileState(page).filter({ hasText: /^Changed since it was saved to a file at \d/ }).waitFor()
    await page.reload()
    await fileState(page).filter({ hasText: /^Changed since it was saved to a file at \d/ }).waitFor()
    await done(app)
  })

  it('another workbook takes the place without a question and loses nothing: the first is in the recent ones, until it is forgotten', async () => {
    const app = await openApp()
    const { page } = app
    await enterAndKeep(page, 'C6', '182')
    await startEmpty(page)
    await enterAndKeep(page, 'A1', 'Mine')
    await page.reload()
    expect(await shown(page, 'A1', /Mine/)).toBe('Mine')

    await page.getByRole('button', { name: 'Recent' }).click()
    const list = page.getByRole('dialog', { name: 'Recent workbooks' })
    await list.getByRole('button', { name: /^Tallowmere surge drum SD-3/ }).filter({ hasText: /Worked on at .* sheets · Not in a file yet/ }).click()
    expect(await shown(page, 'C6', /182/)).toBe('182')

    await page.getByRole('button', { name: 'Recent' }).click()
    await list.getByRole('button', { name: 'Forget Untitled' }).click()
    await list.getByText('No file holds it.').waitFor()
    await list.getByRole('button', { name: 'Keep it' }).click()
    await list.getByRole('button', { name: 'Forget Untitled' }).click()
    await list.getByRole('button', { name: 'Forget it' }).click()
    await list.getByText('Untitled').waitFor({ state: 'detached' })
    expect(await list.getByRole('listitem').count()).toBe(1)
    await done(app)
  })
})

describe('two tabs on one workbook', () => {
  it('the second reads and follows, takes over, and the first then reads and follows', async () => {
    const app = await openApp()
    const first = app.page
    await isKept(first)
    const second = await secondTab(app)
    await isReading(second)

    await enterAndKeep(first, 'C6', '183')
    expect(await shown(second, 'C6', /183/)).toBe('183')
    await cellAt(second, 'C7').click()
    await second.keyboard.type('5')
    await second.keyboard.press('Enter')
    await second.getByRole('alert').getByText('Another tab writes this workbook').waitFor()
    await second.keyboard.press('Escape')

    await second.getByRole('button', { name: 'Take over' }).click()
    await isKept(second)
    await isReading(first)
    await enterAndKeep(second, 'C6', '184')
    expect(await shown(first, 'C6', /184/)).toBe('184')
    // What was done before the hand-over is no longer undone here: the other tab has gone on from it.
    await cellAt(first, 'C6').click()
    await first.keyboard.press('Control+z')
    await first.getByRole('alert').getByText('Another tab writes this workbook').waitFor()

    await second.close()
    await isKept(first)
    await enterAndKeep(first, 'C6', '185')
    await first.reload()
    expect(await shown(first, 'C6', /185/)).toBe('185')
    await done(app)
  })

  it('takes over from a tab that does not answer, whose own changes go on apart', async () => {
    const app = await openApp()
    const first = app.page
    await isKept(first)
    const second = await secondTab(app)
    await isReading(second)
    // A tab at a standstill, with a change that never reaches the disk.
    await first.evaluate(() => {
      const add = IDBObjectStore.prototype.add
      Object.assign(globalThis, { addAsBefore: () => (IDBObjectStore.prototype.add = add) })
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('standstill', 'UnknownError')
      }
      BroadcastChannel.prototype.postMessage = () => undefined
    })
    await cellAt(first, 'C6').click()
    await first.keyboard.type('186')
    await first.keyboard.press('Enter')
    await second.getByRole('button', { name: 'Take over' }).click()
    await first.evaluate(() => (globalThis as unknown as { addAsBefore(): void }).addAsBefore())
    await isKept(second)
    await enterAndKeep(second, 'C6', '187')
    await first.getByRole('alert').getByText('goes on as a workbook of its own').waitFor()
    await isKept(first)
    expect(await shown(first, 'C6', /186/)).toBe('186')
    expect(await shown(second, 'C6', /187/)).toBe('187')
    await done(app)
  })
})

describe('a browser that keeps nothing, or nothing more', () => {
  it('refused: says so, urges saving, works on, and asks before another workbook takes the place', async () => {
    const app = await openApp()
    const { page } = app
    await page.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException('not here', 'SecurityError')
      }
    })
    await page.reload()
    await page.getByRole('note', { name: 'Kept' }).filter({ hasText: 'Not kept in this browser' }).waitFor()
    await page.getByRole('alert').getByText(/keeps no workbook.*Save to a file/).waitFor()
    await settled(page)
    await cellAt(page, 'C6').click()
    await page.keyboard.type('188')
    await page.keyboard.press('Enter')
    expect(await shown(page, 'C6', /188/)).toBe('188')
    await page.getByRole('button', { name: 'Start from a template' }).click()
    await page.getByRole('dialog', { name: 'Changes not saved to a file' }).getByRole('button', { name: 'Stay' }).click()
    await done(app)
  })

  it('full: says what is not kept, keeps it on the screen, and writes it once there is room', async () => {
    const app = await openApp()
    const { page } = app
    await enterAndKeep(page, 'C6', '189')
    await page.evaluate(() => {
      const add = IDBObjectStore.prototype.add
      Object.assign(globalThis, { makeRoom: () => (IDBObjectStore.prototype.add = add) })
      IDBObjectStore.prototype.add = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    })
    await cellAt(page, 'C6').click()
    await page.keyboard.type('190')
    await page.keyboard.press('Enter')
    await page.getByRole('note', { name: 'Kept' }).filter({ hasText: 'Latest changes not kept' }).waitFor()
    await page.getByRole('alert').getByText(/not kept.*no room left.*Save to a file/).waitFor()
    expect(await shown(page, 'C6', /190/)).toBe('190')
    await page.evaluate(() => (globalThis as unknown as { makeRoom(): void }).makeRoom())
    await enterAndKeep(page, 'C7', '11')
    await page.reload()
    expect(await shown(page, 'C6', /190/)).toBe('190')
    expect(await shown(page, 'C7', /11/)).toBe('11')
    await done(app)
  })

  it('a damaged tail of the log is cut at the last good entry, and said', async () => {
    const app = await openApp()
    const { page } = app
    await enterAndKeep(page, 'C6', '191')
    await enterAndKeep(page, 'C6', '192')
    await page.evaluate(() => new Promise<void>((resolve, reject) => {
      const opening = indexedDB.open('lowside')
      opening.onerror = () => reject(opening.error)
      opening.onsuccess = () => {
        const writing = opening.result.transaction('entries', 'readwrite')
        const store = writing.objectStore('entries')
        const all = store.getAll()
        all.onsuccess = () => {
          const last = all.result.at(-1)
          store.put({ ...last, text: last.text.replace('192', '199') })
        }
        writing.oncomplete = () => (opening.result.close(), resolve())
      }
    }))
    await page.reload()
    await page.getByRole('alert').getByText('The latest change could not be read').waitFor()
    expect(await shown(page, 'C6', /191/)).toBe('191')
    await isKept(page)
    await enterAndKeep(page, 'C6', '193')
    await page.reload()
    expect(await shown(page, 'C6', /193/)).toBe('193')
    expect(await page.getByRole('alert').textContent()).toBe('')
    await done(app)
  })
})
