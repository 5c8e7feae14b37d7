import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { ASKED_KINDS, canBeTaken, isAsked, type AskedChange } from '../../exchange/return/changes.ts'
import type { ReturnedFile } from '../../exchange/return/messages.ts'
import type { Decisions } from '../../exchange/return/take-over.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'
import { AskedChanges } from './AskedChanges.tsx'
import { ChangeList } from './ChangeList.tsx'
import { openReturned } from './open-spreadsheet.ts'
import { counted, grouped } from '../parts/counted.ts'
import { dateWords } from './return-words.ts'
import './ChangesDialog.css'

/** What was changed in a spreadsheet file of Lowside's since it was exported, and what of it is to be taken over. Nothing is, but inputs, unless it is chosen. */
export function ChangesDialog(props: { readonly file: File; readonly returned: ReturnedFile; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const { file, returned } = props
  const { changes } = returned
  const inputs = changes.filter(({ kind }) => kind === 'input')
  const asked = changes.filter(isAsked)
  const kinds = ASKED_KINDS.map((kind) => ({ kind, changes: asked.filter((change) => change.kind === kind) })).filter((one) => one.changes.length > 0)
  const workings = changes.filter((change) => change.kind === 'workings')
  const passedOver = changes.filter((change) => change.kind === 'passedOver')

  const [taken, setTaken] = createSignal<ReadonlySet<number>>(new Set())
  const [setsAside, setSetsAside] = createSignal(false)
  const choose = (some: readonly AskedChange[], isTaken: boolean) => {
    setTaken((before) => {
      const after = new Set(before)
      for (const change of some) {
        if (isTaken && canBeTaken(change)) after.add(change.id)
        else after.delete(change.id)
      }
      return after
    })
  }
  const asideCount = createMemo(() => changes.length - inputs.length - taken().size)

  const open = async (decisions: Decisions | undefined) => {
    props.onClose()
    const failure = await openReturned(session, file, returned, decisions)
    if (failure) session.setNotice({ tone: 'problem', text: `${failure.fileName}: ${failure.messages[0]}` })
  }

  return (
    <Dialog title={`Changes in ${file.name}`} onClose={props.onClose}>
      <div class="return-dialog">
        <p>Exported from “{returned.title}” on {dateWords(returned.exported)}; since then the file was changed. It stays as it is; what you take over can be undone in the workbook.</p>
        <div class="return-lists" role="group" aria-label="Changes" tabindex="0">
          <Show when={inputs.length > 0}>
            <details class="return-part" open={inputs.length <= FEW}>
              <summary><h3>{counted(inputs.length, 'input')} with other values</h3><span>taken over</span></summary>
              <ChangeList changes={inputs} label="Inputs with other values" />
            </details>
          </Show>
          <For each={kinds}>{(one) => <AskedChanges kind={one.kind} changes={one.changes} taken={taken()} choose={choose} />}</For>
          <Show when={workings.length > 0}>
            <details class="return-part" open={workings.length <= FEW}>
              <summary><h3>{counted(workings.length, 'cell')} of workings changed</h3><span>not taken over</span></summary>
              <p class="return-consequence">The workbook computes with Lowside’s own functions, not with their workings: what the file has here changes nothing in it. If the change was meant, do not open it; ask whoever made it.</p>
              <ChangeList changes={workings} label="Workings changed" />
            </details>
          </Show>
          <Show when={passedOver.length > 0}>
            <details class="return-part" open>
              <summary><h3>Passed over</h3><span>not taken over</span></summary>
              <ul class="return-passed"><For each={passedOver}>{(change) => <li><strong>{change.place}</strong>: {change.is}. {change.kind === 'passedOver' ? change.reason : ''}</li>}</For></ul>
            </details>
          </Show>
        </div>
        <label class="return-aside">
          <input type="checkbox" checked={setsAside()} disabled={asideCount() === 0} onChange={(event) => setSetsAside(event.currentTarget.checked)} />
          Keep what is not taken over as a sheet “Set aside” ({counted(asideCount(), 'line')})
        </label>
        <p role="status" class="return-sum">{counted(inputs.length + taken().size, 'change')} taken over, {grouped(asideCount())} not.</p>
        <div class="dialog-verbs">
          <button type="button" class="main-button" autofocus onClick={() => void open({ inputs: true, taken: taken(), setAside: setsAside() && asideCount() > 0 })}>Open with these</button>
          <button type="button" class="plain-button" onClick={() => void open(undefined)}>Open as it was exported</button>
          <button type="button" class="plain-button" onClick={() => props.onClose()}>Cancel</button>
        </div>
      </div>
    </Dialog>
  )
}

/** So many are shown without being asked for. */
const FEW = 12
