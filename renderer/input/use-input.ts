import { useCallback, useEffect, useRef } from 'react'
import { type InputSettings, type Listening, listen } from './listen.ts'

/** Listens as long as the component stands, to the newest `to`. Gives back what the large control listens with. */
export function useInput(settings: InputSettings, to: Listening): (event: PointerEvent) => void {
  const newest = useRef(to)
  const pointer = useRef<(event: PointerEvent) => void>(() => {})
  const { mainKey, pedalKey } = settings
  useEffect(() => {
    newest.current = to
  })
  useEffect(() => {
    const ear = listen(
      { mainKey, pedalKey },
      {
        press: (press) => newest.current.press(press),
        long: (press) => newest.current.long(press),
        lost: (at) => newest.current.lost(at),
        stuck: (isStuck) => newest.current.stuck(isStuck),
        bounceMs: () => newest.current.bounceMs(),
      },
    )
    pointer.current = ear.pointer
    return ear.end
  }, [mainKey, pedalKey])
  return useCallback((event) => pointer.current(event), [])
}
