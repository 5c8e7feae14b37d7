import { createMemo, For, Show, type JSX } from 'solid-js'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { cellWords, described, placeTyped, type CellWords } from '../../whatif/cells.ts'
import { useSession } from '../../state/session.ts'

interface Props {
  readonly label: string
  readonly text: string
  readonly onText: (text: string) => void
  /** Others to choose from, where there are some. */
  readonly offered?: readonly CellWords[]
  readonly offeredLabel?: string
}

/** Asks for one cell: by its address or name, by the cell selected in the grid, or from a list. Says what the cell is called and holds. */
export function CellField(props: Props): JSX.Element {
  const session = useSession()
  const selected = createMemo(() => printCellPlace({ sheet: session.sheetName(), ...session.selection.active() }))
  const found = createMemo(() => placeTyped(session.document.workbook(), props.text, session.sheetName()))
  const take = (text: string) => {
    const place = placeTyped(session.document.workbook(), text, session.sheetName())
    props.onText(typeof place === 'string' ? text : printCellPlace(place))
  }
  return (
    <div class="whatif-cell">
      <label>{props.label}<input type="text" spellcheck={false} autocomplete="off" placeholder="no cell" value={props.text} onChange={({ currentTarget }) => take(currentTarget.value)} /></label>
      <button type="button" class="plain-button" aria-label={`Use ${selected()}, the selected cell, as ${props.label.toLowerCase()}`} title="Use the selected cell" disabled={props.text === selected()} onClick={() => session.settle() && take(selected())}>Use {selected()}</button>
      <Show when={(props.offered?.length ?? 0) > 0}>
        <select aria-label={`${props.label}: ${props.offeredLabel ?? 'choose'}`} onChange={({ currentTarget }) => {
          if (currentTarget.value !== '') take(currentTarget.value)
        }}>
          <option value="">{props.offeredLabel}</option>
          <For each={groups(props.offered ?? [])}>
            {([sheet, cells]) => (
              <optgroup label={sheet}>
                <For each={cells}>{(one) => <option value={printCellPlace(one.place)} selected={printCellPlace(one.place) === props.text}>{one.label ?? 'without a label'} ({printCellPlace(one.place)})</option>}</For>
              </optgroup>
            )}
          </For>
        </select>
      </Show>
      <Show when={props.text !== ''}>
        <p class="whatif-hint" classList={{ 'whatif-wrong': typeof found() === 'string' }}>
          <CellWordsView found={found()} />
        </p>
      </Show>
    </div>
  )
}

function CellWordsView(props: { readonly found: CellPlace | string }): JSX.Element {
  const session = useSession()
  return <>{typeof props.found === 'string' ? props.found : described(cellWords(session.document.workbook(), props.found))}</>
}

function groups(cells: readonly CellWords[]): (readonly [string, readonly CellWords[]])[] {
  const found = new Map<string, CellWords[]>()
  for (const one of cells) found.set(one.place.sheet, [...(found.get(one.place.sheet) ?? []), one])
  return [...found]
}
