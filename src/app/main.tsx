import { render } from 'solid-js/web'
import { startCalculation } from './calculation/client.ts'
import { demoWorkbook } from './files/library.ts'
import { emptyWorkbook } from '../workbook/document.ts'
import { Screen } from './Screen.tsx'
import { createSession, SessionProvider } from './state/session.ts'
import './tokens.css'
import './page.css'
import './marks.css'

const place = document.getElementById('lowside')
if (!place) throw new Error('the page has no place for the screen')

render(() => {
  const session = createSession(startCalculation())
  demoWorkbook().then(
    (demo) => session.open(demo ?? emptyWorkbook(), false),
    (problem: unknown) => session.setNotice({ tone: 'problem', text: String(problem) }),
  )
  return <SessionProvider value={session}><Screen /></SessionProvider>
}, place)
