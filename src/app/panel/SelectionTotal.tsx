import { createResource, Show, type JSX } from 'solid-js'
import { findUnit } from '../../../functions/units/units.ts'
import type { Total } from '../../calc/total.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { isOneCell, selectionWords } from '../state/on-selection.ts'
import { useSession } from '../state/session.ts'

/** What the selected cells add up to. */
export function SelectionTotal(): JSX.Element {
  const session = useSession()
  const asked = () => {
    if (isOneCell(session)) return undefined
    return { areas: session.selection.areas(), words: selectionWords(session), sheet: session.sheetName(), version: session.recalculation.version(), content: session.sheet() }
  }
  const [total] = createResource(asked, ({ sheet, areas, version }) => (version === 0 ? undefined : session.recalculation.ask((service) => service.total(sheet, areas))))
  return (
    <Show when={asked()}>
      {(selected) => (
        <section class="selection-total" aria-label="The selected range">
          <h3>{selected().words}</h3>
          <Show when={total.latest} fallback={<p class="panel-empty">No numbers in it.</p>}>
            {(found) => <dl><TotalWords total={found()} /></dl>}
          </Show>
        </section>
      )}
    </Show>
  )
}

/** Numbers of different units are only counted; of temperatures and gauge pressures a sum would mean nothing. */
function TotalWords(props: { readonly total: Total }): JSX.Element {
  const words = (value: number) => `${formatNumber(value)} ${props.total.unit ?? ''}`.trim()
  return (
    <>
      <dt>numbers</dt><dd>{props.total.count.toLocaleString('en')}</dd>
      <Show when={props.total.unit !== null} fallback={<><dt>sum</dt><dd>none: the units differ</dd></>}>
        <Show when={isAdditive(props.total.unit ?? undefined)}><dt>sum</dt><dd>{words(props.total.sum)}</dd></Show>
        <dt>least</dt><dd>{words(props.total.least)}</dd>
        <dt>greatest</dt><dd>{words(props.total.greatest)}</dd>
      </Show>
    </>
  )
}

const isAdditive = (unit: string | undefined): boolean => {
  const found = unit === undefined ? undefined : findUnit(unit)
  return found === undefined || (found.dimension !== 'temperature' && !found.gauge)
}
