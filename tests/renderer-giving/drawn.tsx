import { renderToStaticMarkup } from 'react-dom/server'
import type { AdministrationView } from '../../protocols/runner/view.ts'
import { happeningKeys } from '../../renderer/input/keys.ts'
import type { DeskState } from '../../renderer/screens/administration/desk.ts'
import { Giving as Stage } from '../../renderer/screens/administration/giving.tsx'
import { keyed } from '../../renderer/screens/administration/side.tsx'

export const nobody = async (): Promise<null> => null

/** The stage as it is drawn for a view. */
export function drawn(view: AdministrationView, state: Partial<DeskState> = {}): string {
  const keys = happeningKeys(keyed(view.step))
  return renderToStaticMarkup(
    <Stage
      view={view}
      state={{ view, saved: true, refusal: null, fault: null, waiting: 0, ...state }}
      mainKey="Space"
      showClock={false}
      isDead={false}
      isStuck={false}
      signal={null}
      taken={Object.values(keys)}
      happeningKeys={keys}
      onPointer={() => {}}
      onMain={() => {}}
      onHappening={() => {}}
      onExplain={() => {}}
      onTakeUp={() => {}}
      onCommand={() => {}}
      send={nobody}
      prepare={() => {}}
      onAct={nobody}
      onCell={() => {}}
    />,
  )
}

/** What the main key does at arm's length, in words. */
export const mainLabel = (markup: string): string =>
  /class="main-action"[^>]*><span>([^<]*)</.exec(markup)?.[1] ?? ''
