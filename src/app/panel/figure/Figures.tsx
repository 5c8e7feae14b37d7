import { createEffect, createMemo, createSignal, For, on, Show, type JSX } from 'solid-js'
import { figureName } from '../../../figures/draw-figure.ts'
import { foldCase } from '../../../workbook/document.ts'
import { addFigure, moveFigure, removeFigure } from '../../../workbook/figure-commands.ts'
import { FIGURE_KINDS, figureKind, figureKinds, type FigureKind } from '../../../workbook/figure-kinds.ts'
import type { Figure } from '../../../workbook/figure.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { useSession } from '../../state/session.ts'
import { FigureForm } from './FigureForm.tsx'
import { FigureView } from './FigureView.tsx'
import './Figures.css'

interface Listed {
  readonly figure: Figure
  readonly at: number
}

/** The figures of the sheet shown, one of them drawn, and below it those of other sheets. */
export function Figures(): JSX.Element {
  const session = useSession()
  const [picked, setPicked] = createSignal<number | undefined>(undefined)
  const [changing, setChanging] = createSignal(false)
  const [adding, setAdding] = createSignal(false)
  const [large, setLarge] = createSignal(false)
  let panel: HTMLDivElement | undefined

  const figures = createMemo(() => session.document.workbook().figures)
  const listed = createMemo((): Listed[] => figures().map((figure, at) => ({ figure, at })))
  const isHere = ({ figure }: Listed) => figure.sheet !== undefined && foldCase(figure.sheet) === foldCase(session.sheetName())
  const here = createMemo(() => listed().filter(isHere))
  const elsewhere = createMemo(() => listed().filter((one) => !isHere(one)))
  const chosen = createMemo((): Listed | undefined => listed()[picked() ?? -1] ?? here()[0] ?? elsewhere()[0])
  // While a figure is changed, other sheets are shown to take cells from.
  createEffect(on(session.sheetName, () => !changing() && here().length > 0 && setPicked(undefined), { defer: true }))
  createEffect(on(session.opened, () => (setPicked(undefined), setChanging(false)), { defer: true }))

  function add(kind: FigureKind): void {
    const at = listed().length
    session.act('New figure', (workbook) => addFigure(workbook, { kind, title: figureKind(kind).label, sheet: session.sheetName(), options: {}, bindings: {} }))
    if (listed().length === at) return
    setPicked(at)
    setChanging(true)
    setAdding(false)
    panel?.querySelector<HTMLElement>('.figure-chosen')?.focus()
  }
  /** The drawing stands above the list that it is chosen from. */
  function pickFromBelow(at: number): void {
    setPicked(at)
    panel?.querySelector('.figure-chosen')?.scrollIntoView()
  }
  function move(from: number, to: number): void {
    session.act('Move figure', (workbook) => moveFigure(workbook, from, to))
    setPicked(to)
  }
  function remove(at: number): void {
    session.act('Remove figure', (workbook) => removeFigure(workbook, at))
    setPicked(undefined)
    setChanging(false)
    panel?.focus()
  }

  return (
    <div ref={(element) => (panel = element)} class="figure-panel" tabindex={-1}>
      <div class="figure-head">
        <h2>Figures</h2>
        <button type="button" class="plain-button" aria-expanded={adding()} onClick={() => setAdding(!adding())}>New figure</button>
      </div>
      <Show when={adding()}><NewFigure onAdd={add} /></Show>
      <Show when={listed().length === 0}><p class="panel-empty">No figure yet. Choose what to draw; its parts are then bound to cells, and it follows them.</p></Show>
      <Group words={`On ${session.sheetName()}`} figures={here()} chosen={chosen()} onPick={setPicked} />
      <Show when={chosen()}>
        {(one) => (
          <section class="figure-chosen" tabindex={-1} aria-label={figureName(one().figure)}>
            <h2>{figureName(one().figure)}</h2>
            <FigureView figure={one().figure} />
            <div class="figure-verbs">
              <button type="button" class="plain-button" onClick={() => setLarge(true)}>Larger</button>
              <button type="button" class="plain-button" aria-expanded={changing()} onClick={() => setChanging(!changing())}>Change</button>
              <button type="button" class="plain-button" disabled={one().at === 0} onClick={() => move(one().at, one().at - 1)}>Earlier</button>
              <button type="button" class="plain-button" disabled={one().at === listed().length - 1} onClick={() => move(one().at, one().at + 1)}>Later</button>
              <button type="button" class="plain-button" onClick={() => remove(one().at)}>Remove</button>
            </div>
            <Show when={changing()}><FigureForm figure={one().figure} at={one().at} /></Show>
            <Show when={large()}>
              <Dialog title={figureName(one().figure)} onClose={() => setLarge(false)}><div class="figure-large"><FigureView figure={one().figure} /></div></Dialog>
            </Show>
          </section>
        )}
      </Show>
      <Group words={here().length > 0 ? 'Others' : 'In the workbook'} figures={elsewhere()} chosen={chosen()} onPick={pickFromBelow} />
    </div>
  )
}

function Group(props: { readonly words: string; readonly figures: readonly Listed[]; readonly chosen: Listed | undefined; readonly onPick: (at: number) => void }): JSX.Element {
  return (
    <Show when={props.figures.length > 0}>
      <h3>{props.words}</h3>
      <ul class="figure-list">
        <For each={props.figures}>
          {({ figure, at }) => (
            <li>
              <button type="button" aria-current={at === props.chosen?.at} onClick={() => props.onPick(at)}>
                <span>{figureName(figure)}</span> <small>{figureKind(figure.kind).label}</small>
              </button>
            </li>
          )}
        </For>
      </ul>
    </Show>
  )
}

function NewFigure(props: { readonly onAdd: (kind: FigureKind) => void }): JSX.Element {
  const [kind, setKind] = createSignal<FigureKind>('drum')
  return (
    <div class="figure-new">
      <label>What to draw<select onChange={({ currentTarget }) => setKind(currentTarget.value as FigureKind)}>
        <For each={figureKinds}>{(name) => <option value={name} selected={name === kind()}>{FIGURE_KINDS[name].label}</option>}</For>
      </select></label>
      <button type="button" class="plain-button" onClick={() => props.onAdd(kind())}>Add</button>
      <p class="figure-hint">{FIGURE_KINDS[kind()].shows}</p>
    </div>
  )
}
