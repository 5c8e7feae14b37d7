import { createSignal, type Accessor } from 'solid-js'

/** Rows of a list that are put on the screen at a time: thousands would hold it up. */
const AT_ONCE = 100

/** The first of a list, and more of it on demand. */
export function createCapped<Item>(all: Accessor<readonly Item[]>): { readonly shown: Accessor<readonly Item[]>; readonly rest: Accessor<number>; more(): void } {
  const [count, setCount] = createSignal(AT_ONCE)
  return {
    shown: () => all().slice(0, count()),
    rest: () => Math.max(0, all().length - count()),
    more: () => void setCount((before) => before + AT_ONCE),
  }
}
