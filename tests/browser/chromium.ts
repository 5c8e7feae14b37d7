import { existsSync } from 'node:fs'
import { chromium, type BrowserServer } from 'playwright-core'

const INSTALLED = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/google-chrome-stable']

const ARGUMENTS = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update',
  '--disable-sync',
]

/** Starts the browser of `browserCommand`, driven from elsewhere. */
export async function launchBrowser(): Promise<BrowserServer> {
  return chromium.launchServer(await browserCommand())
}

/** CHROMIUM_PATH, else a Chromium or Chrome installed on the machine, else the one inside a package: tests need nothing but npm. */
export async function browserCommand(): Promise<{ readonly executablePath: string; readonly args: string[] }> {
  const installed = process.env['CHROMIUM_PATH'] ?? INSTALLED.find((path) => existsSync(path))
  if (installed !== undefined) return { executablePath: installed, args: ARGUMENTS }
  // With this set before the import, the package unpacks the system libraries that a bare machine lacks as well.
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs22.x'
  const { default: packaged } = await import('@sparticuz/chromium')
  // Of the package's own arguments the one for a single process must go: there, closing one page's context ends the browser.
  const args = packaged.args.filter((argument) => argument !== '--single-process')
  return { executablePath: await packaged.executablePath(), args: [...args, ...ARGUMENTS] }
}
