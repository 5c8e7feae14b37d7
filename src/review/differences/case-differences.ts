import { BASE, casesOf, type Case, type CaseValue } from '../../workbook/cases.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import { foldCase, isFormula } from '../../workbook/document.ts'
import { sameContent } from './cell-differences.ts'
import type { Found } from './found.ts'
import { losesReferences, LOST } from './lost-references.ts'
import type { Side, Sides } from './sides.ts'
import { contentWords, counted, GONE, listed, NO_SUCH } from './words.ts'

/** Which case is current in each, as opened: the sides themselves show the base. */
export interface CurrentCases {
  readonly before: string
  readonly now: string
}

/**
 * Cases, whatever the capitals of their names: which there are, what each holds in cells that both workbooks have, which one is current, what is compared. Values in
 * rows that came or went go with these.
 */
export function* caseDifferences(sides: Sides, current: CurrentCases): Generator<Found> {
  const [before, now] = [casesOf(sides.before.workbook), casesOf(sides.now.workbook)]
  const [old, later] = [byName(before.list), byName(now.list)]
  if (foldCase(current.before) !== foldCase(current.now)) {
    yield { kind: 'case', sheet: undefined, label: 'current case', was: current.before, is: current.now, accept: currentAccepted(sides, current.before), subject: { of: 'current case' } }
  }
  for (const [key, one] of later) {
    const was = old.get(key)
    if (was) yield* withinCase(sides, key, was, one)
    else yield { kind: 'case', sheet: undefined, label: one.name, was: NO_SUCH, is: caseWords(sides.now, one), accept: { words: 'Takes the case away.' }, subject: { of: 'case', name: key, part: 'all' } }
  }
  for (const [key, one] of old) {
    if (!later.has(key)) yield { kind: 'case', sheet: undefined, label: one.name, was: caseWords(sides.before, one), is: GONE, accept: { words: 'Puts the case back with its values.' }, subject: { of: 'case', name: key, part: 'all' } }
  }
  const common = [...later.keys()].filter((key) => old.has(key))
  const order = [...old.keys()].filter((key) => later.has(key))
  if (common.some((key, index) => key !== order[index])) {
    yield { kind: 'case', sheet: undefined, label: 'order of the cases', was: order.map((key) => later.get(key)?.name).join(', '), is: common.map((key) => later.get(key)?.name).join(', '), accept: { words: 'Puts the cases in the order of the other workbook.' }, subject: { of: 'order of cases' } }
  }
  const [wasCompared, isCompared] = [comparedBefore(sides), now.compared.filter((place) => sides.back.place(place) !== undefined)].map((places) => places.map(printCellPlace))
  if (wasCompared?.join() !== isCompared?.join()) {
    yield { kind: 'case', sheet: undefined, label: 'results that are compared', was: listed(wasCompared ?? []) || 'none', is: listed(isCompared ?? []) || 'none', accept: { words: 'Compares what the other workbook compares.' }, subject: { of: 'compared results' } }
  }
}

/** What is compared in the workbook before, as far as it is there now. */
export const comparedBefore = ({ before, way }: Sides): CellPlace[] => casesOf(before.workbook).compared.flatMap((place) => way.place(place) ?? [])

/** What a case of the workbook before holds, at its places now; where these are gone, nothing. */
export const asideThere = ({ way }: Sides, { aside }: Case): CaseValue[] => aside.flatMap((value): CaseValue[] => {
  const place = way.place(value)
  return place ? [{ ...value, ...place, content: isFormula(value.content) ? way.formula(value.content, value.sheet) : value.content }] : []
})

export const byName = (list: readonly Case[]): ReadonlyMap<string, Case> => new Map(list.map((one) => [foldCase(one.name), one]))

function* withinCase(sides: Sides, key: string, before: Case, now: Case): Generator<Found> {
  const words = (one: Case, other: Case): string => [...(one.name === other.name ? [] : [one.name]), one.note ?? 'no note'].join(': ')
  if (before.name !== now.name || (before.note ?? '') !== (now.note ?? '')) {
    yield { kind: 'case', sheet: undefined, label: `${now.name}: note`, was: words(before, now), is: words(now, before), accept: { words: 'Puts the note of the other workbook in its place.' }, subject: { of: 'case', name: key, part: 'note' } }
  }
  const held = new Map(now.aside.map((value) => [printCellPlace(value), value]))
  for (const value of before.aside) {
    const place = sides.way.place(value)
    if (!place) continue
    const is = held.get(printCellPlace(place))
    held.delete(printCellPlace(place))
    if (!is || !sameContent(sides, { before: value, now: place }, value.content, is.content)) yield valueDifference(sides, { key, name: now.name }, place, value, is)
  }
  for (const is of held.values()) if (sides.back.place(is)) yield valueDifference(sides, { key, name: now.name }, is, undefined, is)
}

function valueDifference(sides: Sides, { key, name }: { readonly key: string; readonly name: string }, at: CellPlace, was: CaseValue | undefined, is: CaseValue | undefined): Found {
  const now = { sheet: at.sheet, row: at.row, column: at.column }
  const label = sides.now.label(at)
  const before = sides.back.place(now)
  const there = was && isFormula(was.content) ? sides.way.formula(was.content, was.sheet) : was?.content
  const isLost = typeof there === 'string' && was !== undefined && losesReferences(String(was.content), there)
  const wasWords = was === undefined || there === undefined ? AS_BASE : contentWords(isLost ? was.content : there, sides.before.unitAt(was))
  return {
    kind: 'case', sheet: at.sheet, now, ...(before ? { before } : {}), label: label === undefined ? name : `${name}: ${label}`,
    was: wasWords, is: is === undefined ? AS_BASE : contentWords(is.content, sides.now.unitAt(is)),
    accept: isLost ? { refused: LOST } : { words: was === undefined ? 'Lets the case have what the base has.' : `Puts ${wasWords} into the case.` }, subject: { of: 'case', name: key, part: 'value' },
  }
}

const AS_BASE = 'as in the base'

function caseWords(side: Side, { aside, note }: Case): string {
  const values = aside.map((value) => [side.label(value), contentWords(value.content, side.unitAt(value))].filter((one) => one !== undefined).join(' '))
  return `${counted(aside.length, 'value')}${values.length === 0 ? '' : `: ${listed(values)}`}${note === undefined ? '' : `; note: ${note}`}`
}

function currentAccepted({ now }: Sides, name: string): Found['accept'] {
  const isThere = foldCase(name) === foldCase(BASE) || byName(casesOf(now.workbook).list).has(foldCase(name))
  return isThere ? { words: `Makes ${name} current.` } : { refused: `There is no case ${name} in this workbook: put it back first.` }
}
