import { createSignal, For, Show, type JSX } from 'solid-js'
import { MOST_DECIMALS, MOST_DIGITS, setNote, setNumberFormat, setWrap } from '../../workbook/format.ts'
import { DEFAULT_DIGITS, type NumberFormat } from '../../workbook/number-format.ts'
import { Popover } from '../parts/Popover.tsx'
import { actOnSelection, isOneCell } from '../state/on-selection.ts'
import { useSession } from '../state/session.ts'
import './FormatField.css'

/** How the selected cells show their numbers and break their texts, and the note on them. */
export function FormatField(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const isOpen = () => session.popover() === 'format'
  let keepNote: (() => void) | undefined
  /** Only Escape leaves the note as it was. */
  const close = (keeps: boolean, backToGrid: boolean) => {
    if (keeps) keepNote?.()
    session.setPopover(undefined)
    if (backToGrid) props.focusGrid()
  }
  return (
    <div class="entry-format">
      <button
        type="button" class="entry-button" aria-haspopup="dialog" aria-expanded={isOpen()}
        onClick={() => {
          if (isOpen()) close(true, false)
          else if (session.settle()) session.setPopover('format')
        }}
      >Format and note</button>
      <Show when={isOpen()}>
        <Popover label="Format and note" class="format-paper" onClose={(byEscape) => close(!byEscape, false)}>
          <NumberFields />
          <NoteField keeper={(keep) => (keepNote = keep)} onDone={() => close(true, true)} />
        </Popover>
      </Show>
    </div>
  )
}

type Kind = 'asItComes' | 'digits' | 'decimals'

const KINDS: Readonly<Record<Kind, { readonly words: string; readonly most: number; readonly least: number; readonly usual: number }>> = {
  asItComes: { words: `as it comes, ${DEFAULT_DIGITS} digits`, least: 0, most: 0, usual: 0 },
  digits: { words: 'significant digits', least: 1, most: MOST_DIGITS, usual: DEFAULT_DIGITS },
  decimals: { words: 'decimals', least: 0, most: MOST_DECIMALS, usual: 2 },
}

function NumberFields(): JSX.Element {
  const session = useSession()
  const cell = session.activeCell
  const kind = (): Kind => (cell()?.decimals !== undefined ? 'decimals' : cell()?.digits !== undefined ? 'digits' : 'asItComes')
  const apply = (format: NumberFormat) => actOnSelection(session, 'Number format', (workbook, sheet, range) => setNumberFormat(workbook, sheet, range, format))
  const formatOf = (chosen: Kind, places: number): NumberFormat => (chosen === 'asItComes' ? {} : { [chosen]: places })
  const placesOf = (chosen: Kind): number => (chosen === 'asItComes' ? 0 : (cell()?.[chosen] ?? KINDS[chosen].usual))

  return (
    <>
      <fieldset>
        <legend>Numbers</legend>
        <For each={Object.keys(KINDS) as Kind[]}>
          {(name) => (
            <div class="format-kind">
              <label><input type="radio" name="format-kind" checked={kind() === name} onChange={() => apply(formatOf(name, placesOf(name)))} />{KINDS[name].words}</label>
              <Show when={name !== 'asItComes'}>
                <input
                  type="number" aria-label={`Number of ${KINDS[name].words}`} min={KINDS[name].least} max={KINDS[name].most} value={placesOf(name)}
                  onChange={({ currentTarget }) => {
                    const places = currentTarget.valueAsNumber
                    if (Number.isInteger(places) && places >= KINDS[name].least && places <= KINDS[name].most) apply(formatOf(name, places))
                    else currentTarget.value = String(placesOf(name))
                  }}
                />
              </Show>
            </div>
          )}
        </For>
      </fieldset>
      <label class="format-wrap">
        <input type="checkbox" checked={cell()?.wrap === true} onChange={({ currentTarget }) => actOnSelection(session, 'Wrap', (workbook, sheet, range) => setWrap(workbook, sheet, range, currentTarget.checked))} />
        break long text into lines
      </label>
    </>
  )
}

function NoteField(props: { readonly keeper: (keep: () => void) => void; readonly onDone: () => void }): JSX.Element {
  const session = useSession()
  // The selection it was asked for: a press elsewhere, which keeps the note, has moved on.
  const [sheet, areas, isOne] = [session.sheet(), session.usedAreas(), isOneCell(session)]
  const before = session.activeCell()?.note ?? ''
  const [text, setText] = createSignal(before)
  props.keeper(() => {
    if (text() !== before) actOnSelection({ act: session.act, sheet: () => sheet, usedAreas: () => areas }, 'Note', (workbook, name, range) => setNote(workbook, name, range, text()))
  })
  return (
    <>
      <label class="format-note">{isOne ? 'Note on the cell' : 'Note on the selected cells'}<textarea rows={4} value={text()} onInput={({ currentTarget }) => setText(currentTarget.value)} /></label>
      <button type="button" class="main-button" onClick={() => props.onDone()}>Keep the note</button>
    </>
  )
}
