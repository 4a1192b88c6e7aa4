import { defineConfig } from 'electron-vite'

/** Natives stay outside the bundle; everything else is bundled, so only they are in `dependencies`. */
const natives = ['better-sqlite3', '@myriaddreamin/typst-ts-node-compiler', 'electron']

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      chunkSizeWarningLimit: 4000,
      externalizeDeps: false,
      rolldownOptions: {
        external: natives,
        input: {
          desktop: 'main/hosts/desktop/index.ts',
          browser: 'main/hosts/browser/index.ts',
          evenhand: 'main/hosts/command/index.ts',
        },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rolldownOptions: {
        input: { preload: 'main/hosts/desktop/preload.ts' },
        external: ['electron'],
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    html: { cspNonce: '__NONCE__' },
    build: {
      outDir: 'out/renderer',
      chunkSizeWarningLimit: 1000,
      minify: true,
      // One style sheet, so that what comes later in the cascade doesn't depend on which screen came first.
      cssCodeSplit: false,
      rolldownOptions: { input: 'renderer/index.html' },
    },
  },
})
