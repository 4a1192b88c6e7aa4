/** Starts `writer.ts` by way of the build tool, for its lists of folders are the build's. */
import { runnerImport } from 'vite'

const { module } = await runnerImport(new URL('./writer.ts', import.meta.url).pathname, {
  logLevel: 'error',
  configFile: false,
  server: { ws: false, watch: null },
})
module.write(...process.argv.slice(2))
