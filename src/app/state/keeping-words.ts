import type { Book } from '../../storage/shelf.ts'
import type { NotOpened } from './keeping.ts'
import type { Notice } from './session.ts'

/** After opening a workbook whose log ends in damage. */
export const lostWords = (lost: number): string =>
  `${lost === 1 ? 'The latest change' : `The latest ${lost} changes`} could not be read: the browser’s record was damaged there. The workbook is as it was before.`

/** Of a workbook that was to be opened and is not. */
export const notOpenedWords = ({ title }: Pick<Book, 'title'>, { problem, isStopped }: NotOpened): Notice =>
  isStopped ? { tone: 'done', text: `“${title}” was not opened: stopped. It stays among the recent workbooks` } : { tone: 'problem', text: `“${title}” cannot be opened: ${problem}` }

/** What a failed write means for the user, and what to do. */
export function failureWords(error: unknown): string {
  const why = nameOf(error) === 'QuotaExceededError' ? 'The browser has no room left for it' : `The browser refused: ${messageOf(error)}`
  return `The latest changes are not kept. ${why}. Save to a file.`
}

export const nameOf = (error: unknown): string => (error instanceof Error || error instanceof DOMException ? error.name : '')
export const messageOf = (error: unknown): string => (error instanceof Error || error instanceof DOMException ? error.message : String(error))
