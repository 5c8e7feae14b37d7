import { createRoot } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { emptyWorkbook, type Workbook } from '../../src/workbook/document.ts'
import type { Edit } from '../../src/workbook/edits.ts'
import { createWorkbookState, type WorkbookState } from '../../src/app/state/workbook-state.ts'

const title = (text: string) => (): Edit[] => [{ kind: 'title', title: text }]

function setUp(): { readonly state: WorkbookState; readonly heard: (Workbook | readonly Edit[])[] } {
  const heard: (Workbook | readonly Edit[])[] = []
  const state = createRoot(() => createWorkbookState([{ opened: (workbook) => heard.push(workbook), edited: (edits) => heard.push(edits) }]))
  return { state, heard }
}

describe('the document on the screen', () => {
  it('tells its followers of every change, its undoing and its redoing, in order', () => {
    const { state, heard } = setUp()
    state.change('Title', title('A'))
    state.undo()
    state.redo()
    expect(heard).toEqual([[{ kind: 'title', title: 'A' }], [{ kind: 'title', title: 'Untitled' }], [{ kind: 'title', title: 'A' }]])
    expect(state.undoable()).toBe('Title')
    expect(state.redoable()).toBeUndefined()
  })

  it('gives the message of what is wrong, and stays as it was', () => {
    const { state, heard } = setUp()
    const before = state.workbook()
    expect(state.change('Entry', () => [{ kind: 'cells', sheet: 'Nowhere', cells: [] }])).toContain('there is no sheet "Nowhere"')
    expect(state.workbook()).toBe(before)
    expect(heard).toEqual([])
  })

  it('is unsaved while it differs from what was opened or saved, and not after undoing back to it', () => {
    const { state } = setUp()
    state.replace(emptyWorkbook('Plant'), true)
    expect([state.unsaved(), state.inFile()]).toEqual([false, true])
    state.change('Title', title('A'))
    expect(state.unsaved()).toBe(true)
    state.undo()
    expect(state.unsaved()).toBe(false)
    state.redo()
    state.markSaved(state.point(), new Date(0), state.workbook())
    expect(state.unsaved()).toBe(false)
    state.undo()
    expect(state.unsaved()).toBe(true)
  })

  it('keeps the workbook as it was opened, then as it was saved last', () => {
    const { state } = setUp()
    const opened = emptyWorkbook('Plant')
    state.replace(opened, true)
    state.change('Title', title('A'))
    expect(state.asSaved()).toEqual({ workbook: opened, at: undefined })
    const saved = state.workbook()
    // What is changed while the file is being written is not in it.
    const point = state.point()
    state.change('Title', title('B'))
    state.markSaved(point, new Date(0), saved)
    expect(state.asSaved()).toEqual({ workbook: saved, at: new Date(0) })
    state.follow(title('C')(), { inFile: true, changed: true, savedAt: 5 })
    expect(state.asSaved().workbook).toBe(saved)
    state.follow(title('D')(), { inFile: true, changed: false, savedAt: 5 })
    expect(state.asSaved()).toEqual({ workbook: state.workbook(), at: new Date(5) })
  })

  it('cannot undo into the workbook before', () => {
    const { state } = setUp()
    state.change('Title', title('A'))
    state.replace(emptyWorkbook('Plant'), false)
    expect([state.undoable(), state.inFile()]).toEqual([undefined, false])
  })

  it('takes no change and no undoing while another tab writes, and says why', () => {
    let reading: string | undefined
    const state = createRoot(() => createWorkbookState([], () => reading))
    state.change('Title', title('A'))
    reading = 'another tab writes'
    expect(state.change('Title', title('B'))).toBe('another tab writes')
    expect([state.undo(), state.workbook().title]).toEqual([[], 'A'])
  })

  it('follows what another tab has changed and saved, which is not undone here', () => {
    const { state, heard } = setUp()
    state.change('Title', title('A'))
    expect(state.follow(title('B')(), { inFile: true, changed: true, savedAt: 5 })).toBeUndefined()
    expect([state.workbook().title, state.undoable(), heard.at(-1)]).toEqual(['B', undefined, title('B')()])
    expect(state.fileState()).toEqual({ inFile: true, changed: true, savedAt: 5 })
    expect(state.follow([], { inFile: true, changed: false, savedAt: 6 })).toBeUndefined()
    expect(state.fileState()).toEqual({ inFile: true, changed: false, savedAt: 6 })
    expect(state.follow([{ kind: 'removeSheet', sheet: 'Nowhere' }], state.fileState())).toContain('there is no sheet "Nowhere"')
  })
})
