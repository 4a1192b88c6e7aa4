import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'

/** The packager's own check, as the packager itself finds it; pinned with it, since it is no public door. */
const require = createRequire(createRequire(import.meta.url).resolve('electron-builder'))
const { validateConfiguration } = require('app-builder-lib/out/util/config/config') as {
  validateConfiguration(configuration: unknown, logger: unknown): Promise<void>
}
const { DebugLogger } = require('builder-util') as { DebugLogger: new (enabled: boolean) => object }

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
