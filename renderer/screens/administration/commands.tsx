import { useEffect } from 'react'
import type { AdministrationView } from '../../../protocols/runner/view.ts'
import { COMMAND_KEYS, type Command, commandOf, printed, WHILE_RUNNING } from '../../input/keys.ts'
import { capOf } from '../../input/keys-shown.ts'
import { KeyCap } from '../../parts/key-cap.tsx'
import { faceOf } from '../../steps/registry.ts'
import { say } from '../../words/index.ts'
import { mayDo } from './intents.ts'

/** The commands that always stand beside the next thing to press; all others are shown on request. */
const IN_SIGHT: readonly Command[] = ['void', 'undo', 'pause', 'stop', 'help']

/** In the order in which the list shows them: the trial, the step, the record, the screen. */
const LISTED: readonly Command[] = [
  'stop',
  'void',
  'undo',
  'typed',
  'close',
  'skip',
  'later',
  'pause',
  'deviation',
  'accommodation',
  'remark',
  'correct',
  'put_right',
  'cover',
]

export interface CommandsProps {
  readonly view: AdministrationView
  /** Letters that happenings have taken over: those commands are reached from the list. */
  readonly taken: readonly (string | null)[]
  readonly onCommand: (command: Command) => void
}

/** Whether a command can be asked for now: the chart offers it, and it doesn't have to wait for the trial's end. */
export function isOpen(view: AdministrationView, command: Command): boolean {
  const running = view.step !== null && faceOf(view.step).isRunning(view.step)
  // The list takes the keys as long as it is open, so it has to wait as well.
  if (command === 'help') return !running
  return command === 'cover' || ((!running || WHILE_RUNNING.includes(command)) && mayDo(view, command))
}

function CommandButton({
  command,
  taken,
  onCommand,
  isShut,
}: Omit<CommandsProps, 'view'> & { readonly command: Command; readonly isShut: boolean }) {
  const key = COMMAND_KEYS[command]
  return (
    <button
      type="button"
      className="giving-command"
      aria-disabled={isShut}
      // The focus stays on the stage, so that the main key never presses what the pointer pressed last.
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => (isShut ? undefined : onCommand(command))}
    >
      {say(`administration.command.${command}`)}
      {taken.includes(printed(key)) ? null : <KeyCap code={capOf(key)} />}
    </button>
  )
}

export function CommandBar(props: CommandsProps) {
  return IN_SIGHT.map((command) => (
    <CommandButton key={command} command={command} isShut={!isOpen(props.view, command)} {...props} />
  ))
}

/** The list's own keys work while it is shown. Escape closes it: the next one stops. */
function useListKeys({ view, onCommand }: CommandsProps): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      const command = event.repeat ? null : commandOf(event.key, {})
      if (command === null || command === 'stop' || command === 'help') return
      if (!isOpen(view, command)) return
      event.preventDefault()
      onCommand(command)
    }
    addEventListener('keydown', listen)
    return () => removeEventListener('keydown', listen)
  }, [view, onCommand])
}

/** Everything that can be asked for, with its key: shown on request, and worked by key or pointer. */
export function CommandList(props: CommandsProps) {
  useListKeys(props)
  return (
    <ul className="giving-list">
      {LISTED.filter((command) => command !== 'later' || props.view.raters.length > 0).map((command) => (
        <li key={command}>
          <CommandButton command={command} isShut={!isOpen(props.view, command)} {...props} />
          <span className="soft small">{say(`administration.command.${command}_does`)}</span>
        </li>
      ))}
    </ul>
  )
}
