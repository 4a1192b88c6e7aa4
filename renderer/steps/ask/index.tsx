import type { StepView } from '../../../protocols/runner/view.ts'
import type { AskFace } from '../../../protocols/steps/ask/face.ts'
import { say } from '../../words/index.ts'
import { Entry } from '../entry.tsx'
import type { CellRead, EventData, FaceProps, StepFace } from '../face.ts'
import { readCell } from '../read-cell.ts'
import { Picks } from '../picks.tsx'
import { tellUnit, tellValue } from '../tell.ts'
import { WordsEntry } from './words-entry.tsx'

const faceIn = (step: StepView): AskFace => step.face as unknown as AskFace

type Asked = Pick<FaceProps, 'send'> & { readonly face: AskFace }

function Typed({ face, send }: Asked) {
  const { number, answer } = face
  const label = say(answer === null ? 'steps.ask.answer_now' : 'steps.ask.answer_again')
  return (
    <>
      {answer === null ? null : (
        <p className="step-reading">
          {typeof answer === 'number'
            ? tellValue(answer, (String(answer).split('.')[1] ?? '').length, number?.unit ?? '1')
            : answer}
        </p>
      )}
      {number === null ? (
        <WordsEntry key={`${answer}`} label={label} longest={face.longest ?? 0} send={send} />
      ) : (
        <Entry
          key={`${answer}`}
          label={label}
          unit={tellUnit(number.unit)}
          isWhole={number.decimals === 0}
          onEnter={(given, confirmed) => send('answered', { answer: given, confirmed })}
        />
      )}
    </>
  )
}

function Face({ step, send }: FaceProps) {
  const face = faceIn(step)
  if (face.options.length === 0) return <Typed face={face} send={send} />
  return (
    <Picks
      label={say(face.answer === null ? 'steps.ask.pick_now' : 'steps.ask.pick_again')}
      step={step}
      picks={face.options}
      picked={face.answer === null ? null : String(face.answer)}
      onPick={(answer) => void send('answered', { answer, confirmed: false })}
    />
  )
}

const isWords = ({ options, number }: AskFace): boolean => options.length === 0 && number === null

const answered = (answer: string | number, confirmed: boolean): EventData => ({ answer, confirmed })

/** In a cell an option is told by its number, from 1, in the file's order. */
function readAnswer(typed: string, data: EventData): CellRead {
  const { options, number } = data as AskFace
  if (options.length > 0) {
    const option = options[Number(typed) - 1]
    if (option === undefined) return { problem: say('steps.refused.no_such_answer') }
    return { data: (confirmed) => answered(option.id, confirmed), doubt: null }
  }
  if (number !== null) {
    return readCell(typed, { isWhole: number.decimals === 0, plausible: number.plausible }, answered)
  }
  return { data: (confirmed) => answered(typed.trim(), confirmed), doubt: null }
}

function shownAnswer(data: EventData): string {
  const { answer, options } = data as AskFace
  if (answer === null || options.length === 0) return String(answer ?? '')
  return String(options.findIndex(({ id }) => id === answer) + 1)
}

function hintOf(data: EventData): string {
  const { options, number } = data as AskFace
  if (options.length === 0) return number === null ? '' : tellUnit(number.unit)
  return options.map(({ text }, index) => `${index + 1} ${text}`).join(' · ')
}

export default {
  kind: 'ask',
  isTrial: true,
  Face,
  main: (_step, event) => ({ key: `steps.ask.${event ?? 'waits'}` }),
  press: (_event, stamp) => ({ stamp }),
  bounceMs: () => null,
  dead: (step) => faceIn(step).dead,
  due: () => null,
  isRunning: () => false,
  signals: () => [],
  Typed: null,
  cell: {
    read: readAnswer,
    shown: shownAnswer,
    hint: hintOf,
    hasLetters: (face) => isWords(face as AskFace),
  },
} satisfies StepFace
