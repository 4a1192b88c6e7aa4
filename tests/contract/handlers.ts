import type { Handlers } from '../../main/contract/dispatch.ts'

type Given = Omit<Handlers, 'calls.stop'>

/** Handlers for tests: those given, and for every other call one that is a defect when it is reached. */
export function handlersWith(given: Partial<Given>): Given {
  return new Proxy(given as Given, {
    get: (target, name) =>
      Reflect.get(target, name) ??
      (() => {
        throw new Error(`The test made no handler for ${String(name)}.`)
      }),
  })
}
