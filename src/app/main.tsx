import { render } from 'solid-js/web'
import { createCalculation } from './calculation/calculation.ts'
import { startThread } from './calculation/client.ts'
import { openOwn } from './files/file-actions.ts'
import { demo } from './files/library.ts'
import { emptyWorkbook } from '../workbook/document.ts'
import { Screen } from './Screen.tsx'
import { createSession, SessionProvider, type Session } from './state/session.ts'
import { openIndexedShelf } from '../storage/indexed-shelf.ts'
import './tokens.css'
import './page.css'
import './marks.css'
import './strong-contrast.css'

const place = document.getElementById('lowside')
if (!place) throw new Error('the page has no place for the screen')

render(() => {
  const session = createSession(createCalculation(startThread), openIndexedShelf)
  openFirst(session).catch((problem: unknown) => session.setNotice({ tone: 'problem', text: String(problem) }))
  return <SessionProvider value={session}><Screen /></SessionProvider>
}, place)

/** The workbook worked on last; the demo where there is none yet; an empty one where that cannot be had. */
async function openFirst(session: Session): Promise<void> {
  const { isOpen, said } = await session.keeping.openLast()
  // Whatever the user has chosen meanwhile goes before.
  const isStillFirst = async (): Promise<boolean> => {
    await session.service.nothingLoading()
    return session.opened() === 0
  }
  if (isOpen || !(await isStillFirst())) return
  if (!demo || !(await openOwn(session, demo, isStillFirst))) {
    if (!(await isStillFirst())) return
    session.open(emptyWorkbook(), false)
  }
  if (said) session.setNotice(said)
}
