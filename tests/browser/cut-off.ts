import type { Page } from 'playwright-core'

/** Shown elsewhere in full: the title is scrolled through in its field, a found text stands in its cell. */
const ELSEWHERE = '.title-field, .title-place, .find-words, .entry-text, .entry-colours'

/** Texts and controls outside of the grid of which a part can neither be seen nor be scrolled to, in words. */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate((elsewhere) => {
    const room = new DOMRect(0, 0, innerWidth, innerHeight)
    const isWithin = (inner: DOMRect, outer: DOMRect) => inner.left >= outer.left - 1 && inner.top >= outer.top - 1 && inner.right <= outer.right + 1 && inner.bottom <= outer.bottom + 1
    const isCutOff = (element: Element): boolean => {
      const box = element.getBoundingClientRect()
      const own = getComputedStyle(element)
      if (own.overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1) return true
      for (let around = element.parentElement; around; around = around.parentElement) {
        const { overflowX, overflowY, position } = getComputedStyle(around)
        const scrolls = (overflow: string) => overflow === 'auto' || overflow === 'scroll'
        if (scrolls(overflowX) || scrolls(overflowY)) return box.right > around.getBoundingClientRect().right + 1 && !scrolls(overflowX)
        if (overflowX === 'hidden' && around !== document.body && !isWithin(box, around.getBoundingClientRect())) return true
        if (position === 'fixed') break
      }
      return !isWithin(box, room)
    }
    return [...document.querySelectorAll('button, input, select, textarea, summary, label, legend, h2, h3, p, li, dt, dd')]
      .filter((element) => element.checkVisibility() && !element.closest(`[role=grid], .unseen, ${elsewhere}`) && isCutOff(element))
      .map((element) => `${element.tagName.toLowerCase()}.${element.className} ${element.textContent?.trim().slice(0, 40) ?? ''}`)
  }, ELSEWHERE)

/** Cells in view of whose text lines are hidden. */
export const cutOffCells = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.cell:not([hidden])')]
      .filter((cell) => cell.closest('[hidden]') === null && cell.scrollHeight > cell.clientHeight + 1)
      .map((cell) => `${cell.id} ${cell.textContent?.slice(0, 40)}`))
