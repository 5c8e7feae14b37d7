import type { TestProject } from 'vitest/node'
import { build, preview } from 'vite'
import { launchBrowser } from './chromium.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built app is served. */
    appUrl: string
    /** Where the one browser of the run listens. */
    browserUrl: string
  }
}

/** Builds the app, serves the build and starts one browser for all browser tests of a run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await build({ logLevel: 'warn' })
  const server = await preview({ logLevel: 'warn', preview: { host: '127.0.0.1', port: 0, strictPort: false } })
  const address = server.httpServer.address()
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port')
  const browser = await launchBrowser()
  project.provide('appUrl', `http://127.0.0.1:${address.port}/`)
  project.provide('browserUrl', browser.wsEndpoint())
  return async () => {
    await browser.close()
    await server.close()
  }
}
