import { lazy, Match, Suspense, Switch, type JSX } from 'solid-js'
import { openImport } from '../import/importing.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'
import { returningOf, type ReturnStage } from './returning.ts'

// Most work begins without.
const ChangesDialog = lazy(() => import('./ChangesDialog.tsx').then(({ ChangesDialog: dialog }) => ({ default: dialog })))

/** The dialogs about a spreadsheet file of Lowside's that came back, whichever part of the screen has opened it. */
export function ReturnPlace(): JSX.Element {
  const session = useSession()
  const { stage, setStage } = returningOf(session)
  const close = () => setStage(undefined)
  const at = <Name extends ReturnStage['stage']>(name: Name) => {
    const now = stage()
    return now?.stage === name ? (now as Extract<ReturnStage, { stage: Name }>) : undefined
  }
  return (
    <Suspense>
      <Switch>
        <Match when={at('changes')} keyed>{({ file, returned }) => <ChangesDialog file={file} returned={returned} onClose={close} />}</Match>
        <Match when={at('damaged')} keyed>
          {({ file, problem, contents }) => {
            const bringIn = () => {
              close()
              void openImport(session, { fileName: file.name, contents, file })
            }
            return (
              <Dialog title={`The workbook in ${file.name} is damaged`} onClose={close}>
                <p>Lowside exported this file, but {problem}</p>
                <p>The file is as it was, and so is the workbook that is open.</p>
                <div class="dialog-verbs">
                  <button type="button" class="main-button" autofocus onClick={bringIn}>Bring in its sheets</button>
                  <button type="button" class="plain-button" onClick={close}>Cancel</button>
                </div>
              </Dialog>
            )
          }}
        </Match>
      </Switch>
    </Suspense>
  )
}
