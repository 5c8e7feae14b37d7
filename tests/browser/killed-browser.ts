import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { chromium, type Page } from 'playwright-core'
import { browserCommand } from './chromium.ts'

export interface KillableBrowser {
  readonly page: Page
  /** Ends all its processes at once, as a power cut would end them. */
  kill(): Promise<void>
}

/** A browser with a profile that stays, as a process of the test's own. */
export async function startKillable(profile: string): Promise<KillableBrowser> {
  const { executablePath, args } = await browserCommand()
  const headless = args.some((one) => one.startsWith('--headless')) ? [] : ['--headless']
  // Of its own process group, so that its helpers die with it.
  const child = spawn(executablePath, [...args, ...headless, `--user-data-dir=${profile}`, '--remote-debugging-port=0', '--window-size=1280,2200', 'about:blank'], {
    detached: true, stdio: ['ignore', 'ignore', 'pipe'],
  })
  const browser = await chromium.connectOverCDP(await debuggingUrl(child))
  const context = browser.contexts()[0]
  if (!context) throw new Error('the browser has no window')
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    async kill() {
      if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return
      const ended = once(child, 'exit')
      process.kill(-child.pid, 'SIGKILL')
      await ended
    },
  }
}

function debuggingUrl(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = ''
    child.stderr?.on('data', (part: Buffer) => {
      said += part.toString()
      const url = /ws:\/\/\S+/.exec(said)?.[0]
      if (url !== undefined) resolve(url)
    })
    child.once('exit', () => reject(new Error(`the browser ended at its start: ${said}`)))
    child.once('error', reject)
  })
}
