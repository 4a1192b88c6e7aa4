/**
 * Where in our code it went wrong and of which sort it was, without the error's message: that may quote a record,
 * and a technical log holds no client's data.
 */
export function placeOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error
  const frames = (error.stack ?? '')
    .replace(error.message, '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
  return [error.name, ...frames].join('\n')
}
