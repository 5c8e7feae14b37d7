import { For, Show, type JSX } from 'solid-js'
import { REMARK_KINDS, type ImportRemark } from '../../exchange/import/import-remark.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'
import { keepNotes } from './import-actions.ts'
import { counted } from '../parts/counted.ts'
import { KIND_WORDS } from './import-words.ts'
import './ImportReport.css'

/** What became of a file that was brought in, kind by kind, what matters most first. */
export function ImportReport(props: { readonly fileName: string; readonly sheets: readonly string[]; readonly remarks: readonly ImportRemark[]; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const keep = () => {
    const { fileName, remarks } = props
    props.onClose()
    keepNotes(session, fileName, remarks)
  }
  return (
    <Dialog title={`Brought in: ${props.fileName}`} onClose={props.onClose}>
      <p>{counted(props.sheets.length, 'sheet')}: {props.sheets.join(', ')}. What is not as in the file:</p>
      <div class="import-report" tabindex={0} role="region" aria-label="Remarks">
        <RemarkGroups remarks={props.remarks} most={MOST_SHOWN} />
      </div>
      <div class="dialog-verbs">
        <button type="button" class="main-button" autofocus onClick={() => props.onClose()}>Close</button>
        <button type="button" class="plain-button" onClick={keep}>Keep these remarks as a sheet</button>
      </div>
    </Dialog>
  )
}

/** More of a kind are for a sheet. */
const MOST_SHOWN = 200

/** Remarks under a heading for each kind, place beside words. */
export function RemarkGroups(props: { readonly remarks: readonly ImportRemark[]; readonly most: number }): JSX.Element {
  const groups = () => REMARK_KINDS.map((kind) => ({ kind, remarks: props.remarks.filter((one) => one.kind === kind) })).filter(({ remarks }) => remarks.length > 0)
  return (
    <For each={groups()}>
      {({ kind, remarks }) => (
        <section class="remark-group">
          <h3>{KIND_WORDS[kind]} <small>{remarks.length}</small></h3>
          <ul>
            <For each={remarks.slice(0, props.most)}>
              {({ place, words }) => <li><span class="remark-place">{place === '' ? 'The file' : place}</span><span>{words}</span></li>}
            </For>
          </ul>
          <Show when={remarks.length > props.most}><p class="remark-more">and {remarks.length - props.most} more</p></Show>
        </section>
      )}
    </For>
  )
}
