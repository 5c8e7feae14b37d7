import { lazy, Match, Suspense, Switch, type JSX } from 'solid-js'
import { chooseFile } from '../files/file-access.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'
import { ImportReport } from './ImportReport.tsx'
import { IMPORT_ENDINGS, importingOf, openImport, type ImportStage } from './importing.ts'

// Most work begins without these.
const ImportDialog = lazy(() => import('./ImportDialog.tsx').then(({ ImportDialog: dialog }) => ({ default: dialog })))
const ListWizard = lazy(() => import('./list/ListWizard.tsx').then(({ ListWizard: wizard }) => ({ default: wizard })))

/** The verb that brings in files of other programs. */
export function ImportVerb(): JSX.Element {
  const session = useSession()
  const begin = async () => {
    const file = await chooseFile(IMPORT_ENDINGS)
    if (file) await openImport(session, file)
  }
  return <button type="button" class="verb" onClick={() => session.settle() && void begin()}>Import</button>
}

/** The dialogs of an import, whichever part of the screen has begun it. */
export function ImportPlace(): JSX.Element {
  const { stage, setStage } = importingOf(useSession())
  const close = () => setStage(undefined)
  const at = <Stage extends ImportStage['stage']>(name: Stage) => {
    const now = stage()
    // A union does not narrow by a name that is not known before.
    return now?.stage === name ? (now as Extract<ImportStage, { stage: Stage }>) : undefined
  }
  return (
    <Suspense>
      <Switch>
        <Match when={at('choices')} keyed>{(now) => <ImportDialog source={now.source} sheet={now.sheet} onClose={close} />}</Match>
        <Match when={at('list')} keyed>
          {({ source, sheet }) => (
            <ListWizard
              contents={source.contents} sheetName={source.contents.sheets[sheet]?.name ?? ''} fileName={source.fileName}
              onBack={() => setStage({ stage: 'choices', source, sheet })} onClose={close}
            />
          )}
        </Match>
        <Match when={at('refused')} keyed>
          {({ fileName, problem }) => (
            <Dialog title={`${fileName} cannot be read`} onClose={close}>
              <p>The file is as it was, and so is the workbook that is open.</p>
              <p role="alert">{problem}</p>
              <div class="dialog-verbs"><button type="button" class="plain-button" autofocus onClick={close}>Close</button></div>
            </Dialog>
          )}
        </Match>
        <Match when={at('report')} keyed>{(now) => <ImportReport fileName={now.fileName} sheets={now.sheets} remarks={now.remarks} onClose={close} />}</Match>
      </Switch>
    </Suspense>
  )
}
