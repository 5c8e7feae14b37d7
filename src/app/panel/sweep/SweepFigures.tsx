import { createMemo, For, Show, type JSX } from 'solid-js'
import type { Plot } from '../../../figures/plot-frame.ts'
import type { Drawing } from '../../../figures/drawing.ts'
import { isCellError } from '../../../calc/values.ts'
import { withUnit } from '../../../whatif/quantity-words.ts'
import { createRoomWidth } from '../figure/room-width.ts'
import { SceneView } from '../figure/SceneView.tsx'
import type { SweepFound, SweepState } from './sweep-state.ts'
import { fieldDrawing, lineDrawings } from './sweep-drawings.ts'
import '../../../figures/figures.css'
import '../figure/Figures.css'
import './Sweep.css'

/** The figures of a sweep, as wide as there is room. By pointer or arrow keys a point is chosen on any of them. */
export function SweepFigures(props: { readonly state: SweepState; readonly found: SweepFound }): JSX.Element {
  const { width, measured } = createRoomWidth()
  const isField = () => props.found.begun.axes.length === 2
  const drawings = createMemo(() => (width() === 0 ? [] : isField() ? fieldDrawing(props.found, props.state.pictured(), width()) : lineDrawings(props.found, width())))
  const results = () => props.found.begun.watched.flatMap((cell, at) => (cell.isCheck ? [] : [{ at, name: cell.label ?? `${at + 1}` }]))
  return (
    <div ref={measured} class="sweep-figures">
      <Show when={isField() && results().length > 1}>
        <label>Shown<select onChange={({ currentTarget }) => props.state.setPictured(Number(currentTarget.value))}>
          <For each={results()}>{({ at, name }) => <option value={at} selected={at === props.state.pictured()}>{name}</option>}</For>
        </select></label>
      </Show>
      <For each={drawings()}>
        {({ name, drawn }) => ('faults' in drawn
          ? <p class="whatif-hint">{name}: {props.state.running() ? 'not drawn yet' : drawn.faults.join(' ')}</p>
          : <PlotView name={name} drawing={drawn} state={props.state} found={props.found} />)}
      </For>
    </div>
  )
}

function PlotView(props: { readonly name: string; readonly drawing: Drawing & { readonly plot: Plot }; readonly state: SweepState; readonly found: SweepFound }): JSX.Element {
  const axes = () => props.found.begun.axes
  const point = () => props.found.points[props.state.chosen() ?? -1]
  const place = createMemo(() => {
    const [x, y] = point()?.given ?? []
    const { field, x: across, y: up } = props.drawing.plot
    if (x === undefined || across.to === across.from) return undefined
    const left = field.left + ((x - across.from) / (across.to - across.from)) * (field.right - field.left)
    return { left, top: y === undefined ? undefined : field.bottom - ((y - up.from) / (up.to - up.from)) * (field.bottom - field.top) }
  })
  const valueText = () => {
    const now = point()
    if (now === undefined) return 'no point'
    const inputs = axes().map((axis, at) => `${axis.input.label ?? ''} ${withUnit(now.given[at] ?? Number.NaN, axis.unitText)}`)
    const outputs = props.found.begun.watched.slice(0, 6).map((cell, at) => {
      const value = now.readings[at]?.value
      const words = typeof value === 'number' ? withUnit(value, cell.unitText) : isCellError(value) ? value.error : value === true ? 'met' : value === false ? 'not met' : String(value ?? '')
      return `${cell.label ?? ''} ${words}`
    })
    return [...inputs, ...outputs].join('; ')
  }
  function choose({ clientX, clientY, currentTarget }: PointerEvent & { readonly currentTarget: HTMLElement }): void {
    const svg = currentTarget.querySelector('svg')?.getBoundingClientRect()
    if (svg === undefined) return
    const { field, x, y } = props.drawing.plot
    const across = x.from + ((clientX - svg.left - field.left) / (field.right - field.left)) * (x.to - x.from)
    const up = y.from + ((field.bottom - (clientY - svg.top)) / (field.bottom - field.top)) * (y.to - y.from)
    const [along, second] = axes()
    const column = nearest(along?.numbers ?? [], across)
    go(column, second === undefined ? 0 : nearest(second.numbers, up))
  }
  const go = (column: number, row: number): void => {
    // A sweep that was stopped has no points further on.
    props.state.setChosen(within(row * (axes()[0]?.numbers.length ?? 0) + column, props.found.points.length))
  }
  function onKeyDown(event: KeyboardEvent): void {
    const columns = axes()[0]?.numbers.length ?? 0
    const [column = 0, row = 0] = point()?.at ?? []
    const steps: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: axes().length === 2 ? [0, 1] : [1, 0], ArrowDown: axes().length === 2 ? [0, -1] : [-1, 0],
      PageUp: [10, 0], PageDown: [-10, 0], Home: [-columns, 0], End: [columns, 0],
    }
    const step = steps[event.key]
    if (step === undefined) return
    event.preventDefault()
    if (point() === undefined) return go(event.key === 'End' ? columns - 1 : 0, 0)
    const rows = axes()[1]?.numbers.length ?? 1
    // Up is where the numbers of the axis grow, whichever way they were given.
    const [acrossWay, upWay] = axes().map(({ numbers }) => Math.sign((numbers.at(-1) ?? 0) - (numbers[0] ?? 0)) || 1)
    go(within(column + step[0] * (acrossWay ?? 1), columns), within(row + step[1] * (upWay ?? 1), rows))
  }
  return (
    <div class="figure-view sweep-plot">
      <h4>{props.name}</h4>
      <div
        class="sweep-pointed" role="slider" tabindex={0} aria-label={`Point on ${props.name}`} aria-valuemin={0} aria-valuemax={Math.max(0, props.found.points.length - 1)} aria-valuenow={props.state.chosen() ?? 0} aria-valuetext={valueText()}
        onPointerMove={choose} onPointerDown={choose} onKeyDown={onKeyDown}
      >
        <SceneView scene={props.drawing.scene} name={props.name} description={props.drawing.description}>
          <Show when={place()}>
            {(at) => (
              <>
                <line class="figure-leader" x1={at().left} x2={at().left} y1={props.drawing.plot.field.top} y2={props.drawing.plot.field.bottom} />
                <Show when={at().top}>{(top) => <circle class="sweep-mark" cx={at().left} cy={top()} r={4} />}</Show>
              </>
            )}
          </Show>
        </SceneView>
      </div>
      <Show when={props.drawing.remarks.length > 0}><ul class="figure-remarks"><For each={props.drawing.remarks}>{(words) => <li>{words}</li>}</For></ul></Show>
    </div>
  )
}

const within = (at: number, count: number): number => Math.max(0, Math.min(count - 1, at))

function nearest(numbers: readonly number[], wanted: number): number {
  let best = 0
  for (const [at, number] of numbers.entries()) if (Math.abs(number - wanted) < Math.abs((numbers[best] ?? Infinity) - wanted)) best = at
  return best
}
