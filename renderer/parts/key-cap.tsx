import { keyName } from './key-name.ts'
import './key-cap.css'

/** A key as it is printed on the keyboard. */
export function KeyCap({ code }: { readonly code: string }) {
  return <kbd className="key-cap">{keyName(code)}</kbd>
}
