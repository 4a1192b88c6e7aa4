import type { Refusal } from '../../protocols/runner/view.ts'
import { Notice } from '../parts/notice.tsx'
import { hasWords, say } from '../words/index.ts'

/** Why an act was not taken, in words; nothing was changed. */
export function tellRefusal(refusal: Refusal): string {
  const key = `steps.refused.${refusal.refused}`
  return hasWords(key) ? say(key, refusal.detail) : say('steps.refused_other', { code: refusal.refused })
}

export function RefusalNotice({ refusal }: { readonly refusal: Refusal | null }) {
  if (refusal === null) return null
  return <Notice tone="caution" title={tellRefusal(refusal)} isLive />
}
