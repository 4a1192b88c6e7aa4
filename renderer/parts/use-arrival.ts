import { type RefObject, useEffect } from 'react'

/** Begins reading at this element when a screen opens, unless something in it has taken the focus already. */
export function useArrival(element: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    if (!document.activeElement || document.activeElement === document.body) element.current?.focus()
    window.scrollTo(0, 0)
  }, [element])
}
