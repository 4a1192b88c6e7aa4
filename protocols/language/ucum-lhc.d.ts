/** The part of the UCUM library that `units.ts` uses; the package ships no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  export interface UcumSuggestion {
    readonly units: readonly (readonly [code: string, name: string, guidance: string | null])[]
  }
  export interface UcumValidation {
    readonly status: 'valid' | 'invalid' | 'error'
    readonly ucumCode: string | null
    readonly suggestions?: readonly UcumSuggestion[]
  }
  export interface UcumConversion {
    readonly status: 'succeeded' | 'failed' | 'error'
    readonly toVal: number | null
  }
  export interface UcumUtils {
    validateUnitString(unit: string, suggest?: boolean): UcumValidation
    convertUnitTo(fromUnit: string, value: number, toUnit: string): UcumConversion
  }
  export const UcumLhcUtils: { getInstance(): UcumUtils }
}
