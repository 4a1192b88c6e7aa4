import { Component, type ErrorInfo, type ReactNode } from 'react'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Page } from '../parts/page.tsx'
import { say } from '../words/index.ts'

interface Props {
  readonly children: ReactNode
  /** A change of it tries the screen again. */
  readonly place: string
}

interface State {
  readonly failedAt: string | null
}

/** Catches a screen that breaks: says so, says that what was saved is safe, and gives two ways on. */
export class Boundary extends Component<Props, State> {
  override state: State = { failedAt: null }

  static getDerivedStateFromError(): Partial<State> {
    return { failedAt: '' }
  }

  static getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    if (state.failedAt === null) return null
    if (state.failedAt === '') return { failedAt: props.place }
    return state.failedAt === props.place ? null : { failedAt: null }
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack)
  }

  override render(): ReactNode {
    if (this.state.failedAt === null) return this.props.children
    return (
      <Page title={say('app.broken.title')}>
        <Notice tone="fault" isLive title={say('app.broken.said')}>
          <p>{say('app.broken.mend')}</p>
        </Notice>
        <div className="row">
          <Button look="strong" onPress={() => window.location.reload()}>
            {say('app.broken.reload')}
          </Button>
          <Button
            onPress={() => {
              window.location.hash = '#/'
            }}
          >
            {say('app.broken.first')}
          </Button>
        </div>
      </Page>
    )
  }
}
