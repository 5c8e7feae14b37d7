import { areaOf, parseReference, type Area } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import type { FindingKind, Found } from '../finding.ts'

/** Names that stand for other cells than in the template: all formulas that read them take another value, and none of them looks different. */
export const templateNames: FindingKind = {
  kind: 'template-names',
  heading: 'Names that stand for other cells than the template’s',
  about: 'A defined name that came with the template and was pointed elsewhere. What only follows inserted rows or renamed sheets is no change.',
  * find({ workbook, template }) {
    for (const [name, expected] of template?.names ?? []) {
      const [, now] = [...workbook.names].find(([one]) => foldCase(one) === foldCase(name)) ?? []
      const [is, was] = [placeOf(now), placeOf(expected)]
      if (now === undefined || was === undefined || expected.includes('#REF!') || (is !== undefined && sameCells(is, was))) continue
      const found: Found = {
        severity: 'warning', sheet: (is ?? was).sheet, area: (is ?? was).area,
        reason: `The name ${name} stands for ${now}; in the template “${template?.title ?? ''}” it stands for ${expected}.`,
        key: `${name}: ${is === undefined ? now : movedBy(is, was)}`, causes: [{ sheet: was.sheet, row: was.area.top, column: was.area.left }],
        mend: { words: 'Point it back', edits: [{ kind: 'name', name, refersTo: expected }] },
      }
      yield found
    }
  },
}

interface Named {
  readonly sheet: string
  readonly area: Area
}

function placeOf(refersTo: string | undefined): Named | undefined {
  const reference = refersTo === undefined ? undefined : parseReference(refersTo)
  return reference === undefined || reference.sheet === null ? undefined : { sheet: reference.sheet, area: areaOf(reference) }
}

const sameCells = (one: Named, other: Named): boolean => foldCase(one.sheet) === foldCase(other.sheet) && movedBy(one, other) === '0, 0, 0, 0'

const movedBy = ({ area: one }: Named, { area: other }: Named): string => [one.top - other.top, one.left - other.left, one.bottom - other.bottom, one.right - other.right].join(', ')
