import { createMemo, For, on, Show, type JSX } from 'solid-js'
import { printAddress } from '../../../workbook/address.ts'
import { caseName, casesOf, differs, heldIn, isOwn, ownPlaces } from '../../../workbook/cases.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { sheetByName } from '../../../workbook/document.ts'
import { entryOf, meantText } from '../../../workbook/entry.ts'
import { unitOfValue } from '../../../workbook/unit-scope.ts'
import { labelInRow } from '../../../workbook/words-beside.ts'
import { useSession } from '../../state/session.ts'
import { backToBase, type } from './case-actions.ts'
import { CaseHeads } from './CaseHeads.tsx'

/** Inputs in which cases differ, a row each, and the selected one: a column a case, to write in. */
export function InputsTable(): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  let table: HTMLTableElement | undefined
  const own = createMemo(() => new Map(ownPlaces(workbook()).map((place) => [printCellPlace(place), place])))
  const active = createMemo((): CellPlace => ({ sheet: session.sheetName(), ...session.selection.active() }))
  // On top while it is selected, also once it has values: a row that moves away would take the focus from who writes in it.
  const selected = createMemo(on(active, (place) => (session.activeCell()?.role === 'input' && !own().has(printCellPlace(place)) ? place : undefined)))
  const places = createMemo(() => {
    const first = selected()
    return first ? new Map([[printCellPlace(first), first], ...own()]) : own()
  })
  const columns = createMemo(() => [null, ...casesOf(workbook()).list.keys()])

  /** Enter goes on to the same column of the next row. */
  function goDown(from: HTMLElement): void {
    const fields = [...(table?.querySelectorAll<HTMLInputElement>(`input[data-column="${from.dataset['column']}"]`) ?? [])]
    const next = fields[fields.findIndex((field) => field === from) + 1]
    next?.focus()
    next?.select()
  }

  return (
    <section aria-label="Inputs side by side">
      <h3>Inputs side by side</h3>
      <Show when={places().size > 0} fallback={<p class="panel-empty">No input differs yet. Select an input in the grid: it can be written here for every case.</p>}>
        <div class="cases-scroll" tabindex={0} role="region" aria-label="Inputs by case">
          <table ref={(element) => (table = element)} class="cases-table">
            <CaseHeads first="Input" />
            <tbody>
              <For each={[...places().keys()]}>
                {(key) => {
                  const place = () => places().get(key) ?? active()
                  return (
                    <tr classList={{ 'case-selected': selected() !== undefined && printCellPlace(selected() ?? active()) === key }}>
                      <PlaceHead place={place()} />
                      <For each={columns()}>{(at) => <td><ValueField at={at} place={place()} onEnter={goDown} /></td>}</For>
                    </tr>
                  )
                }}
              </For>
            </tbody>
          </table>
        </div>
        <p class="cases-hint"><span class="case-own-mark" aria-hidden="true">▸</span> differs from the base &nbsp;<span class="case-own-mark" aria-hidden="true">▹</span> the case’s own, at present the same</p>
      </Show>
    </section>
  )
}

function PlaceHead(props: { readonly place: CellPlace }): JSX.Element {
  const session = useSession()
  const sheet = () => sheetByName(session.document.workbook(), props.place.sheet)
  const label = () => {
    const held = sheet()
    return (held && labelInRow(held, props.place)) ?? printAddress(props.place.row, props.place.column)
  }
  const unit = () => {
    const held = sheet()
    const at = held && unitOfValue(held, props.place)
    return at && meantText(held?.rows[at.row]?.[at.column]?.content)
  }
  return (
    <th scope="row">
      <button type="button" class="case-place" title={printCellPlace(props.place)} onClick={() => session.goTo(props.place.sheet, props.place)}>{label()}</button>
      <small>{unit() ?? ''}</small>
    </th>
  )
}

function ValueField(props: { readonly at: number | null; readonly place: CellPlace; readonly onEnter: (field: HTMLElement) => void }): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  const shown = () => entryOf(heldIn(workbook(), props.at, props.place)?.content ?? null)
  const own = createMemo(() => isOwn(workbook(), props.at, props.place))
  const other = createMemo(() => own() && differs(workbook(), props.at, props.place))
  const name = () => caseName(workbook(), props.at)
  const words = () => `${printCellPlace(props.place)} in ${name()}${other() ? ', differs from the base' : own() ? ', its own, the same as the base' : props.at === null ? '' : ', as the base'}`
  const commit = (field: HTMLInputElement) => {
    if (field.value !== shown()) type(session, props.at, props.place, field.value)
    field.value = shown()
  }
  return (
    <div class="case-value" classList={{ own: own(), other: other() }}>
      <input
        data-column={props.at ?? 'base'} aria-label={words()} autocomplete="off" spellcheck={false} size={7} value={shown()}
        onChange={({ currentTarget }) => commit(currentTarget)}
        onKeyDown={(event) => {
          event.stopPropagation()
          if (event.key === 'Enter') {
            commit(event.currentTarget)
            props.onEnter(event.currentTarget)
          } else if (event.key === 'Escape') event.currentTarget.value = shown()
        }}
      />
      <Show when={props.at !== null && own()}>
        <button type="button" class="case-back" title={`Back to the base’s value`} aria-label={`${printCellPlace(props.place)} in ${name()}: back to the base’s value`} onClick={(event) => {
          const field = event.currentTarget.parentElement?.querySelector('input')
          backToBase(session, props.at ?? 0, props.place)
          field?.focus()
        }}>↺</button>
      </Show>
    </div>
  )
}
