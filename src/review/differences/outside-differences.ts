import { foldCase, type Workbook } from '../../workbook/document.ts'
import { optionOf, type Figure } from '../../workbook/figure.ts'
import { figureKind } from '../../workbook/figure-kinds.ts'
import type { Found } from './found.ts'
import { losesReferences, LOST } from './lost-references.ts'
import type { Sides } from './sides.ts'
import { EMPTY, GONE, NO_SUCH } from './words.ts'

/** Title, purpose, and who is named on the report. */
export function titleDifferences({ before: { workbook: before }, now: { workbook: now } }: Sides): Found[] {
  const found = (of: 'title' | 'purpose' | 'prepared by' | 'checked by', was: string, is: string): Found[] =>
    was === is ? [] : [{ kind: 'title', sheet: undefined, label: of, was: was || EMPTY, is: is || EMPTY, accept: { words: was === '' ? 'Leaves it empty.' : `Writes "${was}" again.` }, subject: { of } }]
  return [
    ...found('title', before.title, now.title),
    ...found('purpose', before.purpose, now.purpose),
    ...found('prepared by', before.report?.preparedBy ?? '', now.report?.preparedBy ?? ''),
    ...found('checked by', before.report?.checkedBy ?? '', now.report?.checkedBy ?? ''),
  ]
}

/** Defined names, whatever their capitals. */
export function nameDifferences({ before, now, way, formulas }: Sides): Found[] {
  const [old, current] = [byName(before.workbook), byName(now.workbook)]
  return [...new Set([...current.keys(), ...old.keys()])].flatMap((key): Found[] => {
    const [was, is] = [old.get(key), current.get(key)]
    const base = { kind: 'name', sheet: undefined, label: (is ?? was)?.name, subject: { of: 'name', name: key } } as const
    if (was === undefined) return is === undefined ? [] : [{ ...base, was: NO_SUCH, is: is.refersTo, accept: { words: 'Takes the name away; formulas that use it show that it is missing.' } }]
    const there = way.formula(was.refersTo, null)
    const accept = losesReferences(was.refersTo, there) ? { refused: LOST } : { words: is === undefined ? 'Puts the name back.' : `Lets the name stand for ${there} again.` }
    if (is === undefined) return [{ ...base, was: there, is: GONE, accept }]
    if (was.name === is.name && formulas.same(was.refersTo, null, is.refersTo, null)) return []
    const spelled = was.name === is.name ? { was: there, is: is.refersTo } : { was: `${was.name}: ${there}`, is: `${is.name}: ${is.refersTo}` }
    return [{ ...base, ...spelled, accept }]
  })
}

interface Named {
  readonly name: string
  readonly refersTo: string
}

const byName = ({ names }: Workbook): ReadonlyMap<string, Named> => new Map([...names].map(([name, refersTo]) => [foldCase(name), { name, refersTo }]))

/** Which figure is which, by what it shows, then by kind and title, then by kind; their positions in the two lists. */
export function figurePairs(sides: Sides): { readonly pairs: readonly { readonly before: number; readonly now: number }[]; readonly gone: readonly number[]; readonly added: readonly number[] } {
  const [old, current] = [sides.before.workbook.figures, sides.now.workbook.figures]
  const partner = new Map<number, number>()
  const taken = new Set<number>()
  const likenesses: readonly ((one: Figure, other: Figure) => boolean)[] = [
    (one, other) => sameFigure(sides, one, other),
    (one, other) => one.kind === other.kind && one.title === other.title,
    (one, other) => one.kind === other.kind,
  ]
  for (const isAlike of likenesses) {
    for (const [at, figure] of current.entries()) {
      if (partner.has(at)) continue
      const before = old.findIndex((one, index) => !taken.has(index) && isAlike(one, figure))
      if (before < 0) continue
      partner.set(at, before)
      taken.add(before)
    }
  }
  return {
    pairs: current.flatMap((_, now) => { const before = partner.get(now); return before === undefined ? [] : [{ before, now }] }),
    gone: [...old.keys()].filter((index) => !taken.has(index)),
    added: [...current.keys()].filter((index) => !partner.has(index)),
  }
}

