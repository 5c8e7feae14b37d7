const OPEN_HERE = 'lowside-open-here'

/** Which workbook this tab has open: a reload comes back to it, whatever other tabs work on. */
export function rememberOpenHere(book: string): void {
  try {
    sessionStorage.setItem(OPEN_HERE, book)
  } catch {
    // Without it, a reload opens the workbook worked on last.
  }
}

export function openHereBefore(): string | undefined {
  try {
    return sessionStorage.getItem(OPEN_HERE) ?? undefined
  } catch {
    return undefined
  }
}
