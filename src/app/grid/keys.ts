import type { FillWay } from '../../workbook/fill.ts'
import type { LineAxis } from '../../workbook/line-edits.ts'
import type { LineDeed } from './line-actions.ts'

interface Extending {
  /** Stretches the selection instead of moving it. */
  readonly extend: boolean
}
type Way = -1 | 0 | 1

/** What keys do in the grid while nothing is being typed, and what each needs to know. */
export interface GridActions {
  readonly step: Extending & { readonly rows: number; readonly columns: number }
  readonly leap: Extending & { readonly rows: Way; readonly columns: Way }
  readonly page: Extending & { readonly pages: -1 | 1 }
  readonly rowStart: Extending
  readonly rowEnd: Extending
  readonly sheetStart: Extending
  readonly sheetEnd: Extending
  readonly selectAll: object
  readonly edit: object
  readonly type: { readonly text: string }
  readonly clear: object
  readonly undo: object
  readonly redo: object
  readonly fill: { readonly way: FillWay }
  readonly places: { readonly by: 1 | -1 }
  readonly pickUnit: object
  readonly format: object
  readonly selectLines: { readonly axis: LineAxis }
  readonly lines: { readonly axis: LineAxis; readonly deed: LineDeed }
  readonly menu: object
  readonly widen: { readonly way: 1 | -1 }
  readonly fitColumns: object
  readonly check: object
  readonly keep: object
  readonly leave: object
}

export type GridAction = { readonly [Does in keyof GridActions]: { readonly does: Does } & GridActions[Does] }[keyof GridActions]

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey' | 'getModifierState'>

/** Undefined: not ours, the browser's. Keys are those of the ARIA grid pattern and of the operating system. */
export function gridAction(pressed: Pressed): GridAction | undefined {
  const { key, ctrlKey, metaKey, shiftKey: extend, altKey } = pressed
  // The third level of a keyboard is Ctrl with Alt on some systems.
  if (pressed.getModifierState('AltGraph')) return typed(key)
  if (altKey) return ctrlKey || metaKey ? undefined : WITH_ALT[extend ? `Shift+${key}` : key]
  const command = ctrlKey || metaKey
  const arrow = ARROWS[key]
  if (arrow) return { does: command ? 'leap' : 'step', rows: arrow[0], columns: arrow[1], extend }
  if (command) return WITH_COMMAND[extend ? `Shift+${key.toLowerCase()}` : key.toLowerCase()]?.(extend)
  if (extend && WITH_SHIFT[key]) return WITH_SHIFT[key]
  const plain = PLAIN[key]
  if (plain) return plain(extend)
  return typed(key)
}

const typed = (key: string): GridAction | undefined => ([...key].length === 1 ? { does: 'type', text: key } : undefined)

const ARROWS: Readonly<Record<string, readonly [rows: Way, columns: Way]>> = {
  ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1],
}

const WITH_ALT: Readonly<Record<string, GridAction>> = {
  'ArrowDown': { does: 'pickUnit' },
  'ArrowUp': { does: 'fitColumns' },
  '.': { does: 'widen', way: 1 },
  ',': { does: 'widen', way: -1 },
  'Enter': { does: 'format' },
  'End': { does: 'check' },
  'Shift+ArrowDown': { does: 'fill', way: 'down' },
  'Shift+ArrowRight': { does: 'fill', way: 'across' },
  'Shift+ ': { does: 'keep' },
  'Insert': { does: 'lines', axis: 'rows', deed: 'insertBefore' },
  'Delete': { does: 'lines', axis: 'rows', deed: 'delete' },
  'PageUp': { does: 'lines', axis: 'rows', deed: 'moveBack' },
  'PageDown': { does: 'lines', axis: 'rows', deed: 'moveOn' },
  'Shift+Insert': { does: 'lines', axis: 'columns', deed: 'insertBefore' },
  'Shift+Delete': { does: 'lines', axis: 'columns', deed: 'delete' },
  'Shift+PageUp': { does: 'lines', axis: 'columns', deed: 'moveBack' },
  'Shift+PageDown': { does: 'lines', axis: 'columns', deed: 'moveOn' },
}

const WITH_SHIFT: Readonly<Record<string, GridAction>> = {
  ' ': { does: 'selectLines', axis: 'rows' },
  'F10': { does: 'menu' },
}

type MakeAction = (extend: boolean) => GridAction

/** Shift turns Enter and Tab round; it stretches the selection for all other moves. */
const back = (shift: boolean): number => (shift ? -1 : 1)

const PLAIN: Readonly<Record<string, MakeAction>> = {
  Enter: (shift) => ({ does: 'step', rows: back(shift), columns: 0, extend: false }),
  Tab: (shift) => ({ does: 'step', rows: 0, columns: back(shift), extend: false }),
  Home: (extend) => ({ does: 'rowStart', extend }),
  End: (extend) => ({ does: 'rowEnd', extend }),
  PageUp: (extend) => ({ does: 'page', pages: -1, extend }),
  PageDown: (extend) => ({ does: 'page', pages: 1, extend }),
  F2: () => ({ does: 'edit' }),
  ContextMenu: () => ({ does: 'menu' }),
  Escape: () => ({ does: 'leave' }),
  Delete: () => ({ does: 'clear' }),
  Backspace: () => ({ does: 'clear' }),
}

const WITH_COMMAND: Readonly<Record<string, MakeAction>> = {
  'home': () => ({ does: 'sheetStart', extend: false }),
  'end': () => ({ does: 'sheetEnd', extend: false }),
  'Shift+home': () => ({ does: 'sheetStart', extend: true }),
  'Shift+end': () => ({ does: 'sheetEnd', extend: true }),
  'a': () => ({ does: 'selectAll' }),
  ' ': () => ({ does: 'selectLines', axis: 'columns' }),
  'z': () => ({ does: 'undo' }),
  'Shift+z': () => ({ does: 'redo' }),
  'y': () => ({ does: 'redo' }),
  '.': () => ({ does: 'places', by: 1 }),
  ',': () => ({ does: 'places', by: -1 }),
}
