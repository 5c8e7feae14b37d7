import { DIFFERENCE_KINDS, type Difference, type DifferenceKind } from './difference.ts'

/** How many there are of each kind that there is, in the order of the kinds. */
export function kindCounts(differences: readonly Pick<Difference, 'kind'>[]): readonly { readonly kind: DifferenceKind; readonly count: number }[] {
  const counts = new Map<DifferenceKind, number>()
  for (const { kind } of differences) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return DIFFERENCE_KINDS.flatMap((kind) => {
    const count = counts.get(kind)
    return count === undefined ? [] : [{ kind, count }]
  })
}
