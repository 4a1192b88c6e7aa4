import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { routeFor } from '../../renderer/app/routes.ts'

const ID = '0198c0de-0000-7000-8000-000000000001'

describe('A place leads to its screen, and nothing else does', () => {
  it.each([
    ['', '', {}],
    [`client/${ID}`, 'client/:client', { client: ID }],
    [`client/${ID}/choose`, 'client/:client/choose', { client: ID }],
    [`administration/rehearsal/${ID}`, 'administration/:store/:id', { store: 'rehearsal', id: ID }],
    [`history/${ID}/nine_hole_peg`, 'history/:client/:protocol', { client: ID, protocol: 'nine_hole_peg' }],
  ])('%s', (place, path, params) => {
    const here = routeFor(place)
    expect(here?.route.path).toBe(path)
    expect(here?.params).toEqual(params)
  })

  it.each(['nowhere', 'client', `client/${ID}/choose/more`])('%s leads to the first screen', (place) => {
    expect(routeFor(place)?.route.path).toBe('')
  })

  it.each([
    `client/${ID}`,
    `client/${ID}/profile`,
    `client/${ID}/choose`,
    `history/${ID}/nine_hole_peg`,
    `move/${ID}/${ID}`,
  ])('H1: %s says whose record it shows, so that an open visit keeps others out', (place) => {
    const here = routeFor(place)
    expect(here?.params[here.route.client ?? '']).toBe(ID)
  })

  it('every folder of screens with a route is found by listing', () => {
    const screens = join(import.meta.dirname, '../../renderer/screens')
    const withRoute = readdirSync(screens).filter((name) =>
      readdirSync(join(screens, name)).includes('route.tsx'),
    )
    const reached = ['', 'examiner', 'settings', 'about', 'rehearsal', 'new-client']
    expect(reached.every((place) => routeFor(place)?.route.path === place)).toBe(true)
    expect(withRoute.length).toBeGreaterThanOrEqual(reached.length + 5)
  })
})
