import { For, Show, type JSX } from 'solid-js'
import { dateSystemOf } from '../../exchange/import/date-text.ts'
import type { FileContents, ReadSheet } from '../../exchange/reading/contents.ts'
import { columnLetters } from '../../workbook/address.ts'
import { counted } from '../parts/counted.ts'
import { previewText } from './import-words.ts'

const ROWS = 12
const COLUMNS = 16
/** More of a text than a row's height shows. */
const CHARACTERS = 80

/** The first rows of a sheet of the file, at their addresses. */
export function SheetPreview(props: { readonly contents: FileContents; readonly sheet: ReadSheet }): JSX.Element {
  const rows = () => Array.from({ length: Math.min(ROWS, props.sheet.rows.length) }, (_, row) => props.sheet.rows[row] ?? [])
  const columns = () => Math.min(COLUMNS, Math.max(0, ...rows().map(({ length }) => length)))
  const system = () => dateSystemOf(props.contents)
  return (
    <div class="import-preview">
      <Show when={columns() > 0} fallback={<p class="import-empty">“{props.sheet.name}” has nothing in its first rows.</p>}>
        <div class="import-preview-scroll" tabindex={0} role="region" aria-label={`First rows of ${props.sheet.name}`}>
          <table>
            <caption class="unseen">First rows of {props.sheet.name}</caption>
            <thead>
              <tr><td /><For each={Array.from({ length: columns() })}>{(_, column) => <th scope="col">{columnLetters(column())}</th>}</For></tr>
            </thead>
            <tbody>
              <For each={rows()}>
                {(cells, row) => (
                  <tr>
                    <th scope="row">{row() + 1}</th>
                    <For each={Array.from({ length: columns() }, (_, column) => cells[column])}>
                      {(cell) => <td classList={{ number: typeof cell?.value === 'number' }}>{previewText(cell, system()).slice(0, CHARACTERS)}</td>}
                    </For>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
        </div>
      </Show>
      <p class="import-more">{moreWords(props.sheet, columns())}</p>
    </div>
  )
}

function moreWords({ rows }: ReadSheet, columns: number): string {
  const more = Math.max(0, rows.length - ROWS)
  const all = rows.reduce((most, row) => Math.max(most, row?.length ?? 0), 0)
  const parts = [...(more > 0 ? [counted(more, 'more row')] : []), ...(all > columns ? [counted(all - columns, 'more column')] : [])]
  return parts.length === 0 ? '' : `${parts.join(', ')} not shown`
}
