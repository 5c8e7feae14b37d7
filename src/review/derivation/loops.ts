interface Linked {
  readonly key: string
  readonly uses: readonly string[]
}

/** The groups of two or more, each of which hangs on all others of its group (Tarjan 1972, without recursion: chains may be long). */
export function groupsThatHangOnThemselves(all: readonly Linked[]): readonly (readonly string[])[] {
  const byKey = new Map(all.map((one) => [one.key, one]))
  const order = new Map<string, number>()
  const lowest = new Map<string, number>()
  const open: string[] = []
  const isOpen = new Set<string>()
  const groups: string[][] = []
  for (const { key: start } of all) {
    if (order.has(start)) continue
    const path: { readonly key: string; next: number }[] = [{ key: start, next: 0 }]
    enter(start)
    while (path.length > 0) {
      const here = path.at(-1)
      if (here === undefined) break
      const to = byKey.get(here.key)?.uses[here.next++]
      if (to === undefined) {
        path.pop()
        leave(here.key)
        const before = path.at(-1)
        if (before) lower(before.key, lowest.get(here.key) ?? 0)
      } else if (!order.has(to) && byKey.has(to)) {
        enter(to)
        path.push({ key: to, next: 0 })
      } else if (isOpen.has(to)) lower(here.key, order.get(to) ?? 0)
    }
  }
  return groups

  function enter(key: string): void {
    order.set(key, order.size)
    lowest.set(key, order.get(key) ?? 0)
    open.push(key)
    isOpen.add(key)
  }

  function lower(key: string, to: number): void {
    lowest.set(key, Math.min(lowest.get(key) ?? to, to))
  }

  function leave(key: string): void {
    if (lowest.get(key) !== order.get(key)) return
    const group: string[] = []
    for (let member = open.pop(); member !== undefined; member = open.pop()) {
      isOpen.delete(member)
      group.push(member)
      if (member === key) break
    }
    if (group.length > 1) groups.push(group)
  }
}
