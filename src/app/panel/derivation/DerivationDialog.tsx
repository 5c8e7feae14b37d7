import { createSignal, For, Show, type JSX } from 'solid-js'
import { dateInWords } from '../../../pages/date-words.ts'
import { reportSettingsOf } from '../../../pages/settings-of.ts'
import type { PagesAnswer } from '../../../review/derivation/messages.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { PAPERS, sameReportSettings, type Paper, type ReportSettings } from '../../../workbook/report-settings.ts'
import { REPORT_FILE, saveFile } from '../../files/file-access.ts'
import { tellProblem } from '../../files/file-actions.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { printPages } from '../../print/print-pages.ts'
import { inSight } from '../../state/in-sight.ts'
import { useSession } from '../../state/session.ts'
import { chosenCells, selectedText } from './chosen-cells.ts'
import { askDerivation } from './derivation-thread.ts'
import '../../print/PrintDialog.css'

export type DerivationKind = 'report' | 'hand'

/** Of which results, by whom and on which paper; then to the printer, or into a file. */
export function DerivationDialog(props: { readonly kind: DerivationKind; readonly of: CellPlace | undefined; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  const before = workbook().report
  const proposed = reportSettingsOf(workbook())
  const isHand = props.kind === 'hand'
  const selected = selectedText(session.sheet(), session.usedAreas())
  const [cells, setCells] = createSignal(selected !== '' ? selected : props.of === undefined ? '' : printCellPlace(props.of))
  const [preparedBy, setPreparedBy] = createSignal(proposed.preparedBy)
  const [checkedBy, setCheckedBy] = createSignal(proposed.checkedBy)
  const [paper, setPaper] = createSignal<Paper>(proposed.paper)
  const [option, setOption] = createSignal(false)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)

  const make = async (use: (pages: PagesAnswer) => Promise<void> | void) => {
    const results = chosenCells(workbook(), cells(), session.sheetName())
    if (typeof results === 'string') return void setProblem(results)
    const settings: ReportSettings = { preparedBy: preparedBy().trim(), checkedBy: checkedBy().trim(), paper: paper() }
    // Where another tab writes the workbook, it is printed all the same.
    if (!sameReportSettings(settings, before) && session.document.refusal() === undefined) session.act('Report', () => [{ kind: 'report', report: settings }])
    props.onClose()
    const said = { results, settings, date: dateInWords(new Date()) }
    try {
      const answer = await inSight(session.work, isHand ? 'Making the hand calculation sheet' : 'Making the derivation report', () =>
        askDerivation(session.service, isHand ? { kind: 'hand', ...said, blind: option() } : { kind: 'report', ...said, unfold: option() }))
      if ('pages' in answer) await use(answer.pages)
    } catch (fault) {
      tellProblem(session, fault, 'Stopped: nothing was made')
    }
  }
  const print = () => make(({ report }) => printPages(report))
  const save = () => make(async ({ file }) => {
    const saved = await saveFile(`${workbook().title} – ${isHand ? 'hand calculation' : 'derivation'}`, REPORT_FILE, () => Promise.resolve(file))
    if (saved) session.setNotice({ tone: 'done', text: isHand ? 'Saved the hand calculation sheet' : 'Saved the derivation report' })
  })

  return (
    <Dialog title={isHand ? 'Hand calculation sheet' : 'Derivation report'} onClose={props.onClose}>
      <form class="print-form" onSubmit={(event) => {
        event.preventDefault()
        void print()
      }}>
        <label class="print-field derivation-cells">Results<input autofocus value={cells()} aria-describedby="derivation-cells-hint" onInput={(event) => {
          setCells(event.currentTarget.value)
          setProblem(undefined)
        }} /></label>
        <p id="derivation-cells-hint" class="print-hint">{isHand ? 'A page or two for each: what is given, the equation, room for each step, the comparison.' : 'Together, each step once, from the inputs on.'} Several with commas between them.</p>
        <Show when={problem()}>{(words) => <p class="print-warning" role="alert">{words()}</p>}</Show>
        <Show when={!isHand}>
          <label class="print-field">Prepared by<input value={preparedBy()} onInput={(event) => setPreparedBy(event.currentTarget.value)} /></label>
          <label class="print-field">Checked by<input value={checkedBy()} onInput={(event) => setCheckedBy(event.currentTarget.value)} /></label>
        </Show>
        <fieldset class="print-papers">
          <legend>Paper</legend>
          <For each={PAPERS}>{(one) => <label><input type="radio" name="paper" checked={paper() === one} onChange={() => setPaper(one)} />{one}</label>}</For>
        </fieldset>
        <div class="print-papers">
          <label><input type="checkbox" checked={option()} onChange={(event) => setOption(event.currentTarget.checked)} />{isHand ? 'Without the values of Lowside: they stand on a page of their own' : 'Ranges and tables row by row'}</label>
        </div>
        <div class="dialog-verbs">
          <button type="submit" class="main-button">Print</button>
          <button type="button" class="plain-button" onClick={() => void save()}>Save as a file</button>
          <button type="button" class="plain-button" onClick={() => props.onClose()}>Cancel</button>
        </div>
      </form>
    </Dialog>
  )
}
