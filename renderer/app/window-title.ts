import { useEffect } from 'react'
import { say } from '../words/index.ts'
import { useClinic } from './session.tsx'

/** Heads the window. @param title key of the screen's words */
export function useWindowTitle(title: string): void {
  const { program } = useClinic()
  useEffect(() => {
    document.title = say('app.window', { screen: say(title), program: program.name })
  }, [title, program.name])
}
