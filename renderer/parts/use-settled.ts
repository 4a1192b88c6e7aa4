import { useEffect, useState } from 'react'

/** ms in which a press still belongs to the screen before. */
const SETTLING = 700

/** False just after a screen came up, so that one press too many on the last one does nothing here. */
export function useSettled(): boolean {
  const [isSettled, setSettled] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(true), SETTLING)
    return () => clearTimeout(timer)
  }, [])
  return isSettled
}
