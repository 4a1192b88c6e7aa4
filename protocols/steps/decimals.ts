/** Digits after the point of a number as it is written. */
export function decimalsOf(value: number): number {
  const [mantissa = '', exponent = '0'] = String(value).split('e')
  return Math.max(0, (mantissa.split('.')[1]?.length ?? 0) - Number(exponent))
}
