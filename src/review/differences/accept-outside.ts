import { casesOf, type Case, type Cases, type CaseValue } from '../../workbook/cases.ts'
import { samePlace } from '../../workbook/cell-place.ts'
import { foldCase } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import type { Figure } from '../../workbook/figure.ts'
import { asideThere, byName, comparedBefore } from './case-differences.ts'
import type { Found } from './found.ts'
import { figurePairs, figureThere } from './outside-differences.ts'
import type { Sides } from './sides.ts'

/** Names stand for what they stood for, with references as they are now. */
export function acceptNames({ before, now, way }: Sides, chosen: readonly Found[]): Edit[] {
  return chosen.flatMap(({ subject }): Edit[] => {
    if (subject.of !== 'name') return []
    const is = [...now.workbook.names.keys()].filter((name) => foldCase(name) === subject.name)
    const was = [...before.workbook.names].find(([name]) => foldCase(name) === subject.name)
    return [
      ...is.filter((name) => name !== was?.[0]).map((name): Edit => ({ kind: 'name', name, refersTo: null })),
      ...(was ? [{ kind: 'name', name: was[0], refersTo: way.formula(was[1], null) } as const] : []),
    ]
  })
}

/** Title, purpose, and who is named on the report. */
export function acceptReport({ before: { workbook: before }, now: { workbook: now } }: Sides, chosen: readonly Found[]): Edit[] {
  const of = new Set(chosen.map(({ subject }) => subject.of))
  // Where neither names anyone nothing differs, so that one of them has settings.
  const is = now.report ?? (before.report && { ...before.report, preparedBy: '', checkedBy: '' })
  const named = is && { ...is, ...(of.has('prepared by') ? { preparedBy: before.report?.preparedBy ?? '' } : {}), ...(of.has('checked by') ? { checkedBy: before.report?.checkedBy ?? '' } : {}) }
  return [
    ...(of.has('title') ? [{ kind: 'title', title: before.title } as const] : []),
    ...(of.has('purpose') ? [{ kind: 'purpose', purpose: before.purpose } as const] : []),
    ...(named && (of.has('prepared by') || of.has('checked by')) ? [{ kind: 'report', report: named } as const] : []),
  ]
}

/** Cases, the base standing in the cells. */
export function acceptCases(sides: Sides, chosen: readonly Found[]): Edit[] {
  const [old, current] = [casesOf(sides.before.workbook), casesOf(sides.now.workbook)]
  let cases: Cases = current
  const was = byName(old.list)
  for (const { subject, before, now } of chosen) {
    if (subject.of === 'compared results') {
      cases = { ...cases, compared: [...comparedBefore(sides), ...cases.compared.filter((place) => sides.back.place(place) === undefined)] }
    } else if (subject.of === 'order of cases') {
      const sorted = [...was.keys()].flatMap((key) => cases.list.find(({ name }) => foldCase(name) === key) ?? [])
      let next = 0
      cases = { ...cases, list: cases.list.map((one) => (sorted.includes(one) ? (sorted[next++] ?? one) : one)) }
    } else if (subject.of === 'case') {
      const one = was.get(subject.name)
      if (subject.part === 'all') cases = { ...cases, list: one ? inPlace(cases.list, { ...one, aside: asideThere(sides, one) }, old.list.indexOf(one)) : cases.list.filter(({ name }) => foldCase(name) !== subject.name) }
      else if (one && subject.part === 'note') cases = changed(cases, subject.name, (is) => withNote(is, one))
      else if (one && now) {
        const value = before && one.aside.find((other) => samePlace(other, before))
        const there: readonly CaseValue[] = value ? asideThere(sides, { ...one, aside: [value] }) : []
        cases = changed(cases, subject.name, (is) => ({ ...is, aside: [...is.aside.filter((other) => !samePlace(other, now)), ...there] }))
      }
    }
  }
  return cases === current ? [] : [{ kind: 'cases', cases }]
}

const inPlace = (list: readonly Case[], one: Case, at: number): Case[] => list.toSpliced(Math.min(at, list.length), 0, one)

const changed = (cases: Cases, name: string, change: (one: Case) => Case): Cases => ({ ...cases, list: cases.list.map((one) => (foldCase(one.name) === name ? change(one) : one)) })

const withNote = ({ aside }: Case, { name, note }: Case): Case => ({ name, aside, ...(note === undefined ? {} : { note }) })

export function acceptTolerances({ before, now }: Sides, chosen: readonly Found[]): Edit[] {
  const places = chosen.flatMap((one) => (one.before && one.now ? [{ before: one.before, now: one.now }] : []))
  const left = (now.workbook.tolerances ?? []).filter((one) => !places.some((place) => samePlace(place.now, one.place)))
  const back = places.flatMap((at) => {
    const was = before.workbook.tolerances?.find(({ place }) => samePlace(place, at.before))
    return was ? [{ place: at.now, tolerance: was.tolerance }] : []
  })
  return [{ kind: 'tolerances', tolerances: [...left, ...back] }]
}

/** All figures that are chosen at once, since their positions change with each other. */
export function acceptFigures(sides: Sides, chosen: readonly Found[]): Edit[] {
  const old = sides.before.workbook.figures
  const partner = new Map(figurePairs(sides).pairs.map(({ before, now }) => [now, before]))
  const subjects = chosen.map(({ subject }) => subject)
  const replaced = new Map<number, number | undefined>()
  const back: number[] = []
  for (const subject of subjects) {
    if (subject.of !== 'figure') continue
    if (subject.now !== undefined) replaced.set(subject.now, subject.before)
    else if (subject.before !== undefined) back.push(subject.before)
  }
  const list = sides.now.workbook.figures.flatMap((figure, now): { readonly figure: Figure; readonly before: number | undefined }[] => {
    if (!replaced.has(now)) return [{ figure, before: partner.get(now) }]
    const before = replaced.get(now)
    const one = before === undefined ? undefined : old[before]
    return one ? [{ figure: figureThere(sides, one), before }] : []
  })
  for (const before of back.toSorted((one, other) => one - other)) {
    const one = old[before]
    const at = list.findIndex((other) => other.before !== undefined && other.before > before)
    if (one) list.splice(at < 0 ? list.length : at, 0, { figure: figureThere(sides, one), before })
  }
  if (subjects.some(({ of }) => of === 'order of figures')) {
    const sorted = list.filter(({ before }) => before !== undefined).toSorted((one, other) => (one.before ?? 0) - (other.before ?? 0))
    let next = 0
    for (const [at, one] of list.entries()) if (one.before !== undefined) list[at] = sorted[next++] ?? one
  }
  return [{ kind: 'figures', figures: list.map(({ figure }) => figure) }]
}
