import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import type { Effect } from '../../../review/differences/difference.ts'
import { printedEffect } from '../../../review/differences/printed-effect.ts'
import { besideUnit } from '../../../whatif/quantity-words.ts'
import { cellAtPlace } from '../../../whatif/place.ts'
import type { CellValue } from '../../../calc/values.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { cellView } from '../../grid/cell-view.ts'
import { counted } from '../../parts/counted.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { isResult } from '../../whatif/cells.ts'
import { Pages } from '../review/Pages.tsx'
import type { Compared, DifferencesState } from './differences-state.ts'

/** What the differences do to results: those that come to something else, or those that were chosen. */
export function Effects(props: { readonly state: DifferencesState; readonly compared: Compared; readonly save: () => void }): JSX.Element {
  const session = useSession()
  const [page, setPage] = createSignal(0)
  const shown = () => pageOf(props.compared.effects, page(), SHOWN)
  const selected = createMemo(() => printCellPlace({ sheet: session.sheetName(), ...session.selection.active() }))
  const canChoose = () => isResult(session.activeCell()) && !props.state.chosen().includes(selected())
  return (
    <section class="difference-effects" aria-labelledby="difference-effects">
      <h3 id="difference-effects">Effect on results</h3>
      <Show when={shown().items.length > 0} fallback={<p class="review-hint">None of {counted(props.compared.resultsCompared, 'result')} and checks comes to anything else.</p>}>
        <Show when={props.state.chosen().length === 0}><p class="review-hint">{counted(props.compared.effects.length, 'comes', 'come')} to something else, of {counted(props.compared.resultsCompared, 'result')} and checks.</p></Show>
        <table>
          <thead><tr><th scope="col">Result</th><th scope="col">was</th><th scope="col">is</th><th scope="col">change</th></tr></thead>
          <tbody><For each={shown().items}>{(effect) => <EffectRow effect={effect} state={props.state} />}</For></tbody>
        </table>
        <Pages of="effects" page={shown()} setPage={setPage} />
      </Show>
      <Show when={props.compared.of.cases}><p class="review-hint">In both workbooks the results are those of {props.compared.resultsOf}.</p></Show>
      <div class="review-verbs">
        <button type="button" class="plain-button" aria-disabled={!canChoose()} onClick={() => canChoose() && session.settle() && props.state.addChosen(selected())}>{props.state.chosen().length === 0 ? `Show ${selected()} only` : `Show ${selected()} too`}</button>
        <button type="button" class="plain-button" aria-disabled={props.state.isOld()} onClick={() => props.state.isOld() || props.save()}>Save as a report</button>
      </div>
      <Show when={!canChoose()}><p class="review-hint">To show the effect on chosen results only, select a result or a check in the grid.</p></Show>
    </section>
  )
}

/** So many leave room for the differences themselves. */
const SHOWN = 5

function EffectRow(props: { readonly effect: Effect; readonly state: DifferencesState }): JSX.Element {
  const session = useSession()
  const { now: { sheet, row, column } } = props.effect
  const address = printCellPlace(props.effect.now)
  const words = (value: CellValue, unit: string | undefined): string => {
    if (value === null) return '–'
    const text = cellView(cellAtPlace(session.document.workbook(), props.effect.now), value, undefined).text
    return typeof value === 'number' ? besideUnit(text, unit) : text
  }
  return (
    <tr classList={{ turned: props.effect.turned }}>
      <th scope="row">
        <button type="button" class="difference-result" onClick={() => goToArea(session, sheet, { top: row, bottom: row, left: column, right: column })}>{props.effect.label ?? 'without a label'}<small>{address}</small></button>
        <Show when={props.state.chosen().includes(address)}>
          <button type="button" class="difference-drop" aria-label={`Leave out ${address}`} onClick={() => props.state.removeChosen(address)}>leave out</button>
        </Show>
      </th>
      <td>{words(props.effect.was, props.effect.unitBefore)}</td>
      <td>{words(props.effect.is, props.effect.unit)}</td>
      <td>{props.effect.turned ? 'turned' : printedEffect(props.effect).change}</td>
    </tr>
  )
}
