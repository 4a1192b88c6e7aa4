import { useEffect, useRef } from 'react'

const TYPING = 'input, textarea, select, [contenteditable]'

/** True where a key belongs to what is being typed or chosen, so that a shortcut must keep out of it. */
export function isTyping(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(TYPING) !== null
}

/**
 * Does `act` on a press of one key, wherever the focus is, except in a field, under a dialog and on other
 * controls, which the same key works. A key held down counts once. For screens that time nothing.
 */
export function useMainKey(code: string, act: () => void, isOn = true): void {
  const latest = useRef(act)
  useEffect(() => {
    latest.current = act
  })
  useEffect(() => {
    if (!isOn) return
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.code !== code || event.ctrlKey || event.altKey || event.metaKey) return
      if (isTyping(event.target) || document.querySelector('dialog[open], [role=dialog], [role=alertdialog]'))
        return
      if (event.target instanceof Element && event.target.closest('button, a, [role=switch]')) return
      event.preventDefault()
      if (!event.repeat) latest.current()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [code, isOn])
}
