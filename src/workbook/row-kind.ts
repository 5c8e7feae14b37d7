import type { Row } from './document.ts'

/** A row with a title or a heading in it stands apart, and all its cells with it. */
export function rowKind(row: Row): 'title' | 'heading' | 'plain' {
  const roles = row?.map((cell) => cell?.role) ?? []
  return roles.includes('title') ? 'title' : roles.includes('heading') ? 'heading' : 'plain'
}
