import { useState } from 'react'
import { type Signal, sound } from '../../input/sound.ts'
import { Button } from '../../parts/button.tsx'
import { useMainKey } from '../../parts/use-main-key.ts'
import { say } from '../../words/index.ts'

/** Where this machine remembers the day of its last sound check. */
const PLACE = 'sound-checked-on'
const KEY = 'KeyH'
/** The signals as the check sounds them, with ms between one and the next. */
const SIGNALS: readonly Signal[] = ['ready', 'go', 'half', 'end']
const APART = 700

/** A browser may keep no storage; then the check is offered before every test. */
function rememberedDay(): string | null {
  try {
    return localStorage.getItem(PLACE)
  } catch {
    return null
  }
}

function remember(day: string): void {
  try {
    localStorage.setItem(PLACE, day)
  } catch {
    // Offered again next time: nothing depends on it.
  }
}

/** Sounds all signals one after another; false where this machine can't sound. */
async function soundAll(): Promise<boolean> {
  const from = performance.now() + 100
  const tones = await Promise.all(SIGNALS.map((signal, index) => sound(signal, from + index * APART)))
  return tones.every((tone) => tone !== null)
}

/**
 * Before the first test of a day with sound: one key sounds the signals. It is passed over by just going on, and asks
 * nobody on a machine where it was done that day.
 */
export function SoundCheck({ today }: { readonly today: string }) {
  const [wasDone] = useState(() => rememberedDay() === today)
  const [heard, setHeard] = useState<'yes' | 'no' | null>(null)
  const check = async (): Promise<void> => {
    const isAble = await soundAll()
    if (isAble) remember(today)
    setHeard(isAble ? 'yes' : 'no')
  }
  useMainKey(KEY, () => void check(), !wasDone)
  if (wasDone) return null
  return (
    <div className="row">
      <Button onPress={() => void check()}>{say('starting.sound.check')}</Button>
      <output className="soft">{say(`starting.sound.${heard ?? 'due'}`)}</output>
    </div>
  )
}
