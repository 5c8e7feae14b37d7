import { createResource, Match, Switch, type JSX } from 'solid-js'
import { Dynamic } from 'solid-js/web'

/**
 * A panel that is loaded when it is first asked for: most work begins without.
 * @param what cannot be loaded then, in words
 */
export function late(what: string, load: () => Promise<() => JSX.Element>): JSX.Element {
  const [module] = createResource(async () => ({ component: await load() }))
  return (
    <Switch>
      <Match when={module.state === 'errored'}>
        <p class="panel-empty" role="alert">{what} cannot be loaded: Lowside is served no more. Start it again where it was started, then open this panel again; nothing of the workbook is lost.</p>
      </Match>
      <Match when={module.state === 'ready' && module()}>{(loaded) => <Dynamic component={loaded().component} />}</Match>
    </Switch>
  )
}
