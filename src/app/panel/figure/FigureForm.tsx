import { createMemo, For, Show, type JSX } from 'solid-js'
import { parseReference, printReference } from '../../../workbook/address.ts'
import { changeFigure, withBinding } from '../../../workbook/figure-commands.ts'
import { figureKind, type FigureKindDescription, type FigurePart } from '../../../workbook/figure-kinds.ts'
import { optionOf, type Figure } from '../../../workbook/figure.ts'
import { accepted } from '../../../figures/read-parts.ts'
import { useSession } from '../../state/session.ts'

/** What a figure is called, where it belongs and which cells its parts are bound to. Each change is drawn at once, and can be undone. */
export function FigureForm(props: { readonly figure: Figure; readonly at: number }): JSX.Element {
  const session = useSession()
  // One and the same for all changes, so that the fields stay and keep the focus.
  const kind = createMemo((): FigureKindDescription => figureKind(props.figure.kind))
  const sheets = () => session.document.workbook().sheets.map(({ name }) => name)
  const change = (figure: Figure) => session.act('Figure', (workbook) => changeFigure(workbook, props.at, figure))
  const belongTo = (name: string) => {
    const { sheet: _before, ...rest } = props.figure
    change(name === '' ? rest : { ...rest, sheet: name })
  }

  return (
    <div class="figure-form">
      <label>Title<input type="text" autocomplete="off" value={props.figure.title} onChange={({ currentTarget }) => change({ ...props.figure, title: currentTarget.value })} /></label>
      <label>Belongs to<select onChange={({ currentTarget }) => belongTo(currentTarget.value)}>
        <option value="" selected={props.figure.sheet === undefined}>the whole workbook</option>
        <For each={sheets()}>{(name) => <option value={name} selected={name === props.figure.sheet}>{name}</option>}</For>
      </select></label>
      <For each={Object.entries(kind().options)}>
        {([name, option]) => (
          <label>{option.label}<select onChange={({ currentTarget }) => change({ ...props.figure, options: { ...props.figure.options, [name]: currentTarget.value } })}>
            <For each={option.accepted}>{(choice) => <option value={choice} selected={choice === optionOf(props.figure, name)}>{choice}</option>}</For>
          </select></label>
        )}
      </For>
      <p class="figure-hint">Select cells in the grid, then take them for a part; or type a reference.</p>
      <ul class="figure-parts">
        <For each={Object.entries(kind().parts)}>
          {([name, part]) => <PartField part={part} text={props.figure.bindings[name] ?? ''} home={props.figure.sheet} onBind={(text) => change(withBinding(props.figure, name, text))} />}
        </For>
      </ul>
    </div>
  )
}

function PartField(props: { readonly part: FigurePart; readonly text: string; readonly home: string | undefined; readonly onBind: (text: string) => void }): JSX.Element {
  const session = useSession()
  const selected = () => {
    const { top, left, bottom, right } = session.usedSelection()
    const corner = (row: number, column: number) => ({ row, column, rowAbsolute: true, columnAbsolute: true })
    return printReference({ sheet: session.sheetName(), from: corner(top, left), to: top === bottom && left === right ? null : corner(bottom, right) })
  }
  /** A reference without a sheet means the sheet of the figure. */
  const onSheet = (typed: string): string => {
    const reference = parseReference(typed)
    return reference && reference.sheet === null ? printReference({ ...reference, sheet: props.home ?? session.sheetName() }) : typed
  }
  return (
    <li>
      <label>
        <span>{props.part.label}<Show when={props.part.required}> <em>needed</em></Show></span>
        <input type="text" spellcheck={false} autocomplete="off" placeholder="no cells" value={props.text} title={`accepted: ${accepted(props.part)}`} onChange={({ currentTarget }) => props.onBind(onSheet(currentTarget.value.trim()))} />
      </label>
      <button type="button" class="plain-button" aria-label={`${props.part.label}: take ${selected()}`} disabled={props.text === selected()} onClick={() => props.onBind(selected())}>Take {selected().slice(selected().lastIndexOf('!') + 1).replaceAll('$', '')}</button>
    </li>
  )
}
