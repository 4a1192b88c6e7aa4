import { createRequire } from 'node:module'
import { spawnSync } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { addSomebody, giveByWire } from './giving-by-wire.ts'
import { buildProgram, newRecords, start } from './program.ts'

/** The packager's own check, as the packager itself finds it; pinned with it, since it is no public door. */
const fromPackager = createRequire(createRequire(import.meta.url).resolve('electron-builder'))
const { validateConfiguration } = fromPackager('app-builder-lib/out/util/config/config') as {
  validateConfiguration(configuration: unknown, logger: unknown): Promise<void>
}
const asar = fromPackager('@electron/asar') as { extractAll(archive: string, folder: string): void }
const fuses = fromPackager('@electron/fuses') as {
  FuseV1Options: Readonly<Record<string, number>>
  getCurrentFuseWire(program: string): Promise<Readonly<Record<number, number>>>
}
const { DebugLogger } = fromPackager('builder-util') as { DebugLogger: new (enabled: boolean) => object }

const written = (): Record<string, unknown> => parse(readFileSync('electron-builder.yml', 'utf8'))
const validate = (configuration: unknown) => validateConfiguration(configuration, new DebugLogger(false))

describe('the packages of the desktop program', () => {
  test('the configuration is what the packager understands', async () => {
    await expect(validate(written())).resolves.not.toThrow()
  })

  test('a misspelt key would be found', async () => {
    await expect(validate({ ...written(), npmRebuilt: false })).rejects.toThrow(/npmRebuilt/)
  })

  test('every platform has its package', () => {
    const { win, mac, linux } = written()
    for (const platform of [win, mac, linux]) expect(platform).toHaveProperty('target')
  })

  test('a package holds the program, the library and this platform’s natives, and no Node of its own', () => {
    const { files, asarUnpack, npmRebuild, publish } = written()
    expect(files).toEqual(
      expect.arrayContaining([
        'out/**',
        'protocols/library/**',
        'package.json',
        '!node_modules/node-*-*/**',
        '!node_modules/*/prebuilds/**',
        'node_modules/*/prebuilds/${platform}*-${arch}.node',
      ]),
    )
    expect(asarUnpack).toEqual(['**/*.node'])
    expect([npmRebuild, publish]).toEqual([false, null])
  })

  test('the packaged program can’t be turned into a plain Node or opened to a debugger', () => {
    expect(written().electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      onlyLoadAppFromAsar: true,
    })
  })
})

/** How a fuse stands in the wire, as ASCII digits. */
const [BLOWN, SET] = [0x30, 0x31]

/** The public mark after which a runtime's program keeps its fuses: version 1, nine of them, all unset. */
const FUSES = Buffer.concat([
  Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'),
  Buffer.from([1, 9]),
  Buffer.from('0'.repeat(9)),
])

/** A folder that has what the packager looks for in a runtime, and no runtime. */
function makeRuntime(): string {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-runtime-'))
  mkdirSync(join(folder, 'locales'))
  mkdirSync(join(folder, 'resources'))
  for (const file of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'locales/en-US.pak'])
    writeFileSync(join(folder, file), '')
  writeFileSync(join(folder, 'version'), '45.4.1')
  writeFileSync(join(folder, 'electron'), Buffer.concat([Buffer.from('#!/bin/sh\n'), FUSES]))
  chmodSync(join(folder, 'electron'), 0o755)
  return folder
}

describe('a package, made with a stand-in for the runtime', () => {
  let unpacked = ''
  let app = ''
  beforeAll(async () => {
    await buildProgram()
    const output = mkdtempSync(join(tmpdir(), 'evenhand-package-'))
    const set = [`-c.electronDist=${makeRuntime()}`, `-c.directories.output=${output}`]
    const cli = createRequire(import.meta.url).resolve('electron-builder/cli.js')
    const made = spawnSync(process.execPath, [cli, '--linux', '--dir', ...set], { encoding: 'utf8' })
    if (made.status !== 0) throw new Error(made.stdout + made.stderr)
    unpacked = join(output, readdirSync(output).find((name) => name.endsWith('unpacked')) ?? '')
    app = join(output, 'app')
    asar.extractAll(join(unpacked, 'resources', 'app.asar'), app)
  }, 180_000)

  test('what is in it is enough to give a test and to print its report', async () => {
    const host = await start(['--records', newRecords()], { built: join(app, 'out', 'main') })
    const { id, until } = await giveByWire(host.client, await addSomebody(host.client))
    await until(({ phase }) => phase === 'finished')
    const report = await host.client.call('administrations.report', { store: 'records', id })
    expect(report.pdfBase64.length).toBeGreaterThan(1000)
    expect(await host.end('SIGTERM')).toBe(0)
  })

  test('nothing is in it that no machine needs: no sources, no tests, no second Node', () => {
    expect(readdirSync(app).sort()).toEqual(['node_modules', 'out', 'package.json', 'protocols'])
    expect(readdirSync(join(app, 'protocols'))).toEqual(['library'])
    const modules = readdirSync(join(app, 'node_modules'))
    expect(modules.filter((name) => !name.startsWith('.'))).toEqual(['@myriaddreamin', 'better-sqlite3'])
    expect(existsSync(join(app, 'node_modules', 'better-sqlite3', 'deps'))).toBe(false)
  })

  test('its fuses are set: no plain Node, no debugger, nothing but its own archive', async () => {
    const wire = await fuses.getCurrentFuseWire(join(unpacked, 'evenhand'))
    const stands = (name: string) => wire[fuses.FuseV1Options[name] ?? -1]
    for (const off of ['RunAsNode', 'EnableNodeOptionsEnvironmentVariable', 'EnableNodeCliInspectArguments'])
      expect([off, stands(off)]).toEqual([off, BLOWN])
    expect(stands('OnlyLoadAppFromAsar')).toBe(SET)
  })
})
