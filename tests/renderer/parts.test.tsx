import type { ReactElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Choice } from '../../renderer/parts/choice.tsx'
import { DateField } from '../../renderer/parts/date-field.tsx'
import { Field } from '../../renderer/parts/field.tsx'
import { keyName } from '../../renderer/parts/key-name.ts'
import { MainAction } from '../../renderer/parts/main-action.tsx'
import { Notice } from '../../renderer/parts/notice.tsx'
import { NO_DATE } from '../../renderer/parts/read-date.ts'
import { Table } from '../../renderer/parts/table.tsx'

const html = (element: ReactElement) => renderToStaticMarkup(element)
const nothing = () => {}
const count = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].length

describe('Errors stand in place and are read with their field', () => {
  it('a field with a problem is marked invalid and described by the problem', () => {
    const out = html(<Field label="Name" value="" onChange={nothing} error="Write one." />)
    expect(out).toMatch(/<input[^>]*aria-invalid="true"/)
    expect(out).toContain('Write one.')
    expect(html(<Field label="Name" value="" onChange={nothing} />)).not.toContain('aria-invalid="true"')
  })

  it('a date is three boxes in one group, each described by the problem', () => {
    const out = html(<DateField label="Born" value={NO_DATE} onChange={nothing} error="No such day." />)
    expect(out).toContain('<legend')
    const id = /id="([^"]+)-error"/.exec(out)?.[1]
    expect(count(out, new RegExp(`<input[^>]*aria-describedby="[^"]*${id}-error`, 'g'))).toBe(3)
  })
})

describe('A choice shows only what was chosen', () => {
  const options = [
    { id: 'yes', label: 'Yes' },
    { id: 'no', label: 'No' },
  ]

  it('nothing is chosen before somebody chooses', () => {
    const out = html(<Choice label="Present?" options={options} value={null} onChange={nothing} />)
    expect(count(out, /type="radio"/g)).toBe(2)
    expect(count(out, /<input[^>]*checked/g)).toBe(0)
    // Still every one is within reach of the keyboard.
    expect(count(out, /<input[^>]*tabindex="-1"/g)).toBe(0)
  })

  it('the chosen one is', () => {
    const out = html(<Choice label="Present?" options={options} value="no" onChange={nothing} />)
    expect(out).toMatch(/<input[^>]*checked=""[^>]*value="no"|<input[^>]*value="no"[^>]*checked=""/)
  })
})

describe('The next action says its key', () => {
  it('and, while it waits, that it can’t be done yet, without leaving its place', () => {
    expect(html(<MainAction label="Start" keyCode="Space" />)).toContain('<kbd class="key-cap">Space</kbd>')
    expect(html(<MainAction label="Start" keyCode="Space" isWaiting />)).toContain('aria-disabled="true"')
  })

  it.each([
    ['Space', 'Space'],
    ['KeyK', 'K'],
    ['Digit4', '4'],
    ['Numpad0', '0 on the number pad'],
    ['NumpadEnter', 'Enter on the number pad'],
    ['IntlBackslash', 'IntlBackslash'],
  ])('names the key %s', (code, name) => {
    expect(keyName(code)).toBe(name)
  })
})

describe('Colour never carries a meaning alone', () => {
  it('a caution and a problem say so in words, too', () => {
    expect(html(<Notice tone="caution" title="Late." />)).toContain('Caution:')
    expect(html(<Notice tone="fault" title="Late." />)).toContain('Problem:')
  })

  it('a live notice is a status, a live problem an alert', () => {
    expect(html(<Notice tone="plain" isLive title="Saved." />)).toContain('role="status"')
    expect(html(<Notice tone="fault" isLive title="Not saved." />)).toContain('role="alert"')
  })
})

describe('A table has a caption and heads for rows and columns', () => {
  it('which are read with each cell', () => {
    const out = html(
      <Table
        caption="Trials"
        columns={[
          { id: 'trial', title: 'Trial' },
          { id: 'time', title: 'Time', isNumber: true },
        ]}
        rows={[{ id: '1', cells: ['1', '18.2'] }]}
      />,
    )
    expect(out).toContain('Trials</caption>')
    expect(count(out, /<th scope="col"/g)).toBe(2)
    expect(count(out, /<th scope="row"/g)).toBe(1)
    expect(out).toMatch(/<td[^>]*>18\.2<\/td>/)
  })
})