export function figureDifferences(sides: Sides): Found[] {
  const [old, current] = [sides.before.workbook.figures, sides.now.workbook.figures]
  const { pairs, gone, added } = figurePairs(sides)
  const base = { kind: 'figure', sheet: undefined } as const
  const order = pairs.map(({ before }) => before)
  return [
    ...pairs.flatMap(({ before, now }): Found[] => {
      const [one, other] = [old[before], current[now]]
      if (!one || !other || sameFigure(sides, one, other)) return []
      const there = figureThere(sides, one)
      return [{ ...base, label: other.title || other.kind, ...figureWords(there, other), accept: { words: 'Puts the figure of the other workbook in its place.' }, subject: { of: 'figure', before, now } }]
    }),
    ...gone.flatMap((before): Found[] => { const one = old[before]; return one ? [{ ...base, label: one.title || one.kind, was: `a ${one.kind} figure`, is: GONE, accept: { words: 'Puts the figure back.' }, subject: { of: 'figure', before } }] : [] }),
    ...added.flatMap((now): Found[] => { const one = current[now]; return one ? [{ ...base, label: one.title || one.kind, was: NO_SUCH, is: `a ${one.kind} figure`, accept: { words: 'Takes the figure away.' }, subject: { of: 'figure', now } }] : [] }),
    ...(order.every((at, index) => index === 0 || at > (order[index - 1] ?? 0)) ? [] : [{
      ...base, label: 'order of the figures', was: order.toSorted((one, other) => one - other).map((at) => old[at]?.title).join(', '), is: pairs.map(({ now }) => current[now]?.title).join(', '),
      accept: { words: 'Puts the figures in the order of the other workbook.' }, subject: { of: 'order of figures' },
    } as const]),
  ]
}

/** A figure of the workbook before, with its references as they are now. */
export function figureThere({ way, layout }: Sides, figure: Figure): Figure {
  const sheet = figure.sheet === undefined ? undefined : (layout.pairs.find(({ before }) => foldCase(before) === foldCase(figure.sheet ?? ''))?.now ?? figure.sheet)
  return { ...figure, ...(sheet === undefined ? {} : { sheet }), bindings: Object.fromEntries(Object.entries(figure.bindings).map(([name, reference]) => [name, way.formula(reference, null)])) }
}

function sameFigure(sides: Sides, before: Figure, now: Figure): boolean {
  const [one, other] = [figureThere(sides, before), now]
  const names = [...new Set([...Object.keys(one.bindings), ...Object.keys(other.bindings)])]
  return one.kind === other.kind && one.title === other.title && foldCase(one.sheet ?? '') === foldCase(other.sheet ?? '') && (one.sheet === undefined) === (other.sheet === undefined) &&
    Object.keys(figureKind(now.kind).options).every((name) => optionOf(one, name) === optionOf(other, name)) &&
    names.every((name) => { const [a, b] = [before.bindings[name], now.bindings[name]]; return a !== undefined && b !== undefined && sides.formulas.same(a, null, b, null) })
}

/** The parts in which two figures differ. */
function figureWords(before: Figure, now: Figure): { readonly was: string; readonly is: string } {
  const parts: (readonly [what: string, was: string, is: string])[] = [
    ['title', before.title, now.title], ['kind', before.kind, now.kind], ['sheet', before.sheet ?? '', now.sheet ?? ''],
    ...Object.keys(figureKind(now.kind).options).map((name) => [name, before.kind === now.kind ? optionOf(before, name) : '', optionOf(now, name)] as const),
    ...[...new Set([...Object.keys(before.bindings), ...Object.keys(now.bindings)])].map((name) => [name, before.bindings[name] ?? '', now.bindings[name] ?? ''] as const),
  ]
  const differing = parts.filter(([, was, is]) => was !== is)
  return { was: differing.map(([what, was]) => `${what}: ${was || 'none'}`).join('; '), is: differing.map(([what, , is]) => `${what}: ${is || 'none'}`).join('; ') }
}
