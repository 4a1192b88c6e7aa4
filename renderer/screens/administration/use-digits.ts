import { useEffect } from 'react'
import { isTyping } from '../../parts/use-main-key.ts'

/** The first nine of a list have a digit each. */
const DIGITS = 9

/** The key that chooses the entry at this index, for its button; none beyond the ninth. */
export const digitKey = (index: number): { readonly keyCode?: string } =>
  index < DIGITS ? { keyCode: `Digit${index + 1}` } : {}

/** One digit chooses one entry of a list, as long as nobody types. */
export function useDigits(choose: (index: number) => void): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      const digit = Number(event.key)
      if (event.repeat || isTyping(event.target) || !Number.isInteger(digit) || digit < 1) return
      event.preventDefault()
      choose(digit - 1)
    }
    addEventListener('keydown', listen)
    return () => removeEventListener('keydown', listen)
  }, [choose])
}
