import { useRef } from 'react'
import { go } from '../../app/route.ts'
import { FaultNotice } from '../../app/fault-notice.tsx'
import { useSettings } from '../../app/session.tsx'
import { Button } from '../../parts/button.tsx'
import { MainAction } from '../../parts/main-action.tsx'
import { Stage } from '../../parts/stage.tsx'
import { useArrival } from '../../parts/use-arrival.ts'
import { useMainKey } from '../../parts/use-main-key.ts'
import { useSettled } from '../../parts/use-settled.ts'
import { say } from '../../words/index.ts'
import type { StartingProps } from '../starting/preparing.tsx'
import { StillToRate } from './still-to-rate.tsx'
import { useVisitEnd } from './use-visit-end.ts'
import './done.css'

/** Between tests: only that it is done. The client reads along, so no value stands here. */
export function DoneScreen({ view, store, saved, onChanged, onLeave }: StartingProps) {
  const settings = useSettings()
  const heading = useRef<HTMLHeadingElement>(null)
  useArrival(heading)
  const visit = useVisitEnd(view)
  const isLeft = view.phase === 'withdrawn'
  const next = () => {
    if (visit.isDue) return go('')
    go(store === 'rehearsal' ? 'rehearsal' : `client/${view.client ?? ''}/choose`)
  }
  const isSettled = useSettled()
  useMainKey([settings.mainKey, settings.pedalKey], next, isSettled)
  return (
    <Stage
      head={<p className="done-test">{view.protocol.title}</p>}
      main={
        <MainAction
          label={say(visit.isDue ? 'done.first' : 'done.next')}
          keyCode={settings.mainKey}
          isWaiting={!isSettled}
          onClick={next}
        />
      }
      others={
        visit.isDue ? null : (
          <>
            {isLeft ? null : (
              <Button isLarge onPress={() => go(`result/${store}/${view.id}`)}>
                {say('done.result')}
              </Button>
            )}
            <Button isLarge onPress={onLeave}>
              {say(store === 'rehearsal' ? 'done.leave.rehearsal' : 'done.leave')}
            </Button>
          </>
        )
      }
    >
      <h1 className="done-title" ref={heading} tabIndex={-1}>
        {say(isLeft ? 'done.left' : 'done.title')}
      </h1>
      <div className="done-text">
        <p>{say(saved ? (isLeft ? 'done.left.text' : 'done.text') : 'done.text.unsaved')}</p>
        {isLeft || visit.isDue ? null : <StillToRate view={view} store={store} onBegun={onChanged} />}
        {visit.isEnded ? <p>{say('done.visit_ended')}</p> : null}
        <FaultNotice fault={visit.fault} onAgain={visit.again} />
      </div>
    </Stage>
  )
}
