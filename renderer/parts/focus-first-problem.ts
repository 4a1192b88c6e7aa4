/** Takes the reader to the first field with a problem, once the screen shows it. */
export function focusFirstProblem(): void {
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLElement>(
      'input[aria-invalid=true], textarea[aria-invalid=true], [data-invalid] input, [data-invalid] textarea',
    )
    field?.focus()
  })
}
