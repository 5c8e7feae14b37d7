import { createMemo, For, Index, type JSX } from 'solid-js'
import { sourceText } from '../../../exchange/lists/source-table.ts'
import type { ReadSheet } from '../../../exchange/reading/contents.ts'
import { columnLetters } from '../../../workbook/address.ts'
import type { ListWizardState } from './list-wizard-state.ts'

/** The file's first rows as they are, from a little above its headings. */
export function SourceRows(props: { readonly state: ListWizardState; readonly sheet: ReadSheet }): JSX.Element {
  const top = () => Math.max(0, (props.state.source().headingRow ?? 0) - 1)
  const rows = createMemo(() => Array.from({ length: Math.max(0, Math.min(ROWS, props.sheet.rows.length - top())) }, (_, index) => top() + index))
  const columns = createMemo(() => Array.from({ length: rows().reduce((most, row) => Math.max(most, props.sheet.rows[row]?.length ?? 0), 0) }, (_, column) => column))
  const kind = (row: number): string => {
    const { headingRow, unitRow } = props.state.source()
    return row === headingRow ? 'headings' : row === unitRow ? 'units' : ''
  }
  return (
    <section class="list-source" aria-labelledby="list-source-head">
      <h3 id="list-source-head">In the file</h3>
      <div class="list-scroll" tabindex={0} role="region" aria-label="Rows of the file">
        <table>
          <thead><tr><th scope="col"><span class="unseen">Row</span></th><For each={columns()}>{(column) => <th scope="col">{columnLetters(column)}</th>}</For></tr></thead>
          <tbody>
            <Index each={rows()}>
              {(row) => (
                <tr class={`source-${kind(row())}`}>
                  <th scope="row">{row() + 1}<small>{kind(row())}</small></th>
                  <For each={columns()}>{(column) => <td>{sourceText(props.sheet.rows[row()]?.[column])}</td>}</For>
                </tr>
              )}
            </Index>
          </tbody>
        </table>
      </div>
    </section>
  )
}

const ROWS = 5
