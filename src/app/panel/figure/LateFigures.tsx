import { createResource, Match, Switch, type JSX } from 'solid-js'
import { Dynamic } from 'solid-js/web'

/** The panel of figures. What draws them is loaded when it is first asked for: most work begins without. */
export function LateFigures(): JSX.Element {
  const [module] = createResource(() => import('./Figures.tsx'))
  return (
    <Switch>
      <Match when={module.state === 'errored'}>
        <p class="panel-empty" role="alert">The drawings cannot be loaded: Lowside is served no more. Start it again where it was started, then open this panel again; nothing of the workbook is lost.</p>
      </Match>
      <Match when={module.state === 'ready' && module()}>{(loaded) => <Dynamic component={loaded().Figures} />}</Match>
    </Switch>
  )
}
