import type { FileState } from '../../storage/shelf.ts'

/** How a workbook stands to the file on the user's disk. */
export function fileWords({ inFile, changed, savedAt }: FileState, now = new Date()): string {
  if (!inFile) return 'Not in a file yet'
  if (savedAt === null) return changed ? 'Changed since its file was opened' : 'As in its file'
  return `${changed ? 'Changed since it was saved' : 'Saved'} to a file ${timeWords(savedAt, now)}`
}

/** "at 14:05", with the day before it unless it is today. */
export function timeWords(at: number, now = new Date()): string {
  const date = new Date(at)
  const time = `at ${date.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })}`
  if (date.toDateString() === now.toDateString()) return time
  const day = date.toLocaleDateString(undefined, { day: 'numeric', month: 'short', ...(date.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' }) })
  return `on ${day} ${time}`
}
