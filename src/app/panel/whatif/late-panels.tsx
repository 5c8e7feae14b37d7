import { createResource, Match, Switch, type JSX } from 'solid-js'
import { Dynamic } from 'solid-js/web'

/** Panels that are loaded when they are first asked for: most work begins without. */
export const LateCases = (): JSX.Element => late(async () => (await import('../cases/Cases.tsx')).Cases)
export const LateSweep = (): JSX.Element => late(async () => (await import('../sweep/Sweep.tsx')).Sweep)
export const LateSolve = (): JSX.Element => late(async () => (await import('../solve/Solve.tsx')).Solve)
export const LateMargins = (): JSX.Element => late(async () => (await import('../margins/Margins.tsx')).MarginsPanel)

function late(load: () => Promise<() => JSX.Element>): JSX.Element {
  const [module] = createResource(async () => ({ component: await load() }))
  return (
    <Switch>
      <Match when={module.state === 'errored'}>
        <p class="panel-empty" role="alert">This panel cannot be loaded: Lowside is served no more. Start it again where it was started, then open this panel again; nothing of the workbook is lost.</p>
      </Match>
      <Match when={module.state === 'ready' && module()}>{(loaded) => <Dynamic component={loaded().component} />}</Match>
    </Switch>
  )
}
