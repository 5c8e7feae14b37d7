import { createEffect, createMemo, createSignal, createUniqueId, on, Show, type JSX } from 'solid-js'
import { coversOf, filledCells } from '../../../workbook/review/covers.ts'
import { counted } from '../../parts/counted.ts'
import { check } from '../../review/checking.ts'
import { checkMarksOf } from '../../review/check-marks.ts'
import { selectionWords } from '../../state/on-selection.ts'
import { useSession } from '../../state/session.ts'
import { CheckForm } from './CheckForm.tsx'

/** What is selected, or the sheet, to be marked as checked. */
export function NewMark(): JSX.Element {
  const session = useSession()
  const marks = checkMarksOf(session)
  const group = createUniqueId()
  const [isSheet, setIsSheet] = createSignal(false)
  const [done, setDone] = createSignal('')
  let take: (() => void) | undefined
  const areas = () => (isSheet() ? [null] : session.usedAreas())
  /** What a mark would cover; of many cells it is known once it is made. */
  const covered = createMemo(() => {
    const workbook = session.document.workbook()
    const sheet = session.sheet().name
    const places = areas().flatMap((area) => (area !== null && (area.bottom - area.top + 1) * (area.right - area.left + 1) > FEW_CELLS ? [] : filledCells(workbook, sheet, area)))
    if (places.length === 0 || places.length > FEW_CELLS) return undefined
    return coversOf(workbook, places).covers.length - places.length
  })
  const hint = () => {
    const further = covered()
    if (further === undefined) return 'A mark covers the cells, their formulas and all that feeds them.'
    return further === 0 ? 'Nothing else feeds what is marked.' : `Covers ${counted(further, 'cell')} more, which ${further === 1 ? 'feeds' : 'feed'} what is marked.`
  }
  // Asked for from the grid: what is selected there is meant.
  createEffect(on(marks.asked, (times) => {
    if (times === 0 || times === seen) return
    seen = times
    setIsSheet(false)
    queueMicrotask(() => take?.())
  }))

  return (
    <section class="check-new">
      <CheckForm
        label="Mark as checked" verb="Mark as checked" hint={hint()}
        focus={(focus) => (take = focus)}
        onDo={(said) => check(session, session.sheet().name, areas(), said)}
        onEnd={() => setDone(`${isSheet() ? session.sheetName() : selectionWords(session)} is marked as checked.`)}
      >
        <fieldset>
          <legend>What was checked</legend>
          <label><input type="radio" name={group} checked={!isSheet()} onChange={() => setIsSheet(false)} /><span>{selectionWords(session)} <small>what is selected</small></span></label>
          <label><input type="radio" name={group} checked={isSheet()} onChange={() => setIsSheet(true)} /><span>{session.sheetName()} <small>the whole sheet</small></span></label>
        </fieldset>
      </CheckForm>
      <Show when={done()}><p class="unseen" role="status">{done()}</p></Show>
    </section>
  )
}

/** The asking that was answered last: a panel that is shown again does not take the focus by it. */
let seen = 0

/** Following more from key to key would hold up the selection. */
const FEW_CELLS = 400
