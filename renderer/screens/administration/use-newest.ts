import { useEffect, useRef } from 'react'

/** The newest value, for effects that must not run again because of it. */
export function useNewest<T>(value: T): { readonly current: T } {
  const newest = useRef(value)
  useEffect(() => {
    newest.current = value
  })
  return newest
}
