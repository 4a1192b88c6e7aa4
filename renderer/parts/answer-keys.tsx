import { type KeyboardEvent, type ReactNode, useRef } from 'react'
import './answer-keys.css'

/**
 * Questions that one key answers: pressed in a question whose options carry a key, it chooses that option and goes
 * on to what is open next. It works only while a question has the focus, so that a letter typed elsewhere is a letter.
 */
export function AnswerKeys({ children }: { readonly children: ReactNode }) {
  const all = useRef<HTMLDivElement>(null)
  const answer = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return
    const question = (event.target as HTMLElement).closest('[role="radiogroup"]')
    const option = question?.querySelector<HTMLElement>(`[data-answer-key="${CSS.escape(event.key)}"]`)
    if (!option) return
    event.preventDefault()
    option.querySelector('input')?.click()
    // What the answer brings up is on the page only by the next frame.
    requestAnimationFrame(() => nextOpen(all.current, option)?.focus())
  }
  // The handler only hears what its questions hear: they are what has the role and the focus.
  return (
    <div ref={all} className="answer-keys" role="presentation" onKeyDown={answer}>
      {children}
    </div>
  )
}

/** The first thing behind an option that is still to be answered: an empty field, or a question without a choice. */
function nextOpen(all: HTMLElement | null, option: HTMLElement): HTMLElement | null {
  const open = [...(all?.querySelectorAll<HTMLInputElement>('input') ?? [])].filter(
    (input) => (option.compareDocumentPosition(input) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
  )
  return (
    open.find((input) =>
      input.type === 'radio'
        ? input.closest('[role="radiogroup"]')?.querySelector('input:checked') === null
        : input.value === '',
    ) ?? null
  )
}
