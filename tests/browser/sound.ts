import { expect } from 'vitest'
import type { Opened } from './app.ts'

/** Ends a test: nothing was said on the console, nothing was fetched from elsewhere. */
export async function sound({ trouble, lateRequests, context }: Opened): Promise<void> {
  expect(trouble).toEqual([])
  // Parts of the app itself, such as the spreadsheet writer and the templates, come from the same address and only when they are wanted.
  expect(lateRequests.filter((url) => !/\/assets\/[\w.-]+\.(js|css|json)$/.test(url))).toEqual([])
  await context.close()
}
