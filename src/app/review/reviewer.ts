import type { Session } from '../state/session.ts'

const KEY = 'reviewer'

/** Who reviews, as was said last in this browser; else who checks according to the printed report; else nobody yet. */
export function reviewerName({ document }: Pick<Session, 'document'>): string {
  try {
    const remembered = localStorage.getItem(KEY)
    if (remembered !== null && remembered !== '') return remembered
  } catch {
    // A browser that keeps nothing remembers nobody.
  }
  return document.workbook().report?.checkedBy ?? ''
}

export function rememberReviewer(name: string): void {
  try {
    localStorage.setItem(KEY, name)
  } catch {
    // It is asked for again next time.
  }
}
