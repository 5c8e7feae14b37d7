import { createEffect, For, on, type JSX } from 'solid-js'
import { Dynamic, Show } from 'solid-js/web'
import { Icon } from '../parts/Icon.tsx'
import { useSession, type PanelName } from '../state/session.ts'
import { LateCases, LateChecked, LateDifferences, LateFigures, LateFindings, LateMargins, LateSolve, LateSweep } from './late-panels.ts'
import { Find } from './Find.tsx'
import { Guide } from './Guide.tsx'
import { Why } from './Why.tsx'
import './SidePanel.css'

const PANELS: Readonly<Record<PanelName, () => JSX.Element>> = {
  Why, Find, Figure: LateFigures, Guide,
  Cases: LateCases, Sweep: LateSweep, 'Solve for': LateSolve, Margins: LateMargins,
  Findings: LateFindings, Differences: LateDifferences, Checked: LateChecked,
}

/** What one reads and draws with, what one tries with, what one reviews with: where there is no room for all names in a row, a group begins another one. */
const GROUPS: readonly (readonly PanelName[])[] = [['Why', 'Find', 'Figure', 'Guide'], ['Cases', 'Sweep', 'Solve for', 'Margins'], ['Findings', 'Differences', 'Checked']]

/** One panel at a time beside the grid; its names stay in reach when it is put away. */
export function SidePanel(): JSX.Element {
  const { panel, setPanel } = useSession()
  let names: HTMLDivElement | undefined
  // In a low window they stand in one line that may be longer than the panel is wide.
  createEffect(on(panel, () => {
    const pressed = names?.querySelector<HTMLElement>('[aria-pressed=true]')
    if (names && pressed) names.scrollLeft = pressed.offsetLeft - (names.clientWidth - pressed.offsetWidth) / 2
  }))
  return (
    <aside class="side" classList={{ open: panel() !== undefined }} aria-label="Side panel">
      <div ref={(element) => (names = element)} class="side-names">
        <For each={GROUPS}>
          {(group) => (
            <div class="side-group">
              <For each={group}>
                {(name) => <button type="button" aria-pressed={panel() === name} onClick={() => setPanel(panel() === name ? undefined : name)}>{name}</button>}
              </For>
            </div>
          )}
        </For>
        <Show when={panel()}>
          <button type="button" class="quiet-button side-close" aria-label="Close the side panel" onClick={() => setPanel(undefined)}><Icon name="close" /></button>
        </Show>
      </div>
      <Show when={panel()}>{(name) => <section class="panel" aria-label={name()} tabindex={0}><Dynamic component={PANELS[name()]} /></section>}</Show>
    </aside>
  )
}
