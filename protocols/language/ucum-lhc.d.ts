/** The part of the UCUM library that `units.ts` uses; the package ships no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  export interface UcumUnit {
    readonly magnitude_: number
    readonly dim_: { readonly dimVec_: readonly number[] | null } | null
    readonly isSpecial_: boolean
    readonly isArbitrary_: boolean
  }
  export interface UcumSuggestion {
    readonly units: readonly (readonly [code: string, name: string, guidance: string | null])[]
  }
  export interface UcumValidation {
    readonly status: 'valid' | 'invalid' | 'error'
    readonly ucumCode: string | null
    readonly suggestions?: readonly UcumSuggestion[]
  }
  export interface UcumUtils {
    validateUnitString(unit: string, suggest?: boolean): UcumValidation
    getSpecifiedUnit(unit: string, mode: 'validate'): { readonly unit: UcumUnit | null }
  }
  export const UcumLhcUtils: { getInstance(): UcumUtils }
}
