import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { preview, type PreviewServer } from 'vite'
import { ADDRESS } from './address.ts'

const URL_TEXT = `http://${ADDRESS.host}:${ADDRESS.port}/`
const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url))

if (!existsSync(folder('../../dist/index.html'))) refuse('there is nothing to serve yet: "npm start" builds it first')

const server = await started()
console.log(`Lowside is at ${URL_TEXT} (this machine only). Ctrl+C stops it.`)
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, stop)

async function started(): Promise<PreviewServer> {
  try {
    return await preview({
      configFile: false,
      logLevel: 'warn',
      root: folder('../../src'),
      build: { outDir: folder('../../dist') },
      preview: { ...ADDRESS, strictPort: true, cors: false },
    })
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return refuse(/already in use|EADDRINUSE/.test(reason)
      ? `port ${ADDRESS.port} is taken, most likely by a Lowside that is already running: open ${URL_TEXT}. If it is another program, end that one and start again; the address is fixed, since the browser keeps your workbooks by it`
      : reason)
  }
}

function refuse(reason: string): never {
  console.error(`lowside: ${reason}`)
  process.exit(2)
}

async function stop(): Promise<void> {
  // Vite's own handler of the same signal ends the process too, with this code.
  process.exitCode = 0
  await server.close()
  process.exit(0)
}
