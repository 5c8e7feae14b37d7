import { describe, expect, it } from 'vitest'
import { readingTab, SCREEN_STATES } from './access-states.ts'
import { openApp, useBrowser } from './app.ts'
import { findings } from './axe.ts'

useBrowser()

/** What changes colours and nothing else: only the contrast is to be looked at again. */
const APPEARANCES = {
  'dark': { colorScheme: 'dark', contrast: 'no-preference', forcedColors: 'none' },
  'light with more contrast': { colorScheme: 'light', contrast: 'more', forcedColors: 'none' },
  'dark with more contrast': { colorScheme: 'dark', contrast: 'more', forcedColors: 'none' },
  'the system\'s own colours': { colorScheme: 'light', contrast: 'no-preference', forcedColors: 'active' },
} as const

describe('axe finds nothing (WCAG 2.2 A and AA, good practice)', () => {
  it.each(SCREEN_STATES)('in $name', async ({ reach }) => {
    const { page, context, trouble } = await openApp()
    await reach(page)
    expect(await findings(page)).toEqual([])
    for (const [name, appearance] of Object.entries(APPEARANCES)) {
      await page.emulateMedia(appearance)
      expect([name, ...(await findings(page, ['color-contrast']))]).toEqual([name])
    }
    expect(trouble).toEqual([])
    await context.close()
  })

  it('in a tab that reads while another one writes', async () => {
    const { page, context, trouble } = await openApp()
    const reading = await readingTab(page)
    expect(await findings(reading)).toEqual([])
    expect(await reading.getByRole('grid').getAttribute('aria-readonly')).toBe('true')
    expect(await page.getByRole('grid').getAttribute('aria-readonly')).toBe('false')
    expect(trouble).toEqual([])
    await context.close()
  })

  it('would find a control without a name and a text too pale to read', async () => {
    const { page, context } = await openApp()
    await page.evaluate(() => {
      const main = document.querySelector('main')
      main?.append(document.createElement('button'))
      document.querySelector<HTMLElement>('.standing-caution')?.style.setProperty('color', '#bbb')
    })
    expect((await findings(page)).map((found) => found.split(' ')[0])).toEqual(['button-name', 'color-contrast'])
    await context.close()
  })
})
