/** What the tests need from the system beside Node: a Chromium and the PDF readers; fetched where that's possible. */
import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fail } from './node24.mjs'

const CHROMIUM_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

function onPath(name) {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const file = join(folder, name)
    try {
      accessSync(file, constants.X_OK)
      return file
    } catch {
      // Not in this folder: the next one may have it.
    }
  }
  return null
}

const chromium = () =>
  process.env.EVENHAND_CHROMIUM ?? CHROMIUM_NAMES.map(onPath).find((found) => found !== null) ?? null

function fetchPackages(packages) {
  const apt = onPath('apt-get')
  if (apt === null || process.getuid?.() !== 0) return false
  console.log(`Installing ${packages.join(' and ')} through the system’s packages …`)
  const options = ['-o', 'DPkg::Lock::Timeout=300', '-qq']
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  for (const call of [['update'], ['install', '-y', '--no-install-recommends', ...packages]]) {
    const done = spawnSync(apt, [...options, ...call], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: environment,
    })
    if (done.status !== 0) return false
  }
  return true
}

/** A screen that exists in memory only, for the long checks that press real keys. */
export function ensureXServer() {
  if (onPath('Xvfb') === null) fetchPackages(['xvfb'])
  if (onPath('Xvfb') !== null) return
  fail(
    'This check presses the keys of an X server, and Xvfb was not found.',
    'Install xvfb, then run it again.',
  )
}

/** @returns {{ EVENHAND_CHROMIUM: string }} what the tests' environment must name */
export function ensureNeeds() {
  const missing = []
  if (chromium() === null) missing.push('chromium')
  if (onPath('pdftotext') === null) missing.push('poppler-utils')
  if (missing.length > 0) fetchPackages(missing)
  const found = chromium()
  if (found === null || !existsSync(found)) {
    fail(
      'The tests need Chromium, and none was found.',
      'Install Chromium or Chrome, or name one in EVENHAND_CHROMIUM, then run `npm test` again.',
    )
  }
  if (onPath('pdftotext') === null) {
    fail(
      'The tests read reports back with pdftotext, and it was not found.',
      'Install poppler-utils, then run `npm test` again.',
    )
  }
  return { EVENHAND_CHROMIUM: found }
}
