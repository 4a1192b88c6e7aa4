import { useState } from 'react'
import { Button } from '../../parts/button.tsx'
import { Field } from '../../parts/field.tsx'
import { say } from '../../words/index.ts'
import type { FaceProps } from '../face.ts'
import { tellRefusal } from '../refusal.tsx'

interface Props extends Pick<FaceProps, 'send'> {
  readonly label: string
  readonly longest: number
}

/** An answer in words, sent by Enter. */
export function WordsEntry({ label, longest, send }: Props) {
  const [typed, setTyped] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const enter = async (): Promise<void> => {
    if (typed.trim() === '') return setProblem(say('steps.ask.words_missing'))
    const refusal = await send('answered', { answer: typed.trim(), confirmed: false })
    if (refusal !== null) setProblem(tellRefusal(refusal))
  }
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void enter()
      }}
    >
      <Field
        label={label}
        value={typed}
        onChange={(text) => {
          setTyped(text)
          setProblem(null)
        }}
        maxLength={longest}
        width="wide"
        error={problem}
      />
      <div>
        <Button onPress={() => void enter()} keyCode="Enter">
          {say('steps.entry.enter')}
        </Button>
      </div>
    </form>
  )
}
