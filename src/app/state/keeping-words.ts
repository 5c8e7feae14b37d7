/** After opening a workbook whose log ends in damage. */
export const lostWords = (lost: number): string =>
  `${lost === 1 ? 'The latest change' : `The latest ${lost} changes`} could not be read: the browser’s record was damaged there. The workbook is as it was before.`

/** What a failed write means for the user, and what to do. */
export function failureWords(error: unknown): string {
  const why = nameOf(error) === 'QuotaExceededError' ? 'The browser has no room left for it' : `The browser refused: ${messageOf(error)}`
  return `The latest changes are not kept. ${why}. Save to a file.`
}

export const nameOf = (error: unknown): string => (error instanceof Error || error instanceof DOMException ? error.name : '')
export const messageOf = (error: unknown): string => (error instanceof Error || error instanceof DOMException ? error.message : String(error))
