/** What every screen knows: the clinic, who sits here, and how they like it. */
import { createContext, type ReactNode, useContext, useMemo } from 'react'
import type { Output } from '../../main/contract/procedures.ts'
import type { Push } from '../../main/contract/pushes.ts'
import { Page } from '../parts/page.tsx'
import { Waiting } from '../parts/waiting.tsx'
import { say } from '../words/index.ts'
import { FaultNotice } from './fault-notice.tsx'
import { type Fault, useReading } from './host.tsx'

export type Clinic = Output<'clinic.state'>
export type Settings = Output<'settings.read'>

interface Session {
  readonly clinic: Clinic
  readonly reread: () => void
}

const SessionContext = createContext<Session | null>(null)
interface SettingsHeld {
  readonly settings: Settings
  readonly reread: () => void
}

const SettingsContext = createContext<SettingsHeld | null>(null)

const touchesClinic = (push: Push) => push.push === 'clinic'

/** What can't be opened, and a way on. */
function Opening({ fault, onAgain }: { readonly fault: Fault; readonly onAgain: () => void }) {
  return (
    <Page title={say('app.opening')}>
      <FaultNotice fault={fault} onAgain={onAgain} />
    </Page>
  )
}

/** Reads the clinic's state and keeps it; shows a fault with a way on where that can't be done. */
export function SessionProvider({ children }: { readonly children: ReactNode }) {
  const { value, fault, again } = useReading('clinic.state', {}, touchesClinic)
  const session = useMemo(() => (value ? { clinic: value, reread: again } : null), [value, again])
  // Without a heading that takes the focus: it would stand for a moment only, and cost as much as a screen.
  if (!session) return fault ? <Opening fault={fault} onAgain={again} /> : <Waiting />
  return <SessionContext value={session}>{children}</SessionContext>
}

export function useSession(): Session {
  const session = useContext(SessionContext)
  if (!session) throw new Error('useSession stands outside its SessionProvider')
  return session
}

export function useClinic(): Clinic {
  return useSession().clinic
}

/** Reads the settings of the examiner who sits here; stands inside the session once there is one. */
export function SettingsProvider({ children }: { readonly children: ReactNode }) {
  const { value, fault, again } = useReading('settings.read', {}, touchesClinic)
  const held = useMemo(() => (value ? { settings: value, reread: again } : null), [value, again])
  if (!held) return fault ? <Opening fault={fault} onAgain={again} /> : <Waiting />
  return <SettingsContext value={held}>{children}</SettingsContext>
}

/** The settings, and how to read them again once they were changed. */
export function useSettingsHeld(): SettingsHeld {
  const held = useContext(SettingsContext)
  if (!held) throw new Error('useSettings stands outside its SettingsProvider')
  return held
}

/** The examiner's own keys and likings. */
export function useSettings(): Settings {
  return useSettingsHeld().settings
}
