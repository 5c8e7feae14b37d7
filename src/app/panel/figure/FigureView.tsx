import { createMemo, For, Show, type JSX } from 'solid-js'
import { drawFigure, figureName } from '../../../figures/draw-figure.ts'
import type { Drawing } from '../../../figures/drawing.ts'
import { figureKind } from '../../../workbook/figure-kinds.ts'
import type { Figure } from '../../../workbook/figure.ts'
import { createFigureSource } from '../../state/figure-source.ts'
import { useSession } from '../../state/session.ts'
import { createRoomWidth } from './room-width.ts'
import { SceneView } from './SceneView.tsx'
import '../../../figures/figures.css'

/** A figure drawn from its cells as they are, as wide as there is room; or, in words, why it is not drawn. */
export function FigureView(props: { readonly figure: Figure }): JSX.Element {
  const session = useSession()
  const { width, measured } = createRoomWidth()

  const read = createFigureSource(session, () => props.figure)
  const drawn = createMemo(() => {
    const now = read()
    return now === undefined || width() === 0 ? undefined : { name: figureName(now.figure), kind: figureKind(now.figure.kind).label, ...drawFigure(now.figure, now.source, width()) }
  })
  const drawing = () => {
    const now = drawn()
    return now && 'scene' in now ? now : undefined
  }
  const faults = () => {
    const now = drawn()
    return now && 'faults' in now ? now : undefined
  }

  return (
    <div ref={measured} class="figure-view">
      <Show when={faults()}>
        {(now) => (
          <div class="figure-faults" role="status">
            <p>{now().kind}: not drawn yet.</p>
            <ul><For each={now().faults}>{(words) => <li>{words}</li>}</For></ul>
          </div>
        )}
      </Show>
      <Show when={drawing()}>
        {(now) => (
          <>
            <SceneView scene={now().scene} name={now().name} description={now().description} />
            <Show when={now().remarks.length > 0}><ul class="figure-remarks"><For each={now().remarks}>{(words) => <li>{words}</li>}</For></ul></Show>
            <Numbers table={now().table} />
          </>
        )}
      </Show>
    </div>
  )
}

function Numbers(props: { readonly table: Drawing['table'] }): JSX.Element {
  return (
    <details class="figure-numbers">
      <summary>The numbers as a table</summary>
      <table>
        <thead><tr><For each={props.table.head}>{(cell) => <th scope="col">{cell}</th>}</For></tr></thead>
        <tbody>
          <For each={props.table.rows}>
            {(row) => <tr><For each={row}>{(cell, index) => (index() === 0 ? <th scope="row">{cell}</th> : <td>{cell}</td>)}</For></tr>}
          </For>
        </tbody>
      </table>
    </details>
  )
}
