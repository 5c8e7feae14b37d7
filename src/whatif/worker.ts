import { findUnit } from '../../functions/units/units.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import { cellAtPlace } from './place.ts'
import type { Workbook } from '../workbook/document.ts'
import { numberInCellUnit } from './cell-unit.ts'
import { checksDownstream } from './downstream.ts'
import { heldInputs } from './held-inputs.ts'
import { margins, type Margin } from './margins.ts'
import type { MarginsQuestion, SolveQuestion, SweepQuestion, WhatIfNews, WhatIfRequest } from './messages.ts'
import { MOST_WATCHED } from './probe.ts'
import { sitePressurePa } from './site.ts'
import { solve } from './solve.ts'
import { sweep, type SweepLimit, type SweepPoint } from './sweep.ts'

/** What-if work on a thread of its own, with a workbook that is handed over: one question, then the thread has served. */
addEventListener('message', ({ data: { question, port } }: MessageEvent<WhatIfRequest>) => {
  port.onmessage = ({ data: workbook }: MessageEvent<Workbook>) => {
    try {
      if (question.kind === 'solve') answerSolve(workbook, question)
      else if (question.kind === 'sweep') answerSweep(workbook, question)
      else answerMargins(workbook, question)
      tell({ kind: 'done' })
    } catch (fault) {
      tell({ kind: 'fault', words: fault instanceof Error ? fault.message : String(fault) })
    }
  }
})

function answerSolve(workbook: Workbook, { by, target, goal, within }: SolveQuestion): void {
  const solved = solve(workbook, {
    by, target, ...(within === undefined ? {} : { within }),
    goal: goal === undefined ? { kind: 'met' } : { kind: 'number', number: goal.number, ...(goal.unit === undefined ? {} : { unit: findUnit(goal.unit) }) },
  })
  tell({ kind: 'solved', solved })
}

function answerSweep(workbook: Workbook, { vary, watch, allChecks }: SweepQuestion): void {
  const places = vary.map(({ place }) => place)
  const known = new Set(watch.map(printCellPlace))
  const checks = allChecks ? checksDownstream(workbook, places).filter((place) => !known.has(printCellPlace(place)) && cellAtPlace(workbook, place)?.content != null) : []
  const all: CellPlace[] = [...watch, ...checks].slice(0, MOST_WATCHED)
  const ready = sweep(workbook, {
    vary: vary.map(({ place, spacing, unit }) => ({ place, spacing, ...(unit === undefined ? {} : { unit: findUnit(unit) }) })),
    watch: all,
  })
  let site: number | undefined
  const sitePa = (): number => (site ??= sitePressurePa(workbook))
  const axes = ready.axes.map((axis, at) => {
    const code = vary[at]?.unit
    const unit = code === undefined ? undefined : findUnit(code)
    return { ...axis, inCell: axis.numbers.map((number) => numberInCellUnit(workbook, axis.input, number, unit, sitePa)) }
  })
  tell({ kind: 'sweep begun', begun: { axes, watched: ready.watched, count: ready.count, held: heldInputs(workbook, all, places), unwatched: watch.length + checks.length - all.length } })
  const parts = inParts<SweepPoint, SweepLimit>((points, limits) => tell({ kind: 'sweep part', points, limits }))
  for (const event of ready.events()) {
    if (event.kind === 'point') parts.add(event)
    else parts.addBeside(event)
  }
  parts.end()
}

function answerMargins(workbook: Workbook, { target }: MarginsQuestion): void {
  const ready = margins(workbook, target)
  tell({ kind: 'margins begun', target: ready.target, base: ready.base, inputs: ready.inputs })
  const parts = inParts<Margin>((found) => tell({ kind: 'margins part', found }))
  const run = ready.run()
  let next = run.next()
  for (; next.done !== true; next = run.next()) parts.add(next.value)
  parts.end()
  tell({ kind: 'margins', margins: next.value })
}

const tell = (news: WhatIfNews): void => postMessage(news)

/** The screen takes what has been found so far, some ten times a second. */
const PART_MS = 100

function inParts<T, B = never>(give: (items: T[], beside: B[]) => void): { readonly add: (item: T) => void; readonly addBeside: (item: B) => void; readonly end: () => void } {
  let items: T[] = []
  let beside: B[] = []
  let last = performance.now()
  const giveAll = (): void => {
    if (items.length + beside.length > 0) give(items, beside)
    items = []
    beside = []
    last = performance.now()
  }
  return {
    add(item) {
      items.push(item)
      if (performance.now() - last > PART_MS) giveAll()
    },
    addBeside: (item) => void beside.push(item),
    end: giveAll,
  }
}
