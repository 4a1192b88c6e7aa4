import { Button } from '../parts/button.tsx'
import { say } from '../words/index.ts'
import { go } from './route.ts'
import { useClinic } from './session.tsx'

/** Where the program says its name, who sits here and whose visit it is. */
export function TopBar() {
  const { program, user, visit } = useClinic()
  return (
    <header className="top-bar">
      <nav className="top-bar-line" aria-label={say('app.bar.label')}>
        <button type="button" className="top-bar-name" onClick={() => go('')}>
          <Mark />
          {program.name}
        </button>
        <div className="top-bar-links">
          {visit ? (
            <Button look="quiet" onPress={() => go(`client/${visit.client}`)}>
              {say('app.bar.visit')}
            </Button>
          ) : null}
          <Button look="quiet" onPress={() => go('settings')}>
            {say('app.bar.settings')}
          </Button>
          <Button look="quiet" onPress={() => go('about')}>
            {say('app.bar.about')}
          </Button>
          <Button look="quiet" onPress={() => go('examiner')}>
            {user ? say('app.bar.examiner', { name: user.name }) : ''}
          </Button>
        </div>
      </nav>
    </header>
  )
}

/** Two level strokes on one line: the program's sign. */
function Mark() {
  return (
    <svg className="top-bar-mark" viewBox="0 0 24 24" aria-hidden="true">
      <path d="M3 18.5h18M7.5 14V5.5M16.5 14V5.5" fill="none" strokeWidth="2.6" strokeLinecap="round" />
    </svg>
  )
}
