import { useEffect, useRef } from 'react'

const TYPING = 'input, textarea, select, [contenteditable]'

/** True where a key belongs to what is being typed or chosen, so that a shortcut must keep out of it. */
export function isTyping(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(TYPING) !== null
}

/**
 * Does `act` on a press of a key, wherever the focus is, except in a field, under a dialog and on other
 * controls, which the same key works. A key held down counts once. For screens that time nothing.
 * @param codes `KeyboardEvent.code` of the key, or of several that mean the same, such as main key and pedal
 */
export function useMainKey(codes: string | readonly (string | null)[], act: () => void, isOn = true): void {
  const latest = useRef(act)
  useEffect(() => {
    latest.current = act
  })
  const wanted = JSON.stringify([codes].flat())
  useEffect(() => {
    if (!isOn) return
    const keys = new Set<unknown>(JSON.parse(wanted))
    const onKeyDown = (event: KeyboardEvent) => {
      if (!keys.has(event.code) || event.ctrlKey || event.altKey || event.metaKey) return
      if (isTyping(event.target) || document.querySelector('dialog[open], [role=dialog], [role=alertdialog]'))
        return
      if (event.target instanceof Element && event.target.closest('button, a, [role=switch]')) return
      event.preventDefault()
      if (!event.repeat) latest.current()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [wanted, isOn])
}
