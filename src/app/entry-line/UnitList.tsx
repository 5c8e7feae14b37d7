import { createSignal, For, Show, type JSX } from 'solid-js'
import { units, type Dimension, type Unit } from '../../../functions/units/units.ts'
import { changeUnits, hasNumbers, unitPlaces, type UnitPlace } from '../../workbook/unit-change.ts'
import { Popover } from '../parts/Popover.tsx'
import { isOneCell } from '../state/on-selection.ts'
import { useSession } from '../state/session.ts'
import './UnitList.css'

interface Props {
  readonly place: UnitPlace
  readonly left?: number
  readonly top?: number
  readonly onClose: (backToGrid: boolean) => void
}

/** The units of a dimension, of which one is chosen; of all dimensions where none is known yet. */
export function UnitList(props: Props): JSX.Element {
  const session = useSession()
  const [convertNumbers, setConvertNumbers] = createSignal(false)
  const groups = (): (readonly [Dimension, readonly Unit[]])[] => {
    const known = props.place.unit?.dimension
    const dimensions = known ? [known] : [...new Set(units.map(({ dimension }) => dimension))]
    return dimensions.map((dimension) => [dimension, units.filter((one) => one.dimension === dimension)])
  }
  const choose = (code: string) => {
    const { place } = props
    // Of what is selected, all that have a unit of the same kind, or none.
    const places = isOneCell(session) ? [place] : unitPlaces(session.sheet(), session.usedAreas()).filter(({ unit }) => unit?.dimension === place.unit?.dimension)
    session.act('Unit', (workbook) => changeUnits(workbook, session.sheet().name, places, code, convertNumbers()))
    props.onClose(true)
  }

  return (
    <Popover label="Unit" class="unit-list" onClose={() => props.onClose(false)} {...(props.left === undefined ? {} : { left: props.left })} {...(props.top === undefined ? {} : { top: props.top })}>
      <div role="menu" aria-label="Units" onKeyDown={onKeyDown}>
        <Show when={hasNumbers(session.sheet(), props.place) && props.place.unit}>
          <button type="button" role="menuitemcheckbox" class="unit-convert" tabindex={-1} aria-checked={convertNumbers()} onClick={() => setConvertNumbers((before) => !before)}>
            convert the number too
          </button>
        </Show>
        <For each={groups()}>
          {([dimension, members]) => (
            <div role="group" aria-label={dimension}>
              <p class="unit-dimension" aria-hidden="true">{dimension}</p>
              <For each={members}>
                {({ code }) => (
                  <button type="button" role="menuitemradio" tabindex={-1} aria-checked={code === props.place.unit?.code} onClick={() => choose(code)}>{code}</button>
                )}
              </For>
            </div>
          )}
        </For>
      </div>
    </Popover>
  )
}

/** As in any menu: arrows, first and last, and a character goes to the next unit that begins with it. */
function onKeyDown(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  const items = [...event.currentTarget.querySelectorAll<HTMLElement>('button')]
  const at = items.findIndex((item) => item === document.activeElement)
  const after = [...items.slice(at + 1), ...items.slice(0, at + 1)]
  const target = MOVES[event.key]?.(at, items) ?? (event.key.trim().length === 1 ? after.find((item) => item.textContent?.toLowerCase().startsWith(event.key.toLowerCase())) : undefined)
  if (!target) return
  event.preventDefault()
  target.focus()
}

const MOVES: Readonly<Record<string, (at: number, items: readonly HTMLElement[]) => HTMLElement | undefined>> = {
  ArrowDown: (at, items) => items[(at + 1) % items.length],
  ArrowUp: (at, items) => items.at(at <= 0 ? -1 : at - 1),
  Home: (_at, items) => items[0],
  End: (_at, items) => items.at(-1),
}
