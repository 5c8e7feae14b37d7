import { defineConfig } from 'vitest/config'
import type { Plugin } from 'vite'
import solid from 'vite-plugin-solid'
import { ADDRESS } from './src/cli/address.ts'

/** What the built page may load: itself only. Not in development, whose hot reload needs inline styles. */
const POLICY = [
  "default-src 'none'", "script-src 'self'", "style-src 'self'", "img-src 'self' data: blob:", "font-src 'self'", "connect-src 'self'",
  "worker-src 'self'", "manifest-src 'self'", "base-uri 'none'", "form-action 'none'",
].join('; ')

const contentSecurityPolicy: Plugin = {
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
  ],
}

export default defineConfig({
  root: 'src',
  publicDir: false,
  plugins: [solid(), contentSecurityPolicy],
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  worker: { format: 'es' },
  // One address for development and preview alike: the browser's store belongs to the address.
  server: { ...ADDRESS, strictPort: true },
  preview: { ...ADDRESS, strictPort: true },
  test: {
    root: '.',
    environment: 'node',
    testTimeout: 180_000,
    hookTimeout: 120_000,
    projects: [
      { extends: true, test: { name: 'rooms', include: ['tests/{unit,published,property,workings,templates,review}/**/*.test.ts'] } },
      // Only these need the app built and a browser started. On a loaded machine keys sent by a program can outrun a frame: hence the retries.
      { extends: true, test: { name: 'browser', include: ['tests/browser/**/*.test.ts'], globalSetup: ['tests/browser/setup.ts'], fileParallelism: false, retry: 2 } },
    ],
  },
})
