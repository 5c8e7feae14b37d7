import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** WCAG 2.2 at A and AA, and what axe holds for good practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe finds on a page as it stands, a line each: the rule, the place, and what is wrong. */
export async function findings(page: Page, rules?: readonly string[]): Promise<string[]> {
  // As the debugger does it: the content security policy of the page would refuse an added script.
  await page.evaluate(`if (!globalThis.axe) { ${axe.source} }`)
  return page.evaluate(async ({ tags, only }) => {
    const { axe: inPage } = globalThis as unknown as { axe: typeof axe }
    const { violations } = await inPage.run(document, { runOnly: only ? { type: 'rule', values: only } : { type: 'tag', values: tags }, resultTypes: ['violations'] })
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target, any, all, none }) => `${id} at ${target.join(' ')}: ${[...any, ...all, ...none].map(({ message }) => message).join('; ')}`))
  }, { tags: RULES, only: rules as string[] | undefined })
}
