/** The part of the library that `units.ts` uses; it comes without types. */
declare module '@lhncbc/ucum-lhc' {
  interface LibraryUnit {
    readonly magnitude_: number
    readonly dim_: { readonly dimVec_: readonly number[] | null } | null
    readonly isSpecial_: boolean
    readonly isArbitrary_: boolean
  }
  interface Validation {
    readonly status: 'valid' | 'invalid' | 'error'
    readonly ucumCode: string | null
    readonly suggestions?: readonly { readonly units: readonly (readonly [string, ...unknown[]])[] }[]
  }
  interface Utilities {
    getSpecifiedUnit(
      code: string,
      mode: 'validate',
    ): { readonly status: 'valid' | 'invalid' | 'error'; readonly unit: LibraryUnit | null }
    validateUnitString(code: string, suggest?: boolean): Validation
  }
  const ucum: { readonly UcumLhcUtils: { getInstance(): Utilities } }
  export default ucum
}
